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
