import type { Band, SiteYear } from "../../../functions/network/network";
import { siteNote } from "../../../functions/climate/siteNote";
import { callCell } from "../../call";
import { networkAsShipped } from "../../network";

const note = (...given: readonly unknown[]): string => String(callCell(siteNote, ...given));

// The terms of the data, CC BY 4.0 and "free with citation", and those of the open government licence of Taiwan.
test.each([
  [
    "the Alps",
    [46.5, 9.8, 1500],
    ["Datenbasis: Deutscher Wetterdienst, Einzelwerte gemittelt (CC BY 4.0), 2003-2021."],
  ],
  ["Colorado", [39, -106, 2800], ["NOAA, 1981-2010 normals"]],
  ["Honshu", [36.2, 137.6, 1500], ["Japan Meteorological Agency website, edited"]],
  ["Taiwan", [23.5, 120.9, 2000], ["Central Weather Administration, Taiwan (Open Government Data License)"]],
])("carries the credits of the networks that answered in %s", (_, given, credits) => {
  for (const credit of credits) expect(note(...given)).toContain(credit);
  // Alone, it is how the whole note ends.
  const alone = note(...given, null, "credit");
  for (const credit of credits) expect(`${alone}.`).toContain(credit);
  expect(note(...given)).toMatch(new RegExp(`fog\\. ${alone.replace(/[.()]/g, "\\$&")}\\.$`));
});
test("and of no other", () => expect(note(46.5, 9.8, 1500)).not.toMatch(/NOAA|Japan|Taiwan/));

test("counts and names what it rests on as the network has it", () => {
  const { stations } = networkAsShipped().yearAt(46.5, 9.8, 1500) as {
    stations: readonly { station: { name: string; elevation: number }; km: number }[];
  };
  const similar = stations.filter(({ station }) => Math.abs(station.elevation - 1500) <= 300).length;
  expect(note(46.5, 9.8, 1500)).toContain(`from ${stations.length} weather stations`);
  expect(note(46.5, 9.8, 1500)).toContain(`; ${similar} lie within 300 m of this elevation`);
  for (const { station, km } of stations.slice(0, 3)) {
    expect(note(46.5, 9.8, 1500)).toContain(`${station.name}, ${station.elevation} m, ${Math.round(km)} km`);
  }
});

test("summer is January in the south: the same figures, turned", () => {
  const widths = (text: string): string[] => text.match(/[\d.]+ and [\d.]+ K/g) ?? [];
  expect(widths(note(-33, -70, 1500))).toHaveLength(2);
  expect(widths(note(46.5, 9.8, 1500))[0]).not.toBe(widths(note(46.5, 9.8, 1500))[1]);
});

test.each([
  [46.5, 9.8, 1500, [5, 6, 7], [11, 0, 1]],
  [-33, -70, 1500, [11, 0, 1], [5, 6, 7]],
  [0, -78.5, 2800, [5, 6, 7], [11, 0, 1]],
] as const)(
  "the widths at %d, %d are the means of the hemisphere's three months",
  (latitude, longitude, elevation, summer, winter) => {
    const year = networkAsShipped().yearAt(latitude, longitude, elevation) as SiteYear;
    const wanted = [summer, winter].map((months: readonly number[]) =>
      [year.high, year.low]
        .map(
          (bands) =>
            months.reduce((sum, month) => sum + (bands[month] as Band).most - (bands[month] as Band).likely, 0) / 3,
        )
        .map((width) => width.toFixed(1)),
    );
    const text = note(latitude, longitude, elevation);
    expect(text).toContain(
      `within ${wanted[0]?.join(" and ")} K of the likely in summer, ${wanted[1]?.join(" and ")} K in winter`,
    );
  },
);

test("none, one or several stations of a like elevation, in words", () => {
  const said = new Set<string>();
  for (let elevation = 200; elevation <= 4200; elevation += 200) {
    const year = networkAsShipped().yearAt(46.5, 9.8, elevation) as SiteYear;
    const similar = year.stations.filter(({ station }) => Math.abs(station.elevation - elevation) <= 300).length;
    const words = similar === 0 ? "none lies" : similar === 1 ? "one lies" : `${similar} lie`;
    expect(note(46.5, 9.8, elevation)).toContain(`; ${words} within 300 m`);
    said.add(words);
  }
  expect([...said]).toEqual(expect.arrayContaining(["none lies", "one lies"]));
});

test("in feet, miles and °F", () => {
  expect(note(46.5, 9.8, 1500 / 0.3048, "imperial")).toContain("St. Valentino alla Muta, 4793 ft, 39 mi");
  expect(note(46.5, 9.8, 1500 / 0.3048, "imperial")).toMatch(/within [\d.]+ and [\d.]+ °F of the likely/);
});

test("what cannot be estimated is words", () => {
  expect(note(-45, -120, 0)).toBe(
    "#N/A too few stations near this place: the nearest, Isla de Pascua, 48 m, is 2195 km away",
  );
  expect(note(90, 0, 0)).toBe("#N/A nothing is estimated beyond 80° north or south");
});
