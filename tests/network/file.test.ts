import { readFileSync } from "node:fs";
import { join } from "node:path";
import { FORMAT, readStations, writeStations } from "../../functions/network/file";
import { networkKeys, networks } from "../../functions/network/networks";
import { openNetwork } from "../../functions/network/open";
import { sources } from "../../functions/sources";
import { networkAsShipped } from "../network";

const FOLDER = join(__dirname, "../../functions/network");
const text = readFileSync(join(FOLDER, "stations.json"), "utf8");
const { stations } = networkAsShipped();

describe("the file", () => {
  test("comes back as it was written", () => {
    const made = (JSON.parse(text) as { made: string }).made;
    expect(writeStations(stations, made)).toBe(text);
    expect(readStations(writeStations(stations.slice(0, 3), made))).toEqual(stations.slice(0, 3));
  });
  test("holds as many stations of each network as its notice says", () => {
    const notice = readFileSync(join(FOLDER, "NOTICE.md"), "utf8");
    for (const key of networkKeys) {
      const count = stations.filter(({ network }) => network === key).length;
      expect(notice).toContain(`| ${count.toLocaleString("en").replace(",", " ")} `);
    }
  });
  test("every station has its place, a number of its own, and highs above lows", () => {
    expect(new Set(stations.map(({ id }) => id)).size).toBe(stations.length);
    for (const { id, latitude, longitude, elevation, high, low } of stations) {
      expect([id, Math.abs(latitude) <= 90, Math.abs(longitude) <= 180]).toEqual([id, true, true]);
      expect(elevation).toBeGreaterThan(-450);
      high.forEach((value, month) => expect(value).toBeGreaterThan(low[month] as number));
    }
  });
  test("every series has twelve months, those that are missing too", () => {
    for (const { high, low, vapour, rain, rainDays } of stations)
      expect([high, low, vapour, rain, rainDays].map(({ length }) => length)).toEqual([12, 12, 12, 12, 12]);
  });
  test("keeps the zero of a WMO number", () => expect(stations.some(({ id }) => id === "01001")).toBe(true));
});

describe("damaged", () => {
  const changed = (change: (file: { stations: unknown[][] } & Record<string, unknown>) => unknown): string => {
    const file = JSON.parse(text) as { stations: unknown[][] } & Record<string, unknown>;
    change(file);
    return JSON.stringify(file);
  };
  test.each([
    ["broken off", () => text.slice(0, -1000)],
    ["empty", () => ""],
    ["another page", () => "<html>404</html>"],
    ["null", () => "null"],
    ["of another format", () => text.replace(FORMAT, "something-else")],
    ["of a network that is not known", () => text.replace('"climat"', '"mine"')],
    ["a station of eleven months", () => changed(({ stations: [line] }) => (line?.[8] as number[]).pop())],
    ["a month that is text", () => changed(({ stations: [line] }) => void ((line?.[9] as unknown[])[3] = "4"))],
    ["a station without its highs", () => changed(({ stations: [line] }) => Object.assign(line ?? [], { 8: null }))],
    ["a country that is not there", () => changed(({ stations: [line] }) => Object.assign(line ?? [], { 3: 9999 }))],
    [
      "a network that is no number",
      () => changed(({ stations: [line] }) => Object.assign(line ?? [], { 0: "__proto__" })),
    ],
    ["an identifier that is no text", () => changed(({ stations: [line] }) => Object.assign(line ?? [], { 1: 1001 }))],
    ["a name that is no text", () => changed(({ stations: [line] }) => Object.assign(line ?? [], { 2: null }))],
    ["a place beyond the pole", () => changed(({ stations: [line] }) => Object.assign(line ?? [], { 4: 9100 }))],
    [
      "a place beyond the date line",
      () => changed(({ stations: [line] }) => Object.assign(line ?? [], { 5: -18_100 })),
    ],
    ["a place above all summits", () => changed(({ stations: [line] }) => Object.assign(line ?? [], { 6: 9100 }))],
    ["years without number", () => changed(({ stations: [line] }) => Object.assign(line ?? [], { 7: -1 }))],
    ["a low of no place on earth", () => changed(({ stations: [line] }) => void ((line?.[9] as number[])[3] = 9999))],
    ["a line too short", () => changed(({ stations: [line] }) => line?.pop())],
  ])("%s is refused as a whole", (_, damaged) => {
    expect(readStations(damaged())).toBeUndefined();
    expect(openNetwork(damaged())).toBeUndefined();
  });
});

/** A place on earth to a hundredth of a degree, land from 500 m below the sea to 9000 m, up to 300 years; months in tenths. */
test.each([
  [4, 9000, 9001],
  [4, -9000, -9001],
  [5, 18_000, 18_001],
  [5, -18_000, -18_001],
  [6, -500, -501],
  [6, 9000, 9001],
  [7, 0, -1],
  [7, 300, 301],
  [8, 600, 601],
  [8, -900, -901],
  [9, 600, 601],
  [9, -900, -901],
  [10, 1000, 1001],
  [10, 0, -1],
  [11, 12_500, 12_501],
  [12, 31, 32],
])("figure %i of a station may be %i, and not %i", (at, taken, refused) => {
  const holding = (value: number): string => {
    const file = JSON.parse(writeStations(stations.slice(0, 1), "2026-11-27")) as { stations: unknown[][] };
    // A series is its first month and the steps from month to month.
    (file.stations[0] as unknown[])[at] = at < 8 ? value : [value, ...new Array<number>(11).fill(0)];
    return JSON.stringify(file);
  };
  expect(readStations(holding(taken))).toHaveLength(1);
  expect(readStations(holding(refused))).toBeUndefined();
});

test("the warming that is added is the source's", () => {
  for (const [key, text] of [
    ["noaa", sources.noaaNormals.text],
    ["jma", sources.jmaNormals.text],
    ["cwa", sources.cwaNormals.text],
  ] as const) {
    expect(networks[key].warming.high).toBe(networks[key].warming.low);
    expect(text).toContain(`add ${networks[key].warming.high} K`);
  }
  expect(networks.climat.warming).toEqual({ high: 0, low: 0 });
});
