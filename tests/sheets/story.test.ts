import { catalogue } from "../../functions/catalogue";
import { isoOf, serialOfIso } from "../../functions/dates";
import { mealCheck } from "../../functions/feeding/mealCheck";
import { mealDates } from "../../functions/feeding/mealDates";
import { nextMeal } from "../../functions/feeding/nextMeal";
import { birthDates } from "../../functions/breeding/birthDates";
import { due } from "../../functions/winter/due";
import { rampDates } from "../../functions/winter/rampDates";
import { rampCheck } from "../../functions/winter/rampCheck";
import { setPoint } from "../../functions/winter/setPoint";
import { stage as stageOf } from "../../functions/winter/stage";
import { stageCare } from "../../functions/winter/stageCare";
import { insertLinked } from "../../taskpane/actions/insertLinked";
import { sheets } from "../../taskpane/sheets/catalogue";
import type { Sheet } from "../../taskpane/sheets/sheet";
import { call, callCell, down } from "../call";
import { openWorkbook, readSheet } from "../preview/engine";
import { changesOf, freeRow, rows } from "./fill";
import { callsIn } from "./formulas";
import { dangers, north } from "./storyDangers";

// Two whole years of linked sheets in one engine.
jest.setTimeout(180_000);

/** A year of four animals, as their keepers meet it from morning to morning. The animals are invented. */

const serial = (iso: string): number => serialOfIso(iso) as number;
const south = (call(rampDates, serial("2027-03-22"), 14, 42, 84, 42, 7) as unknown as [string, number][]).map(
  ([, date]) => date,
);
const [WARM, COLD] = [24, 8];

interface Animal {
  readonly name: string;
  readonly from: string;
  readonly interval: number;
  readonly plan: readonly number[] | undefined;
  /** Days on which she is gravid, and out of the plan. */
  readonly gravid?: readonly [first: number, last: number];
}
const [, birth] = (call(birthDates, serial("2027-05-01"), 100, 130, "live") as unknown as number[][])[0] as number[];
const animals: readonly Animal[] = [
  { name: "the example", from: "2026-07-06", interval: 7, plan: north },
  { name: "a southern house", from: "2027-01-04", interval: 7, plan: south },
  { name: "a young one that does not winter", from: "2026-07-06", interval: 5, plan: undefined },
  {
    name: "a live-bearer",
    from: "2027-01-04",
    interval: 7,
    plan: north.map((date) => date + 364),
    gravid: [serial("2027-05-01"), birth as number],
  },
];

type Due = readonly [stage: string, toDo: string, never: string, next: number | string, overdue: string];
type Care = readonly [food: string, light: string, moisture: string, nights: string, soaking: string, share: number];
const one = (answer: unknown): unknown => (answer as readonly unknown[])[0];

test.each(animals.map((animal) => [animal.name, animal] as const))(
  "day by day, %s: stage, set-point, light, moisture and food agree, and no food is offered in a fast",
  (_, { from, interval, plan, gravid }) => {
    const start = serial(from);
    let lastMeal = start - interval;
    let meals = 0;
    for (let today = start; today < start + 365; today++) {
      const isGravid = gravid !== undefined && today >= gravid[0] && today <= gravid[1];
      const winters = plan && !isGravid;
      const said = one(
        call(
          due,
          today,
          plan ? down([...plan]) : null,
          lastMeal,
          interval,
          today,
          28,
          today,
          7,
          winters ? "yes" : "no",
        ),
      ) as Due;
      const [stage, toDo, never, next] = said;
      const inFast = winters && today > (plan[0] as number) && today < (plan[5] as number);
      const told = [isoOf(today), stage];
      if (winters) {
        const care = one(call(stageCare, today, down([...plan]))) as Care;
        const celsius = callCell(setPoint, today, down([...plan]), WARM, COLD) as number;
        expect([...told, callCell(stageOf, today, down([...plan]))]).toEqual([...told, stage]);
        expect([...told, care[0] === "none"]).toEqual([...told, inFast]);
        expect(care[5]).toBeCloseTo((celsius - COLD) / (WARM - COLD), 9);
        expect([...told, care[1] === "dark"]).toEqual([...told, stage === "Cold"]);
        expect([...told, care[2] === "moist, never wet"]).toEqual([
          ...told,
          ["Cooling", "Cold", "Warming"].includes(stage),
        ]);
        // Soaks only while it is warm, warm nights until the gut is empty and after the first meals.
        if (care[4].startsWith("shallow")) expect([...told, celsius]).toEqual([...told, WARM]);
        if (stage === "Clearing" || stage === "Settling") expect([...told, care[3]]).toEqual([...told, "warm"]);
      }
      if (inFast) {
        expect([...told, toDo.startsWith("No food until"), next]).toEqual([...told, true, plan[5]]);
        expect([...told, never.startsWith("No food")]).toEqual([...told, true]);
        expect(callCell(nextMeal, today, interval, down([...plan]))).toBeGreaterThanOrEqual(plan[5] as number);
        const offered = call(mealCheck, today, 300, 5, 5, down([...plan])) as unknown as [string, string][];
        expect([...told, one(offered[0])]).toEqual([...told, "stop"]);
      }
      const feeds = toDo.startsWith("Feed ");
      if (feeds) {
        const isPlanned = plan && winters;
        const check = call(mealCheck, today, 300, 10, 10, isPlanned ? down([...plan]) : null, lastMeal, 3, 20);
        expect([...told, one((check as unknown as [string][])[0])]).toEqual([...told, "note"]);
        expect([...told, next]).toEqual([...told, today]);
        lastMeal = today;
        meals++;
      }
    }
    expect(meals).toBeGreaterThan(20);
    if (plan) {
      const dates = call(mealDates, start, start + 364, interval, down([...plan])) as unknown as number[][];
      expect(dates.flat().filter((date) => date > (plan[0] as number) && date < (plan[5] as number))).toEqual([]);
      expect(one((call(rampCheck, down([...plan]), WARM, COLD) as unknown as [string][])[0])).toBe("note");
    }
  },
);

const template = (key: string): Sheet => sheets.find((sheet) => sheet.key === key) as Sheet;
const [today, plan, year, log] = ["animals", "coolingPlan", "yearPlan", "feedingLog"].map(template) as [
  Sheet,
  Sheet,
  Sheet,
  Sheet,
];

test("linked sheets of one workbook agree, in a northern and in a southern house, and after the winter is lengthened", async () => {
  const { workbook, close } = openWorkbook();
  try {
    const { names } = await insertLinked(workbook, [today, plan, year, log]);
    const [todays, plans, years, logs] = names as [string, string, string, string];
    // Rowan winters by the dates of the other house, by a plan of his own.
    const [others] = (await insertLinked(workbook, [plan])).names as [string];
    await workbook.write(changesOf(todays, today, { "list.plan[2]": others }));
    const houses = [
      { when: north[0] as number, cold: 84, start: serial("2026-07-06"), latitude: 43.64, stages: [0, 2, 3, 5] },
      { when: south[0] as number, cold: 98, start: serial("2027-01-04"), latitude: -42, stages: [1, 4] },
    ];
    const free = freeRow(log, "log");
    for (const { when, cold, start, latitude, stages } of houses) {
      const offered = Array.from({ length: 13 }, (_, i) => start + 28 * i);
      await workbook.write([
        ...changesOf(plans, plan, { "plan.when": when, "plan.cold": cold }),
        ...changesOf(others, plan, { "plan.when": when === north[0] ? (south[0] as number) : (north[0] as number) }),
        ...changesOf(years, year, { "year.start": start, "year.latitude": latitude }),
        ...changesOf(
          logs,
          log,
          rows("log", free, [
            ...offered.map((date) => ({ animal: "Juniper", date, night: 18 })),
            ...offered.map((date) => ({ animal: "Rowan", date, night: 18 })),
          ]),
        ),
      ]);
      const dates = (await readSheet(workbook, plans, plan)).column("dates.date").map((iso) => serial(String(iso)));
      const [lastMeal, firstMeal] = [dates[0] as number, dates[5] as number];
      const isFast = (date: number): boolean => date > lastMeal && date < firstMeal;
      const his = when === north[0] ? south : north;
      const isHisFast = (date: number): boolean => date > (his[0] as number) && date < (his[5] as number);

      // Feeding log: a meal that is offered inside the fast is stopped, and no next meal lies in it.
      const fed = await readSheet(workbook, logs, log);
      offered.forEach((date, i) => {
        const told = isoOf(date);
        expect([told, fed.of(`log.level[${free + i}]`) === "stop"]).toEqual([told, isFast(date)]);
        expect([told, isFast(serial(String(fed.of(`log.next[${free + i}]`))))]).toEqual([told, false]);
        const rowan = free + offered.length + i;
        expect([told, fed.of(`log.level[${rowan}]`) === "stop"]).toEqual([told, isHisFast(date)]);
        expect([told, isHisFast(serial(String(fed.of(`log.next[${rowan}]`))))]).toEqual([told, false]);
      });

      // Year plan and Cooling plan, week by week; both begin on a Monday.
      const [yearly, weekly] = [await readSheet(workbook, years, year), await readSheet(workbook, plans, plan)];
      const weeks = yearly.column("weeks.week");
      const week = (name: string) => weekly.column(`weeks.${name}`);
      let common = 0;
      week("date").forEach((date, i) => {
        const at = weeks.indexOf(date);
        if (at < 0) return;
        common++;
        const row = (name: string) => yearly.column(name)[at];
        expect([date, row("weeks.stage"), row("care.food"), row("care.moisture")]).toEqual([
          date,
          week("stage")[i],
          week("food")[i],
          week("moisture")[i],
        ]);
        if (week("stage")[i] !== "Feeding") {
          expect([date, row("weeks.day"), row("weeks.night")]).toEqual([
            date,
            week("setPoint")[i],
            week("setPoint")[i],
          ]);
        }
        if (week("light")[i] === "dark") expect([date, row("weeks.light")]).toEqual([date, 0]);
        const day = serial(String(date));
        if (isFast(day) && isFast(day + 6)) expect([date, row("weeks.meals")]).toEqual([date, 0]);
      });
      expect(common).toBeGreaterThan(20);

      // Today, on a morning of each stage in the one house or the other.
      for (const [morning, i] of stages.map((i) => [(dates[i] as number) + (i === 5 ? 1 : 3), i] as const)) {
        await workbook.write(changesOf(todays, today, { "reminders.today": morning }));
        const here = await readSheet(workbook, todays, today);
        const stage = callCell(stageOf, morning, down(dates));
        expect([isoOf(morning), here.of("list.stage[1]")]).toEqual([isoOf(morning), stage]);
        const isNoFood = String(here.of("list.toDo[1]")).startsWith("No food until");
        expect([isoOf(morning), isNoFood]).toEqual([isoOf(morning), i < 5]);
        expect([isoOf(morning), here.of("list.stage[2]")]).toEqual([
          isoOf(morning),
          callCell(stageOf, morning, down([...his])),
        ]);
        expect(String(here.of("list.toDo[2]")).startsWith("No food until")).toBe(isHisFast(morning));
        expect(here.of("list.stage[5]")).toBe("Feeding");
        expect(here.errors()).toEqual([]);
      }
    }
  } finally {
    close();
  }
});

test("forty-five planted dangers are named where they are met, with the rule's level", () => {
  expect(dangers.length).toBeGreaterThanOrEqual(45);
  for (const { sheet, call: name, given, level, words } of dangers) {
    const calls = template(sheet).blocks.flatMap(({ rows: lines }) =>
      lines
        .flat()
        .flatMap((content) => (typeof content === "string" && content.startsWith("=") ? callsIn(content) : [])),
    );
    expect([sheet, name, calls.some((one) => one.name === name)]).toEqual([sheet, name, true]);
    const definition = catalogue.find((one) => one.name === name);
    if (!definition) throw new Error(`${name} is not in the catalogue`);
    const answer = call(definition, ...given);
    const found = answer.filter((row) => words.test(String(row.at(-1)))).map((row) => row.at(-2));
    expect([name, String(words), found]).toEqual([name, String(words), [level]]);
  }
});
