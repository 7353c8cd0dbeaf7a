import { siteClimate } from "../../../functions/climate/siteClimate";
import { call, callCell } from "../../call";
import { lebanonMonths } from "../../normals";
import { yardstickOf } from "../../yardstick";

const yearAt = (...given: readonly unknown[]): number[][] => call(siteClimate, ...given) as number[][];

// The airport of Lebanon, in a valley of New Hampshire, is not in the network.
yardstickOf(
  siteClimate,
  {
    against: "NOAA normals 1991-2020, Lebanon NH",
    figure: "root mean square difference of the likely highs and lows",
    least: 0,
    most: 1.5,
    unit: "°C",
  },
  () => {
    const offs = yearAt(43.63, -72.3, 182).flatMap((row, month) => [
      (row[1] as number) - (lebanonMonths.high[month] as number),
      (row[4] as number) - (lebanonMonths.low[month] as number),
    ]);
    return { figure: Math.sqrt(offs.reduce((sum, off) => sum + off * off, 0) / offs.length), values: offs.length };
  },
);

test("likely lies in the middle of its band; the low below the high", () => {
  for (const [least, likely, most, , low] of yearAt(46.5, 9.8, 1500) as [number, number, number, number, number][]) {
    expect(likely - least).toBeCloseTo(most - likely, 9);
    expect(most).toBeGreaterThan(least);
    expect(low).toBeLessThan(likely);
  }
});

test("higher is colder, and less sure far above the stations", () => {
  const width = (year: number[][]): number =>
    year.reduce((sum, row) => sum + (row[2] as number) - (row[0] as number), 0);
  const [low, high] = [yearAt(46.5, 9.8, 1000), yearAt(46.5, 9.8, 2500)];
  high.forEach((row, month) => expect(row[1]).toBeLessThan(low[month]?.[1] as number));
  expect(width(yearAt(28, 86.9, 5900))).toBeGreaterThan(width(yearAt(28, 86.9, 2000)));
});

test("the seasons of the south", () => {
  const year = yearAt(-33.4, -70.6, 500);
  expect(year[0]?.[1] as number).toBeGreaterThan(year[6]?.[1] as number);
});

test.each([
  ["mid-ocean", [-45, -120, 0], /^#N\/A too few stations near this place: the nearest, .*, is 2195 km away$/],
  ["a pole", [-90, 0, 2830], /^#N\/A nothing is estimated beyond 80° north or south$/],
  [
    "far above all stations around",
    [52.2, 5.3, 6000],
    /^#N\/A 6000 m is more than 2000 m above the highest of the stations around, \d+ m/,
  ],
  ["above 6000 m", [28, 86.9, 6001], /^#VALUE! elevation holds 6001: give a number from -450 to 6000 m$/],
])("%s gives words", (_, given, words) => expect(String(callCell(siteClimate, ...given))).toMatch(words));
