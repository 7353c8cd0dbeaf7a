import { koppen } from "../../../functions/climate/koppen";
import { callCell } from "../../call";
import { rows as cities } from "../../tables/koppenCities.json";
import { rows as stations } from "../../tables/dryMonths.json";
import { yardstickOf } from "../../yardstick";

const classOf = ({
  temperatures,
  rains,
  latitude,
}: {
  temperatures: number[];
  rains: number[];
  latitude: number;
}): unknown => callCell(koppen, [temperatures], [rains], latitude);

/**
 * Published classes of cities (kgc 1.0.0.2, the map of Rubel et al. 2016), from the normals 2004-2020 of a station within
 * 25 km (Datenbasis: Deutscher Wetterdienst, Einzelwerte gemittelt). Where they differ, this is why.
 */
const DIFFERENT: Record<string, readonly [ours: string, why: string]> = {
  "Murcia, Spain": ["BSh", "288 mm of rain a year are just above the limit of the desert, 264"],
  "Lima, Peru": ["BWh", "BWn, a desert of fog, is no class of Peel et al."],
  "Adelaide, Australia": ["BSk", "69 % of the rain falls in winter; 70 % would make it Csa"],
  "Cape Town, South Africa": ["Csa", "the warmest month is at the limit of 22 °C"],
  "New Delhi": ["BSh", "rain just below the limit of the steppe"],
  "Beijing, China": ["BSk", "rain just below the limit of the steppe"],
  "Moron, Mongolia": ["Dwb", "a fourth month above 10 °C in these warmer years"],
  "Yakutsk, Russia": ["Dfc", "the coldest month no longer below -38 °C in these warmer years"],
};
const agreeing = cities.filter((city) => classOf(city) === city.published);

yardstickOf(
  koppen,
  {
    against: "published classes of 24 cities (kgc 1.0.0.2)",
    figure: "cities that agree; each other lies at an edge of its class",
    least: 16,
    most: 16,
    unit: "",
  },
  () => ({ figure: agreeing.length, values: cities.length }),
);
test("published classes of 24 cities: 16 agree", () => {
  expect(cities).toHaveLength(24);
  expect(agreeing).toHaveLength(16);
  expect(agreeing.map(({ city }) => city).sort()).toEqual(
    cities
      .map(({ city }) => city)
      .filter((city) => !(city in DIFFERENT))
      .sort(),
  );
});
test.each(Object.entries(DIFFERENT))("%s differs, as explained: %p", (name, [ours]) => {
  const city = cities.find((one) => one.city === name);
  expect(city && classOf(city)).toBe(ours);
});

// The reasons above, in the figures themselves: how near each place lies to the limit that parts it from its published
// class. The margins are of the order of a change of climate: 2 K, a tenth of the rain, or one month.
describe("each difference is a place near the edge of its class", () => {
  const named = (name: string) => {
    const { temperatures, rains } = cities.find(({ city }) => city === name) as (typeof cities)[number];
    return {
      hottest: Math.max(...temperatures),
      coldest: Math.min(...temperatures),
      mild: temperatures.filter((t) => t > 10).length,
      rain: rains.reduce((sum, rain) => sum + rain, 0),
      aprilShare: rains.slice(3, 9).reduce((sum, rain) => sum + rain, 0) / rains.reduce((sum, rain) => sum + rain, 0),
      year: temperatures.reduce((sum, t) => sum + t, 0) / 12,
    };
  };
  test("Cape Town: warmest month within 2 K of 22 °C", () =>
    expect(Math.abs(named("Cape Town, South Africa").hottest - 22)).toBeLessThan(2));
  test("Yakutsk: coldest month within 2 K of -38 °C", () =>
    expect(Math.abs(named("Yakutsk, Russia").coldest + 38)).toBeLessThan(2));
  test("Adelaide: its share of winter rain within 2 % of 70 %", () =>
    expect(Math.abs(named("Adelaide, Australia").aprilShare - 0.7)).toBeLessThan(0.02));
  test("Moron: four mild months, one above the limit", () => expect(named("Moron, Mongolia").mild).toBe(4));
  test.each([
    ["Murcia, Spain", 5, 14],
    ["New Delhi", 10, 28],
    ["Beijing, China", 10, 28],
  ])("%s: rain within a tenth of %i times (2 T + %i)", (name, times, extra) => {
    const { rain, year } = named(name);
    const limit = times * (2 * year + extra);
    expect(Math.abs(rain - limit) / limit).toBeLessThan(0.1);
  });
});

// Twelve mountain and other stations, classed apart from this project after the same table of Peel et al. 2007.
test.each(stations)("$station is $koppen", (station) => expect(classOf(station)).toBe(station.koppen));

// In the three cities that part the two limits, the published class goes with 0 °C.
test.each([
  ["Bishkek, Kyrgyzstan", "Dsa", "Csa"],
  ["Sivas, Turkey", "Dsb", "Csb"],
  ["Bucharest, Romania", "Dfa", "Cfa"],
])("%s is %s, with the older limit of -3 °C %s", (name, cold, older) => {
  const city = cities.find((one) => one.city === name) as (typeof cities)[number];
  expect(classOf(city)).toBe(cold);
  expect(callCell(koppen, [city.temperatures], [city.rains], city.latitude, -3)).toBe(older);
});

test("a southern place turned by half a year is its northern twin", () => {
  for (const { temperatures, rains, latitude } of cities) {
    const turned = (values: number[]): number[] => [...values.slice(6), ...values.slice(0, 6)];
    const twin = { temperatures: turned(temperatures), rains: turned(rains), latitude: -latitude };
    expect(classOf(twin)).toBe(classOf({ temperatures, rains, latitude }));
  }
});

test("a slip in the sign of the latitude is told", () => {
  const berlin = cities.find(({ city }) => city.startsWith("Berlin")) as (typeof cities)[number];
  expect(classOf({ ...berlin, latitude: -berlin.latitude })).toMatch(
    /^#VALUE! latitude holds -52\.\d+, but April to September are the warmer half: south is negative/,
  );
});

test("ice, and a year without rain", () => {
  expect(classOf({ temperatures: Array<number>(12).fill(-20), rains: Array<number>(12).fill(5), latitude: -80 })).toBe(
    "EF",
  );
  expect(classOf({ temperatures: Array<number>(12).fill(25), rains: Array<number>(12).fill(0), latitude: 20 })).toBe(
    "BWh",
  );
});

test("a month of rain that is blank is asked for, not taken as 0", () => {
  const rains = [50, 50, 50, 50, 50, 50, 50, 50, 50, 50, 50, null];
  expect(callCell(koppen, [Array(12).fill(10)], [rains], 50)).toBe("#N/A month 12 of rains is blank");
});

/** Twelve months of two halves: April to September, and October to March; a list says each of its half's months. */
const year = (april: number | readonly number[], october: number | readonly number[]): number[] => {
  const half = (of: number | readonly number[]): readonly number[] =>
    typeof of === "number" ? Array<number>(6).fill(of) : of;
  const [inner, outer] = [half(april), half(october)];
  return [...outer.slice(3), ...inner, ...outer.slice(0, 3)];
};
/** A half-year whose first month is another. */
const first = (odd: number, others: number): readonly number[] => [odd, ...Array<number>(5).fill(others)];

/** Each limit itself and just past it, as the program of Beck et al. 2018 has it; mean of the year in brackets. */
test.each<[limit: string, temperatures: number[], rains: number[], latitude: number, klass: string]>([
  ["warmest month above 10 is not polar", year(10.1, 5), year(50, 50), 50, "Cfb"],
  ["warmest month of 10 is", year(10, 5), year(50, 50), 50, "ET"],
  ["warmest month above 0 is tundra", year(0.1, -5), year(50, 50), 70, "ET"],
  ["warmest month of 0 is frost", year(0, -5), year(50, 50), 70, "EF"],
  ["(10) rain of 10 x 34 is not dry", year(15, 5), year(first(20, 30), first(20, 30)), 50, "Cfb"],
  ["(10) rain below 10 x 34 is steppe", year(15, 5), year(first(20, 30), first(19, 30)), 50, "BSk"],
  ["(10) rain of 5 x 34 is steppe", year(15, 5), year(first(10, 15), first(10, 15)), 50, "BSk"],
  ["(10) rain below 5 x 34 is desert", year(15, 5), year(first(10, 15), first(9, 15)), 50, "BWk"],
  ["(18) is hot", year(23, 13), year(25, 25), 30, "BSh"],
  ["(17.95) is cold", year(23, 12.9), year(25, 25), 30, "BSk"],
  ["(10) 70 % of the rain in summer: limit 480", year(15, 5), year(49, 21), 50, "BSk"],
  ["(10) 69 % of the rain in summer: limit 340", year(15, 5), year(48, 22), 50, "Cfb"],
  ["(10) 70 % of the rain in winter: limit 200", year(15, 5), year(15, 35), 50, "Cfb"],
  ["(10) 69 % of the rain in winter: limit 340", year(15, 5), year(15.5, 34.5), 50, "BSk"],
  ["(-10) a year without rain is a desert", year(11, -31), year(0, 0), 60, "BWk"],
  ["coldest month of 18 is tropical", year(28, 18), year(200, 200), 10, "Af"],
  ["coldest month below 18 is not", year(28, 17.9), year(200, 200), 10, "Cfa"],
  ["driest month of 60 is rainforest", year(28, 18), year(130, first(60, 134)), 10, "Af"],
  ["driest month below 60 is monsoon", year(28, 18), year(130, first(59, 134)), 10, "Am"],
  ["driest month of 100 - 1500/25 is monsoon", year(28, 18), year(130, first(40, 136)), 10, "Am"],
  ["driest month below 100 - 1500/25 is savanna", year(28, 18), year(130, first(39, 136.2)), 10, "Aw"],
  ["driest month of summer of 40 is not dry", year(15, 5), year(40, 130), 50, "Cfb"],
  ["driest month of summer below 40 is", year(15, 5), year(39.9, 130), 50, "Csb"],
  ["a third of the wettest of winter is not dry", year(15, 5), year(30, 90), 50, "Cfb"],
  ["less than a third is", year(15, 5), year(29.9, 90), 50, "Csb"],
  ["a tenth of the wettest of summer is not dry", year(15, 5), year(100, 10), 50, "Cfb"],
  ["less than a tenth is", year(15, 5), year(100, 9.9), 50, "Cwb"],
  ["dry in both, winter drier in sum", year(15, 5), year(first(10, 100), first(5, 100)), 50, "Cwb"],
  ["dry in both, equal in sum", year(15, 5), year(first(10, 100), first(5, 101)), 50, "Csb"],
  ["dry in both, summer drier in sum", year(15, 5), year(first(10, 100), first(5, 110)), 50, "Csb"],
  ["dry in summer alone, though more falls in it", year(15, 5), year(first(10, 100), first(90, 30)), 50, "Csb"],
  ["dry in winter alone, though more falls in it", year(15, 5), year(60, first(5, 100)), 50, "Cwb"],
  ["coldest month of 0 is snow", year(20, 0), year(50, 50), 50, "Dfb"],
  ["coldest month above 0 is not", year(20, 0.1), year(50, 50), 50, "Cfb"],
  ["warmest month of 22 is a hot summer", year(22, 0), year(50, 50), 50, "Dfa"],
  ["warmest month below 22 is not", year(21.9, 0), year(50, 50), 50, "Dfb"],
  ["a fourth month of 10 does not count", year([2, 15, 15, 15, 10, 2], 2), year(50, 50), 50, "Cfc"],
  ["a fourth month above 10 does", year([2, 15, 15, 15, 10.1, 2], 2), year(50, 50), 50, "Cfb"],
  ["coldest month of -38 is not the hardest winter", year([0, 15, 15, 15, 0, 0], -38), year(20, 20), 65, "Dfc"],
  ["coldest month below -38 is", year([0, 15, 15, 15, 0, 0], -38.1), year(20, 20), 65, "Dfd"],
  ["equal halves, north: April to September are summer", year(15, 15), year(20, 90), 10, "Csb"],
  ["equal halves, equator: as north", year(15, 15), year(20, 90), 0, "Csb"],
  ["equal halves, south: October to March are summer", year(15, 15), year(20, 90), -10, "Cfb"],
  ["a tenth of a degree parts the halves as well", year(15.1, 15), year(20, 90), -10, "Csb"],
  ["within the tropics the temperature alone says which half is summer", year(12, 16), year(20, 90), 10, "Cfb"],
  ["and at 23.5 degrees, their edge", year(12, 16), year(20, 90), 23.5, "Cfb"],
])("%s", (_, temperatures, rains, latitude, klass) => expect(classOf({ temperatures, rains, latitude })).toBe(klass));

test("beyond 23.5 degrees the other half as the warmer one is told", () =>
  expect(classOf({ temperatures: year(12, 16), rains: year(20, 90), latitude: 23.6 })).toMatch(
    /^#VALUE! latitude holds 23\.6, but October to March are the warmer half/,
  ));

/**
 * Peel, Finlayson & McMahon (2007), Table 1: dry below ten times twice the mean temperature, and 28 more where 70 % of the
 * rain falls in summer, none where in winter, 14 elsewhere. A year of 20 °C throughout has its limit at 680, 400 or 540 mm.
 */
describe("the limit of dryness, a millimetre on either side", () => {
  const even = Array.from({ length: 12 }, (_, month) => 20 + (month === 6 ? 3 : month === 0 ? -3 : 0));
  const rainOf = (sum: number, inSummer: number): number[] =>
    even.map((_, month) => (sum * (month >= 3 && month <= 8 ? inSummer : 1 - inSummer)) / 6);
  test.each([
    [0.75, 680],
    [0.25, 400],
    [0.5, 540],
  ])("with %f of the rain in summer at %i mm", (inSummer, limit) => {
    expect(classOf({ temperatures: even, rains: rainOf(limit - 1, inSummer), latitude: 30 })).toMatch(/^B/);
    expect(classOf({ temperatures: even, rains: rainOf(limit + 1, inSummer), latitude: 30 })).not.toMatch(/^B/);
  });
});
