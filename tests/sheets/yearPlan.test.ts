import { cautions } from "../../functions/cautions";
import { isoOf, serialOfIso } from "../../functions/dates";
import { care, phaseOn } from "../../functions/rules/stages";
import { setPointOn, stageOn, type Plan } from "../../functions/shared/plan";
import { stageCare } from "../../functions/winter/stageCare";
import { winter } from "../../taskpane/sheets/shared/scenario";
import { PLAN_DATES } from "../../taskpane/sheets/shared/winterPlan";
import { yearPlan } from "../../taskpane/sheets/yearPlan";
import { filled, inTurn } from "./fill";

jest.setTimeout(30_000);

const plan = Object.fromEntries(PLAN_DATES.map((name, i) => [name, winter.dates[i]])) as unknown as Plan;

test("light, moisture, nights and food follow the stage, in the rules' own words", async () => {
  const reading = await filled(yearPlan, { "year.nightLeast": 12 });
  const column = (name: string) => reading.column(name);
  const [day, night, light, moisture, meals] = ["day", "night", "light", "moisture", "meals"].map((name) =>
    column(`weeks.${name}`),
  ) as [number[], number[], number[], string[], number[]];
  const food = column("food.words");
  column("weeks.week").forEach((iso, i) => {
    const date = serialOfIso(String(iso)) as number;
    const asked = care[phaseOn(plan, date)];
    const isFed = stageOn(plan, date) === "Feeding";
    if (!isFed) expect([iso, day[i]]).toEqual([iso, setPointOn(plan, winter.warmSetPoint, winter.coldSetPoint, date)]);
    if (asked.nights !== "as the season") expect([iso, night[i]]).toEqual([iso, day[i]]);
    if (asked.moisture !== "as the season") expect([iso, moisture[i]]).toEqual([iso, asked.moisture]);
    else expect(["dry", "moist", "wet"]).toContain(moisture[i]);
    if (asked.light === "dark") expect([iso, light[i]]).toEqual([iso, 0]);
    expect([iso, food[i]]).toEqual([
      iso,
      (meals[i] as number) > 0 && (night[i] as number) < 15 ? "Cool nights: small, or warmer" : asked.food,
    ]);
    if (date > plan.lastMeal && date + 6 < plan.firstMeal) expect([iso, meals[i]]).toEqual([iso, 0]);
  });
  expect(food).toContain("Cool nights: small, or warmer");
  expect([column("care.food")[0], isoOf(plan.lastMeal)]).toEqual([care.Feeding.food, "2026-09-21"]);
  expect(Object.keys(stageCare.result.columns)).toHaveLength(6);
  expect(reading.of("warning.said")).toBe("");
});

test("a week in which the fast begins or ends says on which day, and not what its first day alone would", async () => {
  const week = { "year.start": "2026-07-09" };
  const reading = await filled(yearPlan, week);
  const food = reading.column("food.words");
  const at = reading.column("weeks.week").indexOf("2026-09-17");
  expect(food.slice(at - 1, at + 2)).toEqual([care.Feeding.food, "Last 2026-09-21, then none", "none"]);
  const end = reading.column("weeks.week").indexOf("2027-03-25");
  expect(food.slice(end - 1, end + 2)).toEqual(["none", "None before 2027-03-29", care["First meals"].food]);
});

test("a meal before nights in which the gut hardly works is refused, as the Feeding log refuses it", async () => {
  const reading = await filled(yearPlan, { "year.nightLeast": 8, "year.nightMost": 14 });
  const [night, meals] = ["night", "meals"].map((name) => reading.column(`weeks.${name}`)) as [number[], number[]];
  const fed = reading.column("food.words").filter((_, i) => (meals[i] as number) > 0);
  const cold = night.filter((celsius, i) => (meals[i] as number) > 0 && celsius < 10);
  expect(cold.length).toBeGreaterThan(0);
  expect(fed.filter((words) => words === "No meal: the nights are cold")).toHaveLength(cold.length);
});

test("without all six dates nothing is told, and the sheet says why", async () => {
  const reading = await filled(yearPlan, { "year.warmAgain": null });
  for (const name of ["stage", "day", "night", "light", "moisture"]) {
    expect([name, new Set(reading.column(`weeks.${name}`).map((one) => one ?? ""))]).toEqual([name, new Set([""])]);
  }
  expect(reading.of("summary.said")).toMatch(/^Not all six dates of the winter plan are given/);
  // A plan whose sheet is gone.
  const gone = Object.fromEntries(PLAN_DATES.map((date) => [`year.${date}`, { formula: "=1/0" }]));
  const without = await filled(yearPlan, gone);
  expect(without.of("summary.said")).toMatch(/or some cannot be read/);
  expect(new Set(without.column("weeks.day").map((one) => one ?? ""))).toEqual(new Set([""]));
});

test("nights follow the ground's lows where that is wanted, never past the keeper's own limits, and without lows own limits hold", async () => {
  const wanted = { "year.nightsFrom": "ground too", "year.nightLeast": 12, "year.nightMost": 17 } as const;
  const nights = async (typed: Parameters<typeof filled>[1]) => {
    const reading = await filled(yearPlan, typed);
    expect(reading.errors()).toEqual([]);
    const ofSeason = reading.column("care.nights").map((one) => one === "as the season");
    const column = (name: string) =>
      reading
        .column(name)
        .map(Number)
        .filter((_, i) => ofSeason[i]);
    return { reading, night: column("weeks.night"), low: column("weeks.low") };
  };
  const own = await nights({ ...wanted, "year.nightsFrom": "own limit" });
  expect(own.night).toEqual(own.low.map((low) => Math.min(17, Math.max(12, low))));
  expect(own.reading.of("nightWords.said")).toBe("Nights keep to your own limits alone.");

  const ground = await nights(wanted);
  expect(ground.night.every((night) => night >= 12 && night <= 17)).toBe(true);
  // July: 12.5 °C in the air, 17.5 in the ground at mid-month.
  expect([own.night[0], ground.night[0]]).toEqual([expect.closeTo(12.53, 1), expect.closeTo(16.73, 1)]);
  expect(Math.max(...ground.night)).toBe(17);
  expect(ground.night.filter((night, i) => night < (own.night[i] as number))).toEqual([]);
  expect(ground.reading.of("nightWords.said")).toContain(cautions.bareGround);

  const without = await nights({ ...wanted, "home.ground[3]": null });
  expect(without.night).toEqual(own.night);
  expect(without.reading.of("nightWords.said")).toMatch(/^Still needed for nights by the ground/);
});

test("limits that cannot be meant, or that can hurt, are told beside them; none is silent", async () => {
  const hot = await filled(yearPlan, {
    "year.dayLeast": 33,
    "year.dayMost": 31,
    "year.nightLeast": 36,
    "year.nightMost": 35,
    "year.coldSet": 3.5,
  });
  expect(hot.of("warning.said")).toBe(
    "By day at least is above by day at most: the least was taken. " +
      "By night at least is above by night at most: the most was taken. " +
      "In some weeks the night is warmer than the day. " +
      "Above 30 °C: a montane snake with no cooler place can die of heat. " +
      "Below 4 °C: there is little room for a fault of the thermostat. ",
  );
});

test("weeks that hold another winter than the plan's, or a year before it, are told", async () => {
  // The last of 52 weeks begins 357 days after the first.
  const starts = ["2026-09-28", "2026-09-29", "2025-09-29", "2025-09-28"];
  const readings = await inTurn(
    yearPlan,
    starts.map((start) => ({ "year.start": start })),
  );
  expect(readings.map((reading) => reading.of("warning.said"))).toEqual([
    "",
    expect.stringMatching(/^The winter plan is of one winter: from about 2027-09-21 on/),
    "",
    expect.stringMatching(/^The winter plan begins after these weeks/),
  ]);
});

test("days too cool for a gut are told as cool nights are", async () => {
  const reading = await filled(yearPlan, { "year.dayLeast": 10, "year.dayMost": 19.9 });
  const [day, meals] = ["day", "meals"].map((name) => reading.column(`weeks.${name}`)) as [number[], number[]];
  const words = reading.column("food.words");
  const fed = words.flatMap((said, i) => ((meals[i] as number) > 0 ? [[said, day[i]] as const] : []));
  const cool = fed.filter(([, celsius]) => (celsius as number) < 20);
  expect(cool.map(([said]) => said)).toEqual(
    cool.map(([, celsius]) =>
      (celsius as number) < 15 ? "No meal: the days are cold" : "Cool days: small, or warmer",
    ),
  );
  expect(new Set(cool.map(([said]) => said)).size).toBe(2);
});
