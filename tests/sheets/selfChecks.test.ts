import psychrolib from "psychrolib";
import manifest from "../../package.json";
import { catalogue } from "../../functions/catalogue";
import { cautions } from "../../functions/cautions";
import { sources } from "../../functions/sources";
import { selfChecks } from "../../taskpane/sheets/shared/selfChecks";
import { lebanonDays, lebanonMonths } from "../normals";
import dayLengths from "../tables/dayLength.json";
import degreeDays from "../tables/degreeDays.json";
import dryMonths from "../tables/dryMonths.json";
import hourCurves from "../tables/hourCurves.json";
import humidity from "../tables/humidity.json";
import incubation from "../tables/incubation.json";
import cities from "../tables/koppenCities.json";
import curves from "../tables/monthlyCurves.json";
import oxygenUse from "../tables/oxygenUse.json";
import scaledMass from "../tables/scaledMass.json";
import atmosphere from "../tables/standardAtmosphere.json";
import pairs from "../tables/stationPairs.json";
import trends from "../tables/trends.json";
import { callsIn } from "./formulas";

/** The figures that the sheet Self-check expects are those of the tables that the functions' own tests are held against. */

const found = <T>(row: T | undefined): T => {
  if (row === undefined) throw new Error("the table has no such row");
  return row;
};
psychrolib.SetUnitSystem(psychrolib.SI);

const segovia = found(pairs.rows.find(({ low, high }) => low === "Segovia" && high === "Navacerrada"));
const kilometre = found(atmosphere.rows.find(({ elevation }) => elevation === 1000));
const saturation20 = found(humidity.saturation.find(({ temperature }) => temperature === 20)).pressure;
const loss = found(trends.rows.find(({ series }) => series === "loss"));
const berlin = found(cities.rows.find(({ city }) => city.startsWith("Berlin")));
const taeniura = (temperature: number): number =>
  found(incubation.duJi.find((row) => row.temperature === temperature)).days;

/** The longest run below 5 °C in the daily normals, over the turn of the year. */
const longestRun = (): number => {
  const days = lebanonDays.dates.flatMap((date, i) => (date === "02-29" ? [] : [(lebanonDays.mean[i] ?? NaN) < 5]));
  let [run, longest] = [0, 0];
  for (const cold of [...days, ...days]) longest = Math.max(longest, (run = cold ? run + 1 : 0));
  return longest;
};

/** What each check must expect: from the tables, or by arithmetic that uses no function of the catalogue. */
const held: Readonly<Record<string, () => number | string | boolean>> = {
  FLUCTUATION: () => 18.5 - 7,
  MEDIAN24: () => (18.5 + 7) / 2,
  LAPSE: () => kilometre.temperature,
  LAPSEBAND: () => found(segovia.highHighs[6]),
  LAPSEFIT: () => 1000 * ((found(atmosphere.rows[0]).temperature - kilometre.temperature) / kilometre.elevation),
  STATIONGAP: () => 300 - 1200,
  STATIONRANK: () => segovia.km,
  ONDATE: () => found(lebanonDays.high[lebanonDays.dates.indexOf("07-14")]),
  DAILY: () => found(curves.rows.find(({ series, day }) => series === "seattle" && day === 227)).spline,
  COOLSPELL: longestRun,
  SEASONSHIFT: () => found([7, 8, 9, 10, 11, 12, 1, 2, 3, 4, 5, 6][0]),
  DRYMONTH: () =>
    found(dryMonths.rows.find(({ station }) => station === "Navacerrada")).dry.some((month) => month === 7),
  KOPPEN: () => berlin.published,
  HOURCURVE: () =>
    found(
      hourCurves.rows.find(
        ({ high, low, sunrise, sunset, hour }) =>
          high === 30 && low === 10 && sunrise === 6 && sunset === 18 && hour === 14,
      ),
    ).temperature,
  STATIONS: () => segovia.highWmo,
  STATIONRECORD: () => found(segovia.highHighs[6]),
  STATIONPLACE: () => segovia.highElevation,
  SITECLIMATE: () => found(lebanonMonths.high[6]),
  SITENOTE: () => found(/Datenbasis/.exec(pairs.terms)?.[0]),
  UNDERGROUND: () => found(lebanonMonths.high[6]),
  PRESSURE: () => kilometre.pressure,
  DEWPOINT: () => Number(psychrolib.GetTDewPointFromRelHum(25, 0.8).toFixed(4)),
  VAPOURDEFICIT: () => Number((saturation20 / 20).toFixed(4)),
  WATERINAIR: () => Number(((216.68 * saturation20) / 2 / 293.15).toFixed(3)),
  HUMIDITYAFTER: () => found(humidity.after.find(({ temperature }) => temperature === 10)).newHumidity,
  DAYLENGTH: () =>
    found(dayLengths.rows.find(({ date, latitude }) => date === "2025-07-15" && latitude === 52)).astropy,
  RAMP: () => (24 + 8) / 2,
  RAMPDATES: () => 14 + 42 + 84 + 42 + 7,
  RAMPDATESTO: () => 14 + 42 + 84 + 42 + 7,
  SETPOINT: () => (24 + 8) / 2,
  STAGE: () => "Cold",
  STAGECARE: () => "none",
  // 16 to 31 December, January, February, and 29 days of March.
  DUE: () => 16 + 31 + 28 + 29,
  RAMPCHECK: () => "stop",
  WINTERREADY: () => "stop",
  ENDEARLY: () => (23 - 20) / 0.5 + 7,
  MASSLOSS: () => (320 - 312) / 320,
  LOSSTREND: () => Number(((-30 * loss.slope) / found(loss.grams[0])).toFixed(10)),
  OXYGENUSE: () =>
    found(oxygenUse.rows.find(({ mass, temperature }) => mass === 10 && temperature === 25)).millilitresPerHour,
  BOXAIR: () => Number((0.04 + 0.8 * (20.9 - 19)).toFixed(9)),
  METABOLICLOSS: () => {
    const oxygen = 0.013 * 300 ** 0.8 * 10 ** 0.95 * 3.3 ** -2 * 24 * 30;
    return Number(((oxygen * 20.1 * (2 / 3 / 39_339 + 1 / 3 / 17_577)) / 300).toFixed(10));
  },
  OPENEVERY: () => 7,
  WINTERSIGNS: () => "stop",
  Q10RATE: () => Number((12 / 2.4 ** 2).toFixed(6)),
  PREYRATIO: () => 18 / 240,
  PREYMASS: () => 240 / 10,
  PREYITEMS: () => Math.floor(240 / 10 / 8),
  NEXTMEAL: () => 7,
  MEALDATES: () => [1, 8, 15, 22].length,
  MEALCOUNT: () => [1, 8, 15, 22].length,
  MEALCHECK: () => "stop",
  REFUSALS: () => ["refused", "refused"].length,
  GROWTHRATE: () => Number(((100 * Math.log(30 / 20)) / (30 + 31 + 9)).toFixed(6)),
  MASSTREND: () => Number((7 * loss.slope).toFixed(10)),
  SCALEDMASS: () => found(scaledMass.rows.find(({ dataset, entry }) => dataset === "women" && entry === 1)).scaled,
  AGE: () => 18 - 1,
  HATCHDATES: () => 65,
  INCUBATIONDAYS: () => taeniura(27),
  HATCHFORECAST: () => 6 / 60,
  DEGREEDAYS: () =>
    found(
      degreeDays.rows.find(
        ({ high, low, base, ceiling }) => high === 20 && low === 5 && base === 10 && ceiling === null,
      ),
    ).integral,
  CLUTCHRATIO: () => 60 / (180 + 60),
  PAIRINGCHECK: () => "stop",
  BIRTHDATES: () => 55,
  DAYTABLE: () => 22 - 18,
  // Up from 6 to 10 °C in two hours and down again: above 8 °C half of each.
  TIMEOUTSIDE: () => 1 + 1,
  READINGGAPS: () => 20 - 12,
  TRACKING: () => 16.5 - 16,
  WEEKSBELOW: () => Number((15 / 7).toFixed(6)),
  LATEST: () => Math.max(140, 142),
  ROLLCALL: () => 20 - 8,
  FIGURES: () => 142 + 145,
  PROXYNOTE: () => ["Pass", "700 m"].join(", "),
  SOURCE: () => sources.definition.text,
  CAUTION: () => cautions.smoothCurve.slice(0, 14),
  RELEASE: () => manifest.version,
};

test("every function of the catalogue has one check, in the catalogue's order", () =>
  expect(selfChecks.map(({ name }) => name)).toEqual(catalogue.map(({ name }) => name)));

describe.each(selfChecks.map((check) => [check.name, check] as const))(
  "%s",
  (name, { formula, expected, within, from }) => {
    test("calls its function", () => expect(callsIn(formula).map((call) => call.name)).toContain(name));
    test("expects what the table or the arithmetic says", () => expect(expected).toEqual(held[name]?.()));
    test("says where that comes from, and takes words and counts exactly", () => {
      expect(from.length).toBeGreaterThan(5);
      if (typeof expected !== "number") expect(within).toBe(0);
      // A check that is off by more than a twentieth of the figure would prove little.
      else expect(within).toBeLessThanOrEqual(Math.abs(expected) / 20);
    });
  },
);

test("what is fed in is the tables' own", () => {
  const fed = (name: string): readonly number[] =>
    [...(selfChecks.find((check) => check.name === name)?.formula.matchAll(/-?\d+(?:\.\d+)?/g) ?? [])].map(([digits]) =>
      Number(digits),
    );
  expect(fed("KOPPEN")).toEqual([...berlin.temperatures, ...berlin.rains, berlin.latitude]);
  expect(fed("DAILY").slice(0, 12)).toEqual(curves.means.seattle);
  expect(fed("COOLSPELL").slice(0, 12)).toEqual(lebanonMonths.mean);
  expect(fed("ONDATE").slice(0, 12)).toEqual(lebanonMonths.high);
  expect(fed("MASSTREND")).toEqual([...loss.days.map((day) => 46_000 + day), ...loss.grams]);
  expect(fed("SCALEDMASS").slice(0, 30)).toEqual([...scaledMass.women.masses, ...scaledMass.women.lengths]);
  expect(fed("LAPSEBAND").slice(0, 3)).toEqual([segovia.lowHighs[6], segovia.lowElevation, segovia.highElevation]);
});
