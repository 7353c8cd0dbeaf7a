import { care } from "../../functions/rules/stages";
import { aboutThisWorkbook } from "../../taskpane/sheets/aboutThisWorkbook";
import { filled } from "./fill";

jest.setTimeout(30_000);

test("today's plan is told in the rules' words, and a plan that is not whole is told as such", async () => {
  const cold = await filled(aboutThisWorkbook, { "today.on": "2026-12-15" });
  expect(cold.errors()).toEqual([]);
  const { food, light, moisture } = care.Cold;
  expect(cold.of("planned.said")).toMatch(
    new RegExp(
      `^For animals that winter by this plan, on 2026-12-15: Cold\\. Set-point 8 °C\\. Food: ${food}\\. Light: ${light}\\. Moisture: ${moisture}\\.`,
    ),
  );
  const summer = await filled(aboutThisWorkbook, { "today.on": "2026-08-01" });
  expect(summer.of("planned.said")).toMatch(/on 2026-08-01: Feeding\. Food: as usual/);
  for (const name of ["today.firstMeal", "today.on"])
    expect((await filled(aboutThisWorkbook, { [name]: null })).of("planned.said")).toMatch(/^No whole plan, or no day/);
});
