import { incubation } from "../../taskpane/sheets/incubation";
import { down, filled } from "./fill";

jest.setTimeout(30_000);

const clutch = { C8: 60, C9: 26, F8: "Mine", A19: "Mine", B19: "2026-06-01", C19: 8, D19: 28 };

test("eggs held at another temperature take days in proportion to the warmth above the threshold, and so does the range", async () => {
  const reading = await filled(incubation, clutch, { cleared: true });
  // By definition: 60 (26 - 14) / (28 - 14) = 51.43; 55 and 65 times 12/14 are 47 and 56 days.
  expect(reading.at("E19")).toBeCloseTo(720 / 14, 9);
  expect(reading.block("F19:H19")).toEqual([["2026-07-22", "2026-07-18", "2026-07-27"]]);
});

test("ten days at 26 °C are a sixth, and the forecast is the sixtieth day", async () => {
  const days = Array.from({ length: 10 }, (_, i) => `2026-06-${String(i + 1).padStart(2, "0")}`);
  const reading = await filled(
    incubation,
    {
      ...clutch,
      ...down("A32", days),
      ...down(
        "B32",
        days.map(() => 26.5),
      ),
      ...down(
        "C32",
        days.map(() => 25.5),
      ),
    },
    { cleared: true },
  );
  expect(reading.at("F10")).toBeCloseTo(1 / 6, 9);
  expect(reading.at("F11")).toBe("2026-07-31");
  expect(reading.at("E32")).toBeCloseTo(12, 9);
});

test("a high over 31 °C and a low under 23 °C are flagged in words, though the middle is right", async () => {
  const reading = await filled(incubation, {
    B48: 31.1,
    C48: 25,
    A48: "2026-08-08",
    A49: "2026-08-09",
    B49: 26,
    C49: 22.9,
  });
  expect(reading.block("G47:G49").flat()).toEqual([
    "",
    "Over 31 °C: look at the incubator",
    "Under 23 °C: look at the incubator",
  ]);
});

test("a clutch that is not in the table is said so, and nothing is forecast from other eggs' readings", async () => {
  const reading = await filled(incubation, { F8: "Heather 2026" });
  expect(reading.at("F9")).toBe("not in the table");
  expect(reading.at("F11")).toMatch(/^#/);
});
