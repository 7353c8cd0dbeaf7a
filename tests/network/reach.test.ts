import { models } from "../../functions/network/models";
import { predict, type Model } from "../../functions/network/kriging";
import type { SiteYear } from "../../functions/network/network";
import { networkOf } from "../../functions/network/open";
import type { Station } from "../../functions/network/station";
import { Problem } from "../../functions/problem";

/** Both sides of every limit of the estimate, with stations that are invented. All limits are our own, by the proof. */

/** km a degree along a meridian, on the mean radius of the earth (IUGG: 6371.0088 km). */
const DEGREE = (6371.0088 * Math.PI) / 180;
const year = (value: number): number[] => Array.from({ length: 12 }, (_, month) => value + (month % 4));
const MISSING = new Array<number>(12).fill(NaN);
let made = 0;
const station = (changes: Partial<Station> = {}): Station => ({
  network: "climat",
  id: `S${++made}`,
  name: `Hut ${made} (invented)`,
  country: "Nowhere",
  latitude: 0,
  longitude: 0,
  elevation: 1000,
  years: 30,
  high: year(20),
  low: year(8),
  vapour: year(9),
  rain: year(60),
  rainDays: year(5),
  ...changes,
});
/** So many stations, each so many km north of the equator, a hundred metres to a side of one another. */
const north = (km: number, count: number, changes: Partial<Station> = {}): Station[] =>
  Array.from({ length: count }, (_, i) => station({ latitude: km / DEGREE, longitude: i / 1000, ...changes }));
const at = (stations: readonly Station[], latitude = 0, longitude = 0, elevation = 1000): SiteYear | string => {
  const answer = networkOf(stations).yearAt(latitude, longitude, elevation);
  return answer instanceof Problem ? answer.message : answer;
};
const used = (stations: readonly Station[]): number => (at(stations) as SiteYear).stations.length;

test("up to 80° north and south, and no farther", () => {
  for (const side of [1, -1]) {
    const hut = [0, 1, 2].map((i) => station({ latitude: 79.9 * side, longitude: i }));
    expect(at(hut, 80 * side)).toHaveProperty("high");
    expect(at(hut, 80.01 * side)).toBe("nothing is estimated beyond 80° north or south");
  }
});

test("three neighbours at least, the nearest of them within 500 km, none from beyond 1000 km, 24 at most", () => {
  expect(at(north(10, 2))).toMatch(
    /^too few stations near this place: the nearest, Hut \d+ \(invented\), 1000 m, is 10 km/,
  );
  expect(at(north(10, 3))).toHaveProperty("high");
  expect(at(north(499, 3))).toHaveProperty("high");
  expect(at(north(501, 3))).toMatch(/^too few stations near this place: .* is 501 km away$/);
  expect(at(north(9000, 3))).toMatch(/^too few stations near this place: .* is 9000 km away$/);
  expect(used([...north(10, 3), ...north(999, 1)])).toBe(4);
  expect(used([...north(10, 3), ...north(1001, 1)])).toBe(3);
  expect(used(north(10, 24))).toBe(24);
  expect(used(north(10, 25))).toBe(24);
});

test("a kilometre of elevation counts as 150 km where neighbours are chosen", () => {
  const level = station({ latitude: -200 / DEGREE });
  const chosen = (km: number, elevation: number): boolean => {
    const other = station({ latitude: km / DEGREE, elevation });
    const { stations } = at([...north(10, 23), level, other]) as SiteYear;
    return stations.some((one) => one.station === other);
  };
  // √(200² − 150²) = 132.3 km: as far as 200 km at the place's own elevation.
  for (const elevation of [0, 2000]) expect([chosen(131, elevation), chosen(134, elevation)]).toEqual([true, false]);
});

test("up to 2000 m above the highest of them, and below the lowest", () => {
  const huts = [...north(10, 2, { elevation: 900 }), ...north(10, 2, { elevation: 1400 })];
  expect(at(huts, 0, 0, 3400)).toHaveProperty("high");
  expect(at(huts, 0, 0, 3401)).toMatch(/^3401 m is more than 2000 m above the highest of the stations around, 1400 m/);
  const summits = [...north(10, 2, { elevation: 2100 }), ...north(10, 2, { elevation: 2600 })];
  expect(at(summits, 0, 0, 100)).toHaveProperty("high");
  expect(at(summits, 0, 0, 99)).toMatch(/^99 m is more than 2000 m below the lowest of the stations around, 2100 m/);
});

/** Ten stations around a place, no two alike, of two networks; the last two without rain, the first two without vapour. */
const around = (latitude: number, longitude: number): Station[] =>
  Array.from({ length: 10 }, (_, i) => {
    const east = longitude + ((i * 7) % 10) / 2 - 2.2;
    return station({
      network: i % 3 === 0 ? "noaa" : "climat",
      latitude: latitude + i / 3 - 1.4,
      longitude: ((east + 540) % 360) - 180,
      elevation: 300 + 211 * i,
      high: year(24 - 1.3 * i),
      low: year(11 - i),
      vapour: i < 2 ? MISSING : i === 5 ? new Array<number>(12).fill(0.01) : year(9 - i / 3),
      rain: i > 7 ? MISSING : year(40 + 9 * i),
    });
  });

/** The central angle by the chord between two points of the unit sphere, in km. */
const kmApart = (one: Station, latitude: number, longitude: number): number => {
  const point = (north: number, east: number): number[] => {
    const [phi, lambda] = [(north * Math.PI) / 180, (east * Math.PI) / 180];
    return [Math.cos(phi) * Math.cos(lambda), Math.cos(phi) * Math.sin(lambda), Math.sin(phi)];
  };
  const [a, b] = [point(one.latitude, one.longitude), point(latitude, longitude)];
  const cosine = a.reduce((sum, value, i) => sum + value * (b[i] as number), 0);
  return Math.acos(Math.min(1, cosine)) * 6371.0088;
};

/**
 * The year as the kriging, which is held to the schoolbook beside this, has it of neighbours that are worked out here: km,
 * km above the place, degrees farther from the equator beyond 25°, degrees to the east; of the older normals 0.6 K warmer
 * than they say; rain on square roots, vapour on logarithms and 0.05 hPa at least (Magnus over water for its share).
 */
test.each([
  [46, 9, "inland"],
  [26, -120, "about 25° north"],
  [-26, 140, "about 25° south"],
  [-43, 179.5, "across the date line"],
  [60, -179.5, "across it from the other side"],
])("what is estimated at %d, %d, %s", (latitude, longitude) => {
  const elevation = 1500;
  const all = around(latitude, longitude).sort(
    (one, other) => kmApart(one, latitude, longitude) - kmApart(other, latitude, longitude),
  );
  const beyond = (degrees: number): number => Math.max(0, Math.abs(degrees) - 25);
  const solve = (model: Model, of: readonly Station[], value: (one: Station, month: number) => number) =>
    predict(
      model,
      of.map((one) => ({
        km: kmApart(one, latitude, longitude),
        higher: (one.elevation - elevation) / 1000,
        poleward: beyond(one.latitude) - beyond(latitude),
        eastward: Math.asin(Math.sin(((one.longitude - longitude) * Math.PI) / 180)) * (180 / Math.PI),
      })),
      latitude < 0,
      (i, j) => kmApart(of[i] as Station, of[j]?.latitude as number, of[j]?.longitude as number),
      (i, month) => value(of[i] as Station, month),
    );
  const answer = at(all, latitude, longitude, elevation) as SiteYear;
  expect(answer.stations.map((one) => one.station)).toEqual(all);
  const middles = new Array<number>(12).fill(0);
  for (const kind of ["high", "low"] as const) {
    const wanted = solve(
      models[kind],
      all,
      (one, month) => (one[kind][month] as number) + (one.network === "noaa" ? 0.6 : 0),
    );
    for (const [month, { likely, half }] of wanted.entries()) {
      const band = answer[kind][month];
      expect(band?.likely).toBeCloseTo(likely, 5);
      expect((band?.most as number) - likely).toBeCloseTo(half, 5);
      expect(likely - (band?.least as number)).toBeCloseTo(half, 5);
      middles[month] = (middles[month] as number) + likely / 2;
    }
  }
  const rainy = all.filter(({ rain }) => rain !== MISSING);
  const rain = solve(models.rain, rainy, (one, month) => Math.sqrt(one.rain[month] as number));
  rain.forEach(({ likely }, month) => expect(answer.rain[month]).toBeCloseTo(likely ** 2, 4));
  const moist = all.filter(({ vapour }) => vapour !== MISSING);
  const vapour = solve(models.vapour, moist, (one, month) => Math.log(Math.max(one.vapour[month] as number, 0.05)));
  vapour.forEach(({ likely }, month) => {
    const middle = middles[month] as number;
    const saturated = 6.112 * Math.exp((17.62 * middle) / (243.12 + middle));
    expect(answer.humidity[month]).toBeCloseTo((100 * Math.exp(likely)) / saturated, 4);
  });
});

test("rain and humidity of three stations, and of two nothing", () => {
  const dry = north(10, 2, { rain: MISSING, vapour: MISSING });
  const some = at([...dry, ...north(20, 3)]) as SiteYear;
  expect(some.rain[0]).toBeCloseTo(60, 0);
  expect(some.humidity[0]).toBeGreaterThan(20);
  const few = at([...dry, ...north(20, 2)]) as SiteYear;
  expect([...few.rain, ...few.humidity].every(Number.isNaN)).toBe(true);
});

test("of many stations of one name five are told, and how many more; of a name that is none the three nearest", () => {
  const huts = Array.from({ length: 7 }, (_, i) => station({ id: String(90_001 + i), name: "Fold Hut" }));
  const found = networkOf([...huts, station({ name: "Ridge" }), station({ name: "Ridges" })]);
  const told = (wanted: string): string => (found.find(wanted) as Problem).message;
  expect(told("fold hut")).toMatch(
    /: 7 stations fit, (Fold Hut, Nowhere \(9000[1-5]\); ){5}and 2 more; give the number$/,
  );
  expect(told("Ridgy")).toMatch(
    /the nearest names are Ridge, Nowhere \(S\d+\); Ridges, Nowhere \(S\d+\); Fold Hut, Nowhere \(9000\d\)$/,
  );
});

test("two of one name are told, a sixth as one more; the three nearest names are those that fewest letters part", () => {
  const found = (...names: readonly string[]): string =>
    (networkOf(names.map((name, i) => station({ id: String(90_001 + i), name }))).find("fold hut") as Problem).message;
  expect(found("Fold Hut", "Fold Hut", "Ridge")).toMatch(
    /: 2 stations fit, .* \(90001\); .* \(90002\); give the number$/,
  );
  expect(found(...Array<string>(5).fill("Fold Hut"))).toMatch(/: 5 stations fit, .* \(90005\); give the number$/);
  expect(found(...Array<string>(6).fill("Fold Hut"))).toMatch(/: 6 stations fit, .* \(90005\); and 1 more; give the/);
  // One, two and three letters off, in every order in which a file may have them, among others that are farther off.
  const near = ["Fold Hat", "Ford Hat", "Ford Mat"];
  const orders = [0, 1, 2].flatMap((i) => [1, 2].map((j) => [i, (i + j) % 3, (i + 3 - j) % 3]));
  for (const order of orders)
    expect(found("Summit", "Fold", ...order.map((i) => near[i] as string), "Huts of Fold")).toMatch(
      /nearest names are Fold Hat, .*; Ford Hat, .*; Ford Mat, /,
    );
});

test("south of the equator the year is that of the north, half a year on, however near it lies", () => {
  const turned = (values: readonly number[]): number[] => [...values.slice(6), ...values.slice(0, 6)];
  const uneven = (value: number, i: number): number[] => year(value).map((one, month) => one + Math.sin(month + i));
  const north = Array.from({ length: 6 }, (_, i) =>
    station({
      latitude: 0.2 + i / 7,
      longitude: i / 3,
      elevation: 300 * i,
      high: uneven(24 - i, i),
      low: uneven(10 - i, i),
    }),
  );
  const south = north.map((one) => ({
    ...one,
    latitude: -one.latitude,
    high: turned(one.high),
    low: turned(one.low),
  }));
  const [above, below] = [at(north, 0.5, 1, 1200) as SiteYear, at(south, -0.5, 1, 1200) as SiteYear];
  for (const kind of ["high", "low"] as const) {
    const halfOn = turned(above[kind].map(({ likely }) => likely));
    for (const [month, { likely }] of below[kind].entries()) expect(likely).toBeCloseTo(halfOn[month] as number, 9);
  }
});

test("on the other side of the earth the nearest is told as well, and its distance", () => {
  const half = Math.round(Math.PI * 6371.0088);
  // At some places the chord is rounded to more than the sphere is wide: these are among them.
  const places = [
    [5.63, 44.23],
    [18.41, 56.82],
    [7.96, 118.26],
    [-35, 17.3],
    [79, 0],
  ] as const;
  for (const [latitude, longitude] of places) {
    const there = station({ latitude: -latitude, longitude: longitude - 180 });
    expect(at([there], latitude, longitude)).toMatch(new RegExp(`is ${half} km away$`));
  }
});

test("where it never rains, none is estimated, and what is little is no millimetre", () => {
  expect((at(north(10, 5, { rain: year(0).map(() => 0) })) as SiteYear).rain).toEqual(Array<number>(12).fill(0));
  const some = at(north(10, 5, { rain: year(0).map(() => 0.25) })) as SiteYear;
  for (const rain of some.rain) expect(rain).toBeCloseTo(0.25, 2);
});
