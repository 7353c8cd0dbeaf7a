import { DATEDIF } from "@formulajs/formulajs";
import { addMonths } from "date-fns";
import fc from "fast-check";
import { age } from "../../../functions/condition/age";
import { dateOf, FIRST_DAY, serialOf } from "../../../functions/dates";
import { callCell } from "../../call";
import { yardstick } from "../../yardstick";

const day = fc.integer({ min: FIRST_DAY, max: 80_000 });
const span = fc.tuple(day, day).map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const);

const local = (serial: number) => {
  const date = dateOf(serial);
  return new Date(date.getFullYear(), date.getMonth(), date.getDate());
};
// For birthdays that every month has; the others follow below, by definition.
yardstick(age, { against: "DATEDIF of Formula.js", within: 0, unit: "months" }, () =>
  fc
    .sample(
      span.filter(([born]) => dateOf(born).getDate() <= 28),
      { numRuns: 100, seed: 20_261_126 },
    )
    .map(([born, on]) => [callCell(age, born, on) as number, DATEDIF(local(born), local(on), "M") as number]),
);

// by definition: the most whole months that can be added to the birthday without passing the day
test("so many months have passed, and not one more, whatever the birthday", () => {
  fc.assert(
    fc.property(span, ([born, on]) => {
      const months = callCell(age, born, on) as number;
      expect(serialOf(addMonths(dateOf(born), months))).toBeLessThanOrEqual(on);
      expect(serialOf(addMonths(dateOf(born), months + 1))).toBeGreaterThan(on);
      expect(callCell(age, born, on, "years")).toBe(Math.floor(months / 12));
      expect(callCell(age, born, on, "weeks")).toBe(Math.floor((on - born) / 7));
    }),
  );
});

test.each([
  ["2024-02-29", "2025-02-27", "years", 0],
  ["2024-02-29", "2025-02-28", "years", 1],
  ["2024-02-29", "2028-02-28", "years", 3],
  ["2024-02-29", "2028-02-29", "years", 4],
  ["2026-01-31", "2026-02-27", "months", 0],
  ["2026-01-31", "2026-02-28", "months", 1],
  ["2026-08-31", "2026-09-30", "months", 1],
  ["2026-08-31", "2026-11-29", "months", 2],
  ["2026-08-31", "2026-11-30", "months", 3],
  ["2026-08-14", "2026-08-14", "days", 0],
])("at the ends of months: born %s, on %s, %s", (born, on, unit, wanted) => {
  expect(callCell(age, born, on, unit)).toBe(wanted);
});

test("what cannot be answered", () => {
  expect(callCell(age, "2026-08-14", "2026-08-13")).toBe(
    "#VALUE! on holds 2026-08-13: give born, 2026-08-14, or a later day",
  );
  expect(callCell(age, "2026-08-14", "2027-08-14", "moons")).toMatch(/^#VALUE! unit holds 'moons'/);
  expect(callCell(age, "2026-08-14", null)).toBe("#N/A on is blank");
  expect(callCell(age, null, null)).toBe("");
});

/**
 * XML Schema part 2, appendix E: a month is added to a date by its number, and a day that the month does not have is its
 * last. The most months that so fit, by python-dateutil 2.9.0:
 *
 *   n = 0
 *   while born + relativedelta(months=n + 1) <= on: n += 1
 *
 * DATEDIF says 11 of the first row. Exact.
 */
yardstick(age, { against: "XML Schema appendix E by python-dateutil 2.9.0", within: 0, unit: "months" }, () =>
  (
    [
      ["2024-02-29", "2025-02-28", 12],
      ["2024-02-29", "2025-02-27", 11],
      ["2024-01-31", "2024-02-29", 1],
      ["2023-01-31", "2023-02-28", 1],
      ["2025-08-31", "2025-09-30", 1],
      ["2025-08-31", "2025-09-29", 0],
      ["2025-08-14", "2027-02-13", 17],
      ["2025-08-14", "2027-02-14", 18],
      ["2020-12-31", "2027-02-28", 74],
      ["2024-02-29", "2028-02-29", 48],
    ] as const
  ).map(([born, on, months]) => [callCell(age, born, on) as number, months]),
);
