import { degreeDays } from "../../../functions/breeding/degreeDays";
import { coolSpell } from "../../../functions/climate/coolSpell";
import { daily } from "../../../functions/climate/daily";
import { dryMonth } from "../../../functions/climate/dryMonth";
import { hourCurve } from "../../../functions/climate/hourCurve";
import { koppen } from "../../../functions/climate/koppen";
import { lapseBand } from "../../../functions/climate/lapseBand";
import { onDate } from "../../../functions/climate/onDate";
import { seasonShift } from "../../../functions/climate/seasonShift";
import { underground } from "../../../functions/climate/underground";
import { isoOf, serial, serialOfIso } from "../../../functions/dates";
import { catalogue } from "../../../functions/catalogue";
import { siteClimate } from "../../../functions/climate/siteClimate";
import { siteNote } from "../../../functions/climate/siteNote";
import { stationRank } from "../../../functions/climate/stationRank";
import { stations } from "../../../functions/climate/stations";
import { dayLength } from "../../../functions/daylight/dayLength";
import { mealDates } from "../../../functions/feeding/mealDates";
import { rampDates } from "../../../functions/winter/rampDates";
import { rampDatesTo } from "../../../functions/winter/rampDatesTo";
import { setPoint } from "../../../functions/winter/setPoint";
import { stage } from "../../../functions/winter/stage";
import { call, callCell, down } from "../../call";

/**
 * Every function that knows a season, at 40° north, 40° south, 10° north and on the equator. The years are invented; what
 * is asked is by definition: the south has the north's year half a year later, and a year without a season has none.
 */
const held = new Set<string>();
/** Names the functions that a test is about, for its title and for the walk at the end. */
const about = (...names: readonly string[]): string => {
  for (const name of names) held.add(name);
  return names.join(" and ");
};

const north = [1, 2, 6, 11, 16, 21, 24, 23, 19, 13, 7, 2];
const south = call(seasonShift, [north])[0] as number[];
const at10 = [24.5, 25.2, 26.3, 27, 26.6, 25.7, 25.1, 25, 25.2, 25.4, 25, 24.4];
const equator = Array<number>(12).fill(25);
const PLACES = [
  ["40° north", 40, north],
  ["40° south", -40, south],
  ["10° north", 10, at10],
  ["the equator", 0, equator],
] as const;

test(`${about("DAYLENGTH")}: the longest day is in June, in December, in June and a few minutes over twelve hours all the year`, () => {
  const lengths = (latitude: number): number[] =>
    Array.from({ length: 12 }, (_, month) => callCell(dayLength, latitude, serial(2027, month + 1, 21)) as number);
  const longest = (latitude: number): number => lengths(latitude).indexOf(Math.max(...lengths(latitude))) + 1;
  expect([40, -40, 10].map(longest)).toEqual([6, 12, 6]);
  expect(Math.max(...lengths(0)) - Math.min(...lengths(0))).toBeLessThan(0.05);
  // Half a year apart the two halves of the world have the same days; the earth's speed leaves minutes.
  for (const [month, hours] of lengths(40).entries()) expect(lengths(-40)[(month + 6) % 12]).toBeCloseTo(hours, 0);
  for (const hours of lengths(10)) expect(Math.abs(hours - 12.1)).toBeLessThan(0.7);
});

test.each(PLACES)(
  `${about("DAILY", "ONDATE")} at %s: the warmest day lies in the warmest month, and the year's mean is kept`,
  (_, __, months) => {
    const days = call(daily, [months], 2027) as [number, number][];
    const [warmest] = days.reduce((best, day) => (day[1] > best[1] ? day : best));
    const highest = Math.max(...months);
    if (highest > Math.min(...months)) {
      expect(months[Number(isoOf(warmest).slice(5, 7)) - 1]).toBeGreaterThan(highest - 1.1);
    } else for (const [, value] of days) expect(value).toBeCloseTo(highest, 9);
    expect(callCell(onDate, [months], warmest)).toBeCloseTo(days.find(([day]) => day === warmest)?.[1] as number, 9);
  },
);

test(`${about("COOLSPELL")}: the south's begins half a year after the north's and is as long; where no month is cool there is none`, () => {
  const [begins, , days] = call(coolSpell, [north], 8, 2026)[0] as number[];
  const [beginsSouth, , daysSouth] = call(coolSpell, [south], 8, 2026)[0] as number[];
  expect(isoOf(begins as number)).toMatch(/^2026-11/);
  expect(isoOf(beginsSouth as number)).toMatch(/^2026-05/);
  expect(Math.abs((days as number) - (daysSouth as number))).toBeLessThanOrEqual(3);
  for (const months of [at10, equator]) expect(call(coolSpell, [months], 8, 2026)[0]?.[0]).toMatch(/^#N\/A/);
});

test(`${about("LAPSEBAND")}: January of the south is July of the north; at 10° and on the equator no month differs`, () => {
  const band = (latitude: number, month: number) =>
    call(lapseBand, 20, 300, 1400, "high", month, latitude)[0] as number[];
  for (const month of [1, 4, 7, 10]) expect(band(-40, ((month + 5) % 12) + 1)).toEqual(band(40, month));
  expect(band(40, 1)).not.toEqual(band(40, 7));
  for (const latitude of [10, 0]) {
    for (const month of [4, 7, 10]) expect(band(latitude, month)).toEqual(band(latitude, 1));
  }
});

test(`${about("KOPPEN", "DRYMONTH", "SEASONSHIFT")}: a dry summer is one in either half of the world; the wet tropics have none`, () => {
  const dryInJuly = [90, 80, 70, 50, 35, 15, 5, 8, 30, 65, 85, 95];
  const dryInJanuary = call(seasonShift, [dryInJuly])[0] as number[];
  expect(callCell(koppen, [north], [dryInJuly], 40)).toBe("Csa");
  expect(callCell(koppen, [south], [dryInJanuary], -40)).toBe("Csa");
  const wet = Array<number>(12).fill(180);
  expect(callCell(koppen, [at10], [wet], 10)).toBe("Af");
  expect(callCell(koppen, [equator], [wet], 0)).toBe("Af");
  const dry = (months: readonly number[], rains: readonly number[]) =>
    call(dryMonth, [months], [rains])[0] as boolean[];
  expect(call(seasonShift, [dry(north, dryInJuly).map(Number)])[0]).toEqual(dry(south, dryInJanuary).map(Number));
  expect(dry(equator, wet)).toEqual(Array(12).fill(false));
});

test(`${about("UNDERGROUND")}: the ground of the south lags as the north's does; where the year is even it only takes the day's swing`, () => {
  const ground = (months: readonly number[]) =>
    call(underground, [months.map((one) => one + 6)], [months.map((one) => one - 6)], 100) as number[][];
  const means = (months: readonly number[]) => ground(months).map(([, , mean]) => mean as number);
  const shifted = call(seasonShift, [means(north)])[0] as number[];
  for (const [i, mean] of means(south).entries()) expect(mean).toBeCloseTo(shifted[i] as number, 1);
  for (const [high, low, mean] of ground(equator)) {
    expect(mean).toBeCloseTo(25, 6);
    expect((high as number) - (low as number)).toBeLessThan(0.1);
  }
});

test.each(PLACES)(
  `${about("HOURCURVE", "DEGREEDAYS")} at %s, midsummer: inside high and low, warmest after noon`,
  (_, latitude, months) => {
    const month = months.indexOf(Math.max(...months)) + 1;
    const mean = Math.max(...months);
    const hours = callCell(dayLength, latitude, serial(2027, month, 21));
    const curve = call(hourCurve, mean + 6, mean - 6, hours) as [number, number][];
    const [warmest] = curve.reduce((best, one) => (one[1] > best[1] ? one : best));
    expect(warmest).toBeGreaterThanOrEqual(12);
    expect(warmest).toBeLessThanOrEqual(16);
    for (const [, value] of curve) expect(Math.abs(value - mean)).toBeLessThanOrEqual(6 + 1e-9);
    expect(callCell(degreeDays, mean + 6, mean - 6, 10)).toBeCloseTo(mean - 10, 9);
  },
);

test(`${about("STAGE", "SETPOINT", "MEALDATES")}: a winter of the south lies in one year, and comes again in the next`, () => {
  const plan = down(["2027-03-21", "2027-04-04", "2027-05-16", "2027-08-08", "2027-09-19", "2027-09-26"]);
  expect(callCell(stage, "2027-07-01", plan)).toBe("Cold");
  expect(callCell(setPoint, "2027-07-01", plan, 24, 8)).toBe(8);
  expect(callCell(stage, "2027-12-24", plan)).toBe("Feeding");
  const meals = (call(mealDates, "2027-03-01", "2029-04-01", 10, plan).flat() as number[]).map(isoOf);
  const inFast = meals.filter((day) => day.slice(5) > "03-21" && day.slice(5) < "09-26");
  expect(inFast).toEqual([]);
  for (const year of [2027, 2028]) expect(meals).toContain(`${year}-09-26`);
});

/** Half a year, so that a winter of the north becomes one of the south. */
const HALF = 182;
const later = (iso: string): string => isoOf((serialOfIso(iso) as number) + HALF);
const isoDates = /\b(?:19|20)\d\d-\d\d-\d\d(?!\d)/g;
const moved = (given: unknown): unknown =>
  Array.isArray(given) ? given.map(moved) : typeof given === "string" ? given.replace(isoDates, later) : given;
const isDate = (value: unknown): value is number => typeof value === "number" && value > 40_000 && value < 60_000;

/** Whatever a plan makes of a winter in January it makes of one in July: the function's own examples, half a year later. */
const planned = catalogue.filter(({ parameters }) => Object.values(parameters).some(({ kind }) => kind === "plan"));
test.each(planned.map((definition) => [about(definition.name), definition] as const))(
  "%s: a winter in July is judged as one in January",
  (_, definition) => {
    let seen = 0;
    for (const { given } of definition.examples) {
      const [january, july] = [given, given.map(moved)].map((one) => call(definition, ...one));
      const expected = (january as unknown[][]).map((row) =>
        row.map((cell) => (isDate(cell) ? cell + HALF : moved(cell))),
      );
      expect(july).toEqual(expected);
      seen += JSON.stringify(given) === JSON.stringify(given.map(moved)) ? 0 : 1;
    }
    expect(seen).toBeGreaterThan(0);
  },
);

test(`${about("RAMPDATES", "RAMPDATESTO")}: plans of the south are as long as those of the north`, () => {
  for (const [definition, day] of [
    [rampDates, "2026-09-21"],
    [rampDatesTo, "2027-03-29"],
  ] as const) {
    const dates = (start: string): number[] =>
      call(definition, start, 14, 42, 84, 42, 7).map((row) => row.at(-1) as number);
    const [first, last] = [dates(day), dates(later(day))];
    expect(last).toEqual(first.map((one) => one + HALF));
  }
});

/** Places with stations around: the Alps, the Andes of Chile, southern India and the Andes on the equator. */
const MOUNTAINS = [
  [46.5, 9.8, 1500],
  [-33.4, -70.6, 500],
  [10.2, 77.5, 1000],
  [0, -78.5, 2500],
] as const;
test(`${about("SITECLIMATE", "SITENOTE", "STATIONS")}: the south's warmest month is half a year from the north's; near the equator the year is even`, () => {
  const years = MOUNTAINS.map((place) =>
    (call(siteClimate, ...place) as number[][]).map(([, likely]) => likely as number),
  );
  const warmest = years.map((year) => year.indexOf(Math.max(...year)) + 1);
  const swing = years.map((year) => Math.max(...year) - Math.min(...year));
  expect([6, 7, 8]).toContain(warmest[0]);
  expect([12, 1, 2]).toContain(warmest[1]);
  for (const even of swing.slice(2)) expect(even).toBeLessThan(10);
  expect(swing[3]).toBeLessThan(5);
  for (const [latitude, longitude, elevation] of MOUNTAINS) {
    expect(callCell(siteNote, latitude, longitude, elevation)).toEqual(expect.stringMatching(/\w/));
    const [nearest] = call(stations, latitude, longitude, elevation - 300, elevation + 300, 1);
    expect(String(nearest?.[0])).not.toMatch(/^#/);
  }
});

test(`${about("STATIONRANK")}: a mirrored place ranks mirrored stations alike, on the equator too`, () => {
  const rank = (latitude: number) =>
    call(
      stationRank,
      [
        ["near", 500, latitude + 0.1, 10],
        ["far", 500, latitude + 2, 10],
        ["beyond", 500, latitude - 1, 11],
      ].map((row) => row),
      400,
      600,
      latitude,
      10,
    ).map(([name]) => name);
  for (const latitude of [40, 10, 0, -40])
    expect([latitude, rank(latitude)]).toEqual([latitude, ["near", "beyond", "far"]]);
});

/** Anything with a latitude, a month, a year of months, a day's light or a winter plan has a season. */
test("no function with a season is forgotten", () => {
  const seasonal = catalogue.filter(({ parameters }) =>
    Object.entries(parameters).some(
      ([name, { kind }]) =>
        ["months", "plan"].includes(kind) || ["latitude", "month", "dayLength", "year"].includes(name),
    ),
  );
  expect(seasonal.length).toBeGreaterThan(20);
  expect(seasonal.map(({ name }) => name).filter((name) => !held.has(name))).toEqual([]);
});
