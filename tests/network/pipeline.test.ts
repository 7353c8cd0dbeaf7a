import { readFileSync } from "node:fs";
import { join } from "node:path";
import { averagesOf } from "../../addin/build/stations/averages";
import { extremesIn } from "../../addin/build/stations/extremes";
import { readNormals } from "../../addin/build/stations/normals";
import { readList, readReports, type Report } from "../../addin/build/stations/reports";
import { addingTo, twinsOf } from "../../addin/build/stations/thin";
import type { Station } from "../../functions/network/station";
import { networkAsShipped } from "../network";
import { rows as pairs } from "../tables/stationPairs.json";

const raw = (name: string): string => readFileSync(join(__dirname, "../tables/climat", name), "latin1");
const read = (name: string, text = raw(name)) => {
  const found = readReports(name, text);
  if (typeof found === "string") throw new Error(found);
  return found;
};
const list = (() => {
  const found = readList(raw("stations_list_CLIMAT_data.txt"));
  if (typeof found === "string") throw new Error(found);
  return found;
})();
const shipped = (id: string): Station => {
  const found = networkAsShipped().stations.find((station) => station.id === id);
  if (!found) throw new Error(`${id} is not in the file`);
  return found;
};

describe("a real month of reports", () => {
  const { reports, damaged } = read("CLIMAT_RAW_201207.txt");
  const of = (station: string): Report | undefined => reports.find((report) => report.station === station);

  test("is read to its last line, the old sign for the end of a file apart", () => {
    expect(reports).toHaveLength(25);
    expect(damaged).toEqual([]);
  });
  test("the figures of Jan Mayen, as they stand in its line: tenths, no trace of rain", () =>
    expect(of("01001")).toEqual({
      station: "01001",
      year: 2012,
      month: 6,
      mean: 4.8,
      high: 6.8,
      low: 3.3,
      vapour: 7.5,
      rain: 18,
      rainDays: 2,
    }));
  test("a sign of 1 is minus", () => {
    const cold = read("CLIMAT_RAW_201201.txt").reports.find(({ station }) => station === "89009");
    expect(cold).toMatchObject({ high: expect.any(Number) as number });
    expect(cold?.high).toBeLessThan(-20);
    expect(cold?.low).toBeLessThan(cold?.high ?? NaN);
  });
});

describe("damaged files", () => {
  test("lines of January 2016 that were garbled on the way are left out by their numbers, the others stay", () => {
    const { reports, damaged } = read("CLIMAT_RAW_201601.txt");
    expect(damaged).toEqual([9, 10, 11, 12]);
    expect(reports.map(({ station }) => station)).not.toContain("40357");
    expect(reports.length).toBeGreaterThan(15);
  });
  const [titles = "", line = ""] = raw("CLIMAT_RAW_201207.txt")
    .split("\r\n")
    .flatMap((one) => one.split("\n"));
  test.each([
    ["a line that breaks off", line.slice(0, 40)],
    ["a line of another month", line.replace("2012;07", "2012;08")],
    ["letters for a figure", line.replace(";0;068;", ";0;O68;")],
    ["a station number of four digits", line.replace(";01001;", ";1001;")],
  ])("%s is left out and counted", (_, broken) => {
    expect(broken).not.toBe(line);
    const { reports, damaged } = read("CLIMAT_RAW_201207.txt", `${titles}\n${line}\n${broken}\n`);
    expect(reports).toHaveLength(1);
    expect(damaged).toEqual([3]);
  });
  test("a missing figure is NaN and not 0; a trace of rain is 0", () => {
    const { reports } = read(
      "CLIMAT_RAW_201207.txt",
      `${titles}\n${line.replace(";0;068;", ";;;").replace(";0018;", ";9999;")}\n`,
    );
    expect(reports[0]).toMatchObject({ high: NaN, low: 3.3, rain: 0 });
  });
  test("a file of another kind, or of another name, is refused in words", () => {
    expect(readReports("CLIMAT_RAW_201207.txt", "<html>404</html>")).toMatch(
      /^CLIMAT_RAW_201207.txt does not begin with/,
    );
    expect(readReports("july.txt", raw("CLIMAT_RAW_201207.txt"))).toMatch(/^july.txt is not named/);
    expect(readList("<html>404</html>")).toMatch(/^the list of stations does not begin/);
  });
  test("a station of the list without a place is left out", () => {
    expect(list.has("99092")).toBe(false);
    expect(list.get("89009")).toMatchObject({ name: "Amundsen-Scott", latitude: -90, elevation: 2830 });
  });
});

/** All reports of two Spanish stations, a file a month as they are published. */
const years = (): Report[] => {
  const [titles = ""] = raw("CLIMAT_RAW_201207.txt").split(/\r?\n/);
  const months = new Map<string, string[]>();
  for (const line of raw("segoviaNavacerrada.txt").split(/\r?\n/).filter(Boolean)) {
    const month = line.slice(0, 7).replace(";", "");
    months.set(month, [...(months.get(month) ?? []), line]);
  }
  return [...months].flatMap(([month, lines]) => [
    ...read(`CLIMAT_RAW_${month}.txt`, [titles, ...lines].join("\n")).reports,
  ]);
};

describe("averages", () => {
  const reports = years();
  const { stations } = averagesOf(reports, list);

  test("are those that another program found in the same reports (Python; 2004 to 2020, ours to 2021)", () => {
    const pair = pairs.find(({ low }) => low === "Segovia");
    const same = averagesOf(
      reports.filter(({ year }) => year >= 2004 && year <= 2020),
      list,
    ).stations;
    expect(same.map(({ id }) => id)).toEqual(["08213", "08215"]);
    for (const [i, highs, lows] of [
      [0, pair?.lowHighs, pair?.lowLows],
      [1, pair?.highHighs, pair?.highLows],
    ] as const) {
      same[i]?.high.forEach((value, month) => expect(Math.abs(value - (highs?.[month] ?? NaN))).toBeLessThan(0.02));
      same[i]?.low.forEach((value, month) => expect(Math.abs(value - (lows?.[month] ?? NaN))).toBeLessThan(0.02));
    }
  });
  test("are what the shipped file holds", () => {
    for (const { id, high, low, years } of stations) {
      expect(shipped(id).years).toBe(years);
      high.forEach((value, month) => expect(shipped(id).high[month]).toBeCloseTo(value, 0));
      low.forEach((value, month) => expect(Math.abs((shipped(id).low[month] ?? NaN) - value)).toBeLessThan(0.051));
    }
  });

  const changed = (change: (report: Report, i: number) => Report) => averagesOf(reports.map(change), list);
  const januaries = reports.filter(({ station, month }) => station === "08215" && month === 0).length;
  test("a stray of 30 K is left out and counted, and changes the mean by a tenth of what it would", () => {
    const first = reports.findIndex(({ station, month }) => station === "08215" && month === 0);
    const before = stations.find(({ id }) => id === "08215")?.high[0] ?? NaN;
    const one = changed((report, i) => (i === first ? { ...report, high: report.high + 30 } : report));
    const after = one.stations.find(({ id }) => id === "08215");
    expect(one.leftOut.strays).toBe(averagesOf(reports, list).leftOut.strays + 1);
    expect(Math.abs((after?.high[0] ?? NaN) - before)).toBeLessThan(3 / januaries);
  });
  test("a high below its low is no report", () => {
    const { leftOut, stations: none } = changed((report) => ({ ...report, high: report.low - 1 }));
    expect(leftOut.contradictions).toBe(reports.length);
    expect(none).toEqual([]);
    expect(leftOut.short).toEqual(["08213", "08215"]);
  });
  test("a later report of the same month is the correction", () => {
    const { stations: corrected } = averagesOf(
      [...reports.map((report) => ({ ...report, rain: 999 })), ...reports],
      list,
    );
    expect(corrected[0]?.rain).toEqual(stations[0]?.rain);
  });
  test("seven years of one month are too few, and the station is named", () => {
    const { leftOut } = averagesOf(
      reports.filter(({ station, month, year }) => station !== "08215" || month !== 3 || year > 2014),
      list,
    );
    expect(leftOut.short).toEqual(["08215"]);
  });
  test("a station without a place in the list is named", () =>
    expect(averagesOf(reports, new Map()).leftOut.unlisted).toEqual(["08213", "08215"]));
  test("vapour above saturation is left out, the temperatures stay", () => {
    const { stations: wet, leftOut } = changed((report) => ({ ...report, vapour: 60 }));
    expect(leftOut.supersaturated).toEqual(["08213", "08215"]);
    expect(wet[0]?.vapour.every(Number.isNaN)).toBe(true);
    expect(wet[0]?.high).toEqual(stations[0]?.high);
  });
});

describe("other networks", () => {
  const twelve = (name: string): string => Array.from({ length: 12 }, (_, i) => `${name}_${i + 1}`).join(",");
  const titles = `id,name,country,latitude,longitude,elevation_m,years,${twelve("high_c")},${twelve("low_c")}`;
  const row = (id: string, metres: number, high: number, low: number, years = "30"): string =>
    [
      id,
      "Somewhere 某地",
      "United States",
      40,
      -105,
      metres,
      years,
      ...Array<number>(12).fill(high),
      ...Array<number>(12).fill(low),
    ].join();
  const stationsOf = (...rows: readonly string[]) => {
    const found = readNormals("us-normals-8110.csv", [titles, ...rows].join("\n"));
    if (typeof found === "string") throw new Error(found);
    return found;
  };
  test("a row is read: its own number, its Latin name, no vapour", () => {
    const [station] = stationsOf(row("USN8110-USC00050000", 2500, 10, -5)).stations;
    expect(station).toMatchObject({
      network: "noaa",
      id: "USC00050000",
      name: "Somewhere",
      elevation: 2500,
      years: 30,
    });
    expect(station?.vapour[0]).toBeNaN();
  });
  test("short and damaged rows are left out by name", () =>
    expect(
      stationsOf(row("USN8110-A", 1, 10, 0, "4"), row("USN8110-B", 1, 0, 10), row("USN8110-C", NaN, 10, 0)).leftOut,
    ).toEqual(["USN8110-A", "USN8110-B", "USN8110-C"]));
  test("a file that lacks a column is refused in words", () =>
    expect(readNormals("us-normals-8110.csv", "id,name\n1,x")).toMatch(/^us-normals-8110.csv lacks country, latitude/));
  test("one that stands in the network already, or whose neighbour says the same, adds nothing", () => {
    const [first] = stationsOf(row("USN8110-A", 2500, 10, -5)).stations as [Station];
    const there = { ...first, network: "climat", id: "72000" } as const;
    expect(addingTo([there], [first])).toMatchObject({ same: 1, stations: [] });
    const near = { ...first, id: "N", latitude: 40.2, elevation: 2600, high: first.high.map((value) => value - 0.65) };
    expect(addingTo([first], [near])).toMatchObject({ dispensable: 1, stations: [] });
    const basin = { ...near, low: near.low.map((value) => value - 8) };
    expect(addingTo([first], [basin]).stations).toEqual([basin]);
  });
  test("twins say how much the climate warmed between the periods", () => {
    const [first] = stationsOf(row("USN8110-A", 2500, 10, -5)).stations as [Station];
    const warmer = { ...first, network: "climat", high: first.high.map((value) => value + 0.6) } as const;
    const { pairs: count, high, low } = twinsOf([warmer], [first]);
    expect([count, high, low].map((value) => Number(value.toFixed(9)))).toEqual([1, -0.6, 0]);
  });
});

test("a station that reports extremes is found among real neighbours; the neighbours are not", () => {
  const around = networkAsShipped()
    .around(47, 11, 400)
    .map(({ station }) => station)
    .filter(({ network }) => network === "climat");
  expect(extremesIn(around)).toEqual([]);
  const [one] = around as [Station];
  const extreme = { ...one, high: one.high.map((value) => value + 8), low: one.low.map((value) => value - 8) };
  expect(extremesIn(around.map((station) => (station === one ? extreme : station)))).toEqual([
    { station: extreme, high: expect.any(Number) as number, low: expect.any(Number) as number },
  ]);
});
