import fc from "fast-check";
import { serial } from "../../../functions/dates";
import { endEarly } from "../../../functions/winter/endEarly";
import { call } from "../../call";

const DAY = serial(2027, 1, 11);
type Row = readonly [date: number, setPoint: number, words: string];
const rows = (...given: unknown[]): Row[] => call(endEarly, ...given) as unknown as Row[];

test("never faster than the pace, never more than a degree at a time, up to warm and then a wait before food", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 20, noNaN: true }),
      fc.double({ min: 20, max: 28, noNaN: true }),
      fc.double({ min: 0.1, max: 1, noNaN: true }),
      fc.integer({ min: 0, max: 30 }),
      (temperature, warm, pace, settle) => {
        const all = rows(DAY, temperature, warm, pace, settle);
        expect(all[0]).toEqual([
          DAY,
          expect.closeTo(temperature, 9),
          expect.stringMatching(/^Call your reptile vet first/),
        ]);
        const steps = all.slice(0, -1);
        for (const [i, [date, degrees]] of steps.entries()) {
          const [before, was] = steps[i - 1] ?? [date, degrees];
          expect(degrees - was).toBeLessThanOrEqual(Math.max(1, pace) + 1e-9);
          expect(degrees - temperature).toBeLessThanOrEqual(pace * (date - DAY) + 1e-6);
          expect(i === 0 || date > before).toBe(true);
        }
        expect(steps.at(-1)?.[1]).toBe(warm);
        expect(all.at(-1)).toEqual([
          (steps.at(-1)?.[0] as number) + settle,
          warm,
          expect.stringMatching(/^First meal only if/),
        ]);
        // No row but the last speaks of a meal; every other one says no food.
        for (const [, , words] of steps.slice(1)) expect(words).toMatch(/[Nn]o food/);
      },
    ),
    { numRuns: 60 },
  );
});

test("from 8 to 24 °C it takes 32 days and a week, as many as practice asks of a ramp", () => {
  const all = rows(DAY, 8, 24);
  expect(all).toHaveLength(18);
  expect(all.at(-2)?.[0]).toBe(DAY + 32);
  expect(all.at(-1)?.[0]).toBe(DAY + 39);
});

test("faster than practice is told to be the vet's word; slower and practice are not", () => {
  expect(rows(DAY, 8, 24, 0.51)[0]?.[2]).toMatch(/Faster than practice: only if your vet says so\.$/);
  for (const pace of [null, 0.5, 0.2]) expect(rows(DAY, 8, 24, pace)[0]?.[2]).not.toContain("Faster");
});

test("an animal that is warm already waits to settle", () => {
  const all = rows(DAY, 24, 24);
  expect(all.map(([date]) => date)).toEqual([DAY, DAY + 7]);
});

test("in °F the same days", () => {
  const metric = rows(DAY, 8, 24, 0.2, 7);
  const imperial = rows(DAY, 46.4, 75.2, 0.36, 7, "imperial");
  expect(metric.at(-2)?.[0]).toBe(DAY + 80);
  expect(imperial.map(([date]) => date)).toEqual(metric.map(([date]) => date));
  expect(rows(DAY, 25, 24)).toEqual([["#VALUE! temperature holds 25 °C, above warm 24 °C: are they swapped?"]]);
});
