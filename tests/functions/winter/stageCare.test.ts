import { care } from "../../../functions/rules/stages";
import { setPoint } from "../../../functions/winter/setPoint";
import { stage } from "../../../functions/winter/stage";
import { stageCare } from "../../../functions/winter/stageCare";
import { call, callCell, down } from "../../call";
import { practicePlan } from "./plans";

const [LAST, COOLING, COLD, WARMING, WARM, FIRST] = practicePlan as [number, number, number, number, number, number];
const on = (day: number) =>
  call(stageCare, day, down(practicePlan))[0] as [string, string, string, string, string, number];

test("every day of a winter has the words of its stage, and light that falls and rises with the set-point", () => {
  for (let day = LAST - 30; day < FIRST + 40; day++) {
    const name = callCell(stage, day, down(practicePlan)) as keyof typeof care;
    const isLast = day === LAST;
    const isFirst = day >= FIRST && day < FIRST + 14;
    const words = care[isLast ? "Last meal" : isFirst ? "First meals" : name];
    const [food, light, moisture, nights, soaking, share] = on(day);
    expect([food, light, moisture, nights, soaking]).toEqual([
      words.food,
      words.light,
      words.moisture,
      words.nights,
      words.soaking,
    ]);
    const degrees = callCell(setPoint, day, down(practicePlan), 24, 8) as number;
    expect(share).toBeCloseTo((degrees - 8) / 16, 12);
  }
});

test("dark and never wet in the cold, warm nights until the gut is empty and after the first meals", () => {
  for (let day = COLD; day < WARMING; day++) expect(on(day).slice(1, 3)).toEqual(["dark", "moist, never wet"]);
  for (let day = LAST; day < COOLING; day++) expect(on(day)[3]).toBe("warm");
  for (let day = WARM; day < FIRST + 14; day++) expect(on(day)[3]).toBe("warm");
  expect(on(FIRST + 14)[3]).toBe("as the season");
});

test("soaks only while the animal is warm", () => {
  for (let day = LAST; day < FIRST; day++) {
    expect([day, on(day)[4].includes("soak") || on(day)[4].includes("lukewarm")]).toEqual([
      day,
      (day > LAST && day < COOLING) || day >= WARM,
    ]);
  }
});
