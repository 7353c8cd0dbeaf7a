import { perform } from "../../taskpane/actions/action";
import { insertPlace, sheetsFor, type PlaceChoice } from "../../taskpane/actions/insertPlace";
import { filled } from "../../taskpane/sheets/filled";
import { nativeClimate } from "../../taskpane/sheets/nativeClimate";
import { stationShortlist } from "../../taskpane/sheets/stationShortlist";
import type { Sheet } from "../../taskpane/sheets/sheet";
import { networkAsShipped } from "../network";
import { openWorkbook, readSheet } from "../preview/engine";

const choice: PlaceChoice = {
  latitude: -13.5,
  longitude: -72,
  bandLow: 3000,
  bandHigh: 3600,
  elevation: 3200,
  words: "13.50° S, 72.00° W at 3200 m",
  stations: ["Mollendo, Peru", "16008"],
};

test("an input is filled by its name, and nothing else is", () => {
  const sheet = filled(stationShortlist, { "home.latitude": 46.5 });
  const figures = ({ blocks }: Sheet) => blocks.flatMap(({ rows }) => rows.flat());
  const changed = figures(sheet).filter((content, i) => content !== figures(stationShortlist)[i]);
  expect(changed).toEqual([46.5]);
  expect(() => filled(stationShortlist, { "network.km[1]": 1 })).toThrow(/no input network\.km/);
});

test("the sheets are those of the place alone: of the example nothing is left", () => {
  const typed = (sheet: Sheet) =>
    sheet.blocks
      .filter(({ role }) => role === "input")
      .flatMap(({ rows }) => rows.flat())
      .filter((content) => content !== null);
  const [climate, shortlist] = sheetsFor(choice) as [Sheet, Sheet];
  expect(typed(shortlist).sort()).toEqual([-13.5, -72, 3000, 3600]);
  expect(typed(climate).sort()).toEqual([-13.5, -72, "16008", 3000, 3200, 3600, "Mollendo, Peru"].sort());
});

test("both sheets are worked out for the place, one follows the other, and no place is refused in words", async () => {
  expect(networkAsShipped().stations.length).toBeGreaterThan(1000);
  const { workbook, close } = openWorkbook();
  try {
    expect(await perform(insertPlace, workbook, undefined)).toMatchObject({
      kind: "refused",
      words: { text: expect.stringMatching(/^Say first where/) as string },
    });
    const before = await workbook.sheetNames();
    const outcome = await perform(insertPlace, workbook, {
      ...choice,
      latitude: 46.5,
      longitude: 9.8,
      bandLow: 1200,
      bandHigh: 1800,
      elevation: 1500,
      words: "the Alps",
      stations: ["St. Valentino alla Muta, Italy", "Paganella, Italy"],
    });
    expect(outcome).toMatchObject({
      kind: "done",
      done: {
        text: '"Native climate" and "Station shortlist" are in the workbook, for the Alps. Change the place on "Station shortlist": "Native climate" follows, but for its elevation.',
      },
    });
    expect(await workbook.sheetNames()).toEqual([...before, "Native climate", "Station shortlist"]);
    expect((await workbook.selection()).sheet).toBe("Native climate");
    const shortlist = await readSheet(workbook, "Station shortlist", stationShortlist);
    expect(shortlist.of("network.station[1]")).toBe("St. Valentino alla Muta, Italy");
    const climate = await readSheet(workbook, "Native climate", nativeClimate);
    // VIV.SITECLIMATE(46.5,9.8,1500) and its note are what the sheet rests on.
    const year = networkAsShipped().yearAt(46.5, 9.8, 1500);
    if (!("high" in year)) throw new Error(year.message);
    expect(climate.of("here.highLeast[1]")).toBeCloseTo(year.high[0]?.least ?? NaN, 6);
    expect(climate.of("stations.elevation[2]")).toBe(2129);
    const [contents] = await workbook.read(["Native climate"]);
    const linked = contents?.cells.flat().filter(({ formula }) => formula?.includes("Station shortlist"));
    expect(linked?.length).toBe(4);
  } finally {
    close();
  }
}, 30_000);
