import { stationRank } from "../../../functions/climate/stationRank";
import { greatCircle } from "../../../functions/climate/shared/greatCircle";
import { stationScore, stationVerdict } from "../../../functions/climate/shared/stationRule";
import { call, callCell } from "../../call";
import { rows as pairs } from "../../tables/stationPairs.json";
import { yardstick } from "../../yardstick";
import { distances } from "../../tables/plansAndSeries.json";

/**
 * Held against distances of CLIMAT station pairs, to 0.1 km, worked out apart from this project. 0.6 % and a rounding: a sphere is at
 * most 0.56 % off the ellipsoid, and the latitudes are given to 0.01°, about 1 km.
 */
test.each(pairs)("$low is $km km from $high", ({ lowLatitude, lowLongitude, highLatitude, highLongitude, km }) =>
  expect(Math.abs(greatCircle(lowLatitude, lowLongitude, highLatitude, highLongitude) - km)).toBeLessThan(
    0.006 * km + 0.1,
  ),
);
yardstick(stationRank, { against: "distances of CLIMAT station pairs", within: 0.6, unit: "km" }, () =>
  pairs.map(({ low, lowElevation, lowLatitude, lowLongitude, highLatitude, highLongitude, km }) => [
    call(
      stationRank,
      [[low, lowElevation, lowLatitude, lowLongitude]],
      0,
      4000,
      highLatitude,
      highLongitude,
    )[0]?.[2] as number,
    km,
  ]),
);

// A quarter of a meridian is 10 002 km on the ellipsoid; round the date line the short way counts.
test("far distances", () => {
  expect(greatCircle(0, 0, 90, 0)).toBeCloseTo(10_007.5, 0);
  expect(greatCircle(0, 179.5, 0, -179.5)).toBeCloseTo(111.2, 1);
  expect(greatCircle(10, 20, 10, 20)).toBe(0);
  expect(greatCircle(30, 0, -30, 180)).toBeCloseTo(20_015, 0);
});

test("the other side of the earth is half its round away, however the sines are rounded", () => {
  for (let latitude = -90; latitude <= 90; latitude += 0.37)
    expect(greatCircle(latitude, 17.3, -latitude, -162.7)).toBeCloseTo(Math.PI * 6371.0088, 3);
});

const stations = [
  ["Far in the band (invented)", 1500, 46, 18],
  ["Near below (invented)", 900, 46.1, 11.1],
  ["Near in the band (invented)", 1300, 46.2, 11.2],
  ["Valley (invented)", 60, 46.1, 11.1],
];

test("best first: gap and distance both count", () => {
  const ranked = call(stationRank, stations, 1200, 1800, 46, 11);
  expect(ranked.map(([name]) => name)).toEqual([
    "Near in the band (invented)",
    "Near below (invented)",
    "Valley (invented)",
    "Far in the band (invented)",
  ]);
  expect(ranked.map(([, gap]) => gap)).toEqual([0, -300, -1140, 0]);
  expect(ranked.map(([, , , verdict]) => verdict)).toEqual([
    "In the band; near",
    "A little below: correct it; near",
    "Far below: shows the season, not the degrees; near",
    "In the band; far off, may be another climate",
  ]);
});

// The rule is common practice, no source: 100 m of gap count as 10 km.
test("100 m weigh as 10 km, above as below", () => {
  expect(stationScore(100, 0)).toBeCloseTo(stationScore(0, 10), 12);
  expect(stationScore(-100, 5)).toBeCloseTo(stationScore(100, 5), 12);
});

// Common practice, no source: 300 m and 1000 m of gap, 80 km and 250 km of distance; a limit itself is still inside.
test.each([
  [0, 0, "In the band; near"],
  [0.5, 0, "A little above: correct it; near"],
  [-0.5, 0, "A little below: correct it; near"],
  [-300, 80, "A little below: correct it; near"],
  [300, 80.1, "A little above: correct it; some way off, compare slope and coast"],
  [-301, 250, "Well below: correct it and show the band; some way off, compare slope and coast"],
  [1000, 250.1, "Well above: correct it and show the band; far off, may be another climate"],
  [1001, 0, "Far above: shows the season, not the degrees; near"],
])("a gap of %i m at %d km: %s", (gap, km, words) => expect(stationVerdict(gap, km)).toBe(words));

test("blank rows are left out, half a row is asked for", () => {
  expect(call(stationRank, [...stations.slice(0, 2), [null, "", null, null]], 1200, 1800, 46, 11)).toHaveLength(2);
  expect(callCell(stationRank, [["Pass (invented)", null, 46, 11]], 1200, 1800, 46, 11)).toBe(
    "#N/A elevation in row 1 of stations is blank",
  );
  expect(callCell(stationRank, [["Pass (invented)", 1500, 96, 11]], 1200, 1800, 46, 11)).toMatch(
    /^#VALUE! latitude in row 1 of stations holds 96: give a number from -90 to 90/,
  );
  expect(callCell(stationRank, [["Pass (invented)", 1500]], 1200, 1800, 46, 11)).toMatch(/give rows of 4 cells/);
});

test("a band upside down is refused", () =>
  expect(callCell(stationRank, stations, 1800, 1200, 46, 11)).toMatch(/^#VALUE! bandLow holds 1800 m, above bandHigh/));

/** At 40° north and south, at 10° and on the equator, over the date line too. 0.6 %: a sphere stands for the ellipsoid. */
yardstick(stationRank, { against: "GeographicLib 2.0, geodesics of WGS84", within: 0.006, unit: "share" }, () =>
  distances.map(([latitude, longitude, toLatitude, toLongitude, km]) => [
    call(stationRank, [["Station", 500, toLatitude, toLongitude]], 0, 4000, latitude, longitude)[0]?.[2] as number,
    km as number,
  ]),
);
