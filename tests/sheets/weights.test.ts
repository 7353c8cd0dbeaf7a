import { PLAN_DATES } from "../../taskpane/sheets/shared/winterPlan";
import { weights } from "../../taskpane/sheets/weights";
import { down, filled, freeRow, rows } from "./fill";

jest.setTimeout(30_000);

/** The median slope over all pairs, worked out here anew. */
const medianSlope = (points: readonly (readonly [day: number, mass: number])[]): number => {
  const slopes = points
    .flatMap(([day, mass], i) => points.slice(i + 1).map(([later, then]) => (then - mass) / (later - day)))
    .sort((a, b) => a - b);
  const middle = slopes.length / 2;
  return slopes.length % 2
    ? (slopes[Math.floor(middle)] as number)
    : ((slopes[middle - 1] as number) + (slopes[middle] as number)) / 2;
};

test("the trend takes the weighings of the last days only", async () => {
  // 91 days before the last is outside of the window of 90.
  const days = ["2026-06-22", "2026-06-23", "2026-07-20", "2026-08-10", "2026-09-21"];
  const masses = [400, 250, 256, 263, 270];
  // Another animal's weighings in between count for nothing, nor does a row without a name.
  const others = rows("log", 6, [
    { date: "2026-09-22", animal: "Rowan", mass: 90 },
    { date: "2026-09-23", mass: 900 },
  ]);
  const ash = days.map((date, i) => ({ date, animal: "Ash", mass: masses[i] as number }));
  const typed = { "animal.label": "ash", ...rows("log", 1, ash), ...others };
  const reading = await filled(weights, typed, { cleared: true });
  expect(reading.of("now.trend")).toBeCloseTo(
    7 *
      medianSlope([
        [0, 250],
        [27, 256],
        [48, 263],
        [90, 270],
      ]),
    9,
  );
  expect(reading.of("now.mass")).toBe(270);
});

test("a row without a mass is passed over, and the changes are those from weighing to weighing", async () => {
  const reading = await filled(
    weights,
    {
      "animal.label": "Ash",
      ...rows("log", 1, [
        { animal: "Ash", date: "2026-05-01", mass: 200 },
        { animal: "Ash", date: "2026-05-08", length: 80 },
        { animal: "Ash", date: "2026-05-21", mass: 220 },
      ]),
    },
    { cleared: true },
  );
  expect(reading.errors()).toEqual([]);
  expect(["change", "share", "daily"].map((column) => reading.of(`log.${column}[2]`))).toEqual(["", "", ""]);
  expect(reading.of("log.change[3]")).toBe(20);
  expect(reading.of("log.share[3]")).toBeCloseTo(0.1, 12);
  // By definition: 100 ln(220/200) / 20 days.
  expect(reading.of("log.daily[3]")).toBeCloseTo((100 * Math.log(1.1)) / 20, 12);
  expect(reading.of("now.length")).toBe(80);
});

const free = freeRow(weights, "log");

test("a loss is flagged, in the fast too, where the words else send to the Winter log", async () => {
  const reading = await filled(
    weights,
    rows("log", free, [
      { animal: "Juniper", date: "2026-12-01", mass: 290 },
      { animal: "Juniper", date: "2027-04-05", mass: 250 },
      { animal: "Juniper", date: "2027-06-20", mass: 200, seen: "Laid 6 eggs" },
      { animal: "Rowan", date: "2027-06-21", mass: 260 },
      { date: "2027-06-22", mass: 190 },
      { animal: "Ash", date: "2027-06-22", mass: "190g" },
    ]),
  );
  expect(reading.column("log.standsOut").slice(free - 2, free + 5)).toEqual([
    "",
    "Lost 7.1 % in the fast",
    "Lost 13.8 % since the last",
    "Laying or birth: 20 % since the last",
    "",
    "Whose weighing? Name the animal.",
    "No number: not counted",
  ]);
});

test("a loss in the days of the fast is flagged all the same: whoever does not winter wastes away in them too", async () => {
  const reading = await filled(
    weights,
    rows("log", free, [
      { animal: "Sorrel", date: "2026-11-20", mass: 200 },
      { animal: "Sorrel", date: "2026-12-20", mass: 150 },
      { animal: "Sorrel", date: "2026-12-27", mass: 149 },
    ]),
  );
  expect(reading.column("log.standsOut").slice(free, free + 2)).toEqual([
    "Lost 25 % in the fast",
    "In the fast: see the Winter log",
  ]);
  expect(reading.of("fast.said")).toMatch(/for animals that follow this plan\.$/);
});

test("a plan whose sheet is gone takes no flag with it", async () => {
  const reading = await filled(weights, {
    ...Object.fromEntries(PLAN_DATES.map((date) => [`plan.${date}`, { formula: "=1/0" }])),
    ...rows("log", free, [
      { animal: "Sorrel", date: "2026-11-20", mass: 200 },
      { animal: "Sorrel", date: "2026-12-20", mass: 150 },
    ]),
  });
  expect(reading.errors()).toHaveLength(PLAN_DATES.length);
  expect(reading.of(`log.standsOut[${free + 1}]`)).toBe("Lost 25 % since the last");
  expect(reading.of("fast.said")).toMatch(/^The dates of the plan cannot be read: its sheet may be gone/);
});

test("fewer than three animals with mass and length have no scaled mass; the others are held against their mean", async () => {
  const few = await filled(
    weights,
    rows("side", 1, [
      { label: "A", mass: 100, length: 60 },
      { label: "B", mass: 90 },
    ]),
    { cleared: true },
  );
  expect(
    ["scaled", "ofMean", "beside"]
      .flatMap((column) => few.column(`side.${column}`))
      .filter((shown) => shown !== "" && shown !== null),
  ).toEqual([]);
  // Bodies of one shape, mass as the cube of length, have one scaled mass; the fourth is a fifth heavier.
  const cube = await filled(
    weights,
    { ...down("side.mass", [64, 125, 216, 343 * 1.2]), ...down("side.length", [40, 50, 60, 70]) },
    { cleared: true },
  );
  const scaled = cube.column("side.scaled").slice(0, 4) as number[];
  expect(scaled.every((mass) => mass > 100 && mass < 220)).toBe(true);
  expect(cube.of("side.ofMean[4]")).toBeCloseTo((scaled[3] as number) / (scaled.reduce((a, b) => a + b) / 4), 12);
});

test("the picture is of the animal looked at, through its winter, whatever the order of the rows", async () => {
  const typed = [
    ["2026-12-01", 290],
    ["2026-11-20", 292],
    ["2026-11-20", 294],
  ].map(([date, mass]) => ({ animal: "Rowan", date: date as string, mass: mass as number }));
  const reading = await filled(weights, { "animal.label": "Rowan", ...rows("log", free, typed) });
  expect(reading.errors()).toEqual([]);
  const of = (column: string) => reading.column(`picked.${column}`).filter((one) => one !== "" && one !== null);
  expect(of("date").slice(-4)).toEqual(["2026-09-21", "2026-11-20", "2026-11-20", "2026-12-01"]);
  expect(of("mass").slice(-4)).toEqual([268, 293, 293, 290]);
  expect(of("stage").slice(-4)).toEqual(["Clearing", "Cold", "Cold", "Cold"]);
  expect([reading.of("now.count"), reading.of("now.on"), reading.of("now.mass")]).toEqual([7, "2026-12-01", 290]);
  const nobody = await filled(weights, { "animal.label": "Ash" });
  expect(nobody.of("summary.said")).toMatch(/^No weighing of Ash in the log/);
  expect(nobody.of("now.mass")).toBe("");
});

test("without a limit of loss every change says that it is not judged", async () => {
  const reading = await filled(weights, { "animal.alarm": null });
  const told = reading.column("log.standsOut").filter((one) => one !== "" && one !== null);
  expect(told.length).toBeGreaterThan(5);
  expect(new Set(told)).toEqual(new Set(["Not judged: no limit of loss"]));
});
