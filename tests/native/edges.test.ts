import type { AnyDefinition } from "../../functions/define";
import type { Raw } from "../properties/arbitraries";
import { callsInTheEngine, callsOf, twinned } from "./proof";

/** Calls on either side of what a twin decides by itself; of those that are drawn few or none lie there. */

// All in one workbook: to open one takes longer than to work it out.
jest.setTimeout(60_000);

const column = (values: readonly unknown[]): readonly (readonly unknown[])[] => values.map((value) => [value]);
/** A plan of six dates, in order or with the dates at a place and after it swapped. */
const DATES = [46_286, 46_300, 46_342, 46_426, 46_468, 46_475];
const plan = (swapped?: number): Raw =>
  column(
    swapped === undefined
      ? DATES
      : DATES.map((date, i) => (i === swapped ? DATES[i + 1] : i === swapped + 1 ? DATES[i - 1] : date)),
  );
const stations = (many: number): readonly Raw[] => [
  column([15.1, 12.2, 9.9, 7.4, 4.2, 3.9].slice(0, many)),
  column([100, 600, 900, 1400, 1900, 2050].slice(0, many)),
];
/** A plan of 189 days whose last meal is on 1 March 1900, the first day that spreadsheets agree on, or a day before. */
const LENGTHS = [14, 42, 84, 42, 7];
const FIRST_DAY = 61;

const EDGES: Readonly<Record<string, readonly (readonly Raw[])[]>> = {
  // An item of just its limit of the body, beyond it, far beyond; the practice's limit and one's own.
  PREYITEMS: [
    [200, 30, 0.1],
    [200, 30.1, 0.1],
    [200, 55, 0.3],
    [200, 50, 0.3, 0.25],
    [200, 51, 0.3, 0.25],
    [200, 90, 0.3, 0.25],
  ],
  RAMPDATESTO: [FIRST_DAY + 189, FIRST_DAY + 188, FIRST_DAY + 170].map((day) => [day, ...LENGTHS]),
  // Degrees of freedom of 1 and 2 have their own figures; a fit needs five stations.
  LAPSEFIT: [2, 3, 4, 5, 6].map(stations),
  STAGE: [undefined, 0, 1, 2, 3, 4].map((swapped) => [46_350, plan(swapped)]),
  SETPOINT: [undefined, 0, 1, 2, 3, 4].map((swapped) => [46_310, plan(swapped), 24, 8]),
  // The plan's last meal is given too where half of the interval has gone by, and not before.
  NEXTMEAL: [46_279, 46_280, 46_282, 46_283, 46_285, 46_286, 46_300, 46_470, 46_475].map((last) => [last, 7, plan()]),
  // At the surface every wave counts, down to that of two days.
  UNDERGROUND: [[[[10, 30, 10, 25, 5, 20, 10, 15, 30, 5, 10, 20]], [Array(12).fill(0)], 0, "sand"]],
  // Without a month the widest of the seasons; hemispheres, the tropics and the monsoon's two boxes.
  LAPSEBAND: [
    ...["high", "low", "median"].flatMap((kind) => [
      [20, 500, 1500, kind],
      [20, 1500, 500, kind],
      [20, 500, 1500, kind, 12, 46],
    ]),
    ...[-24, -23.5, 23.5, 24].map((latitude) => [20, 500, 1500, "high", 12, latitude]),
    ...[64.9, 65, 100, 150, 150.1].map((longitude) => [20, 500, 1500, "low", 5, 36, null, longitude]),
    ...[100, 99.9].map((longitude) => [20, 500, 1500, "low", 5, 46, null, longitude]),
    [20, 500, 1500, "low", 5, 46.1, null, 120],
  ],
};

test("twins answer as the functions do, on either side of their edges", async () => {
  const calls = Object.entries(EDGES).map(([name, raws]) => {
    const definition = twinned.find((one) => one.name === name) as AnyDefinition;
    return [definition, () => callsOf(definition, raws)] as const;
  });
  expect([...(await callsInTheEngine(calls)).values()].flat()).toEqual([]);
});
