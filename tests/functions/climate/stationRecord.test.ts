import { stationRecord } from "../../../functions/climate/stationRecord";
import { call, callCell } from "../../call";
import { networkAsShipped } from "../../network";
import pairs from "../../tables/stationPairs.json";
import { yardstickOf } from "../../yardstick";

const yearOf = (station: unknown): number[][] => call(stationRecord, station) as number[][];

// The pairs end in 2020 and ours in July 2021, so single months of short records differ by up to a kelvin.
yardstickOf(
  stationRecord,
  {
    against: "CLIMAT reports 2004-2020, averaged elsewhere (Python; Deutscher Wetterdienst)",
    figure: "root mean square difference of highs and lows",
    least: 0,
    most: 0.2,
    unit: "°C",
  },
  () => {
    const offs = pairs.rows.flatMap(({ lowWmo, lowHighs, lowLows, highWmo, highHighs, highLows }) =>
      (
        [
          [lowWmo, lowHighs, lowLows],
          [highWmo, highHighs, highLows],
        ] as const
      )
        .filter(([id]) => networkAsShipped().stations.some((station) => station.id === id))
        .flatMap(([id, highs, lows]) =>
          yearOf(id).flatMap(([high, low], month) => [
            (high as number) - (highs[month] as number),
            (low as number) - (lows[month] as number),
          ]),
        ),
    );
    return { figure: Math.sqrt(offs.reduce((sum, off) => sum + off * off, 0) / offs.length), values: offs.length };
  },
);

test("twelve months in order, warmest in July in the north and in January in the south", () => {
  expect(yearOf("16008")).toHaveLength(12);
  const warmest = (station: string): number => {
    const highs = yearOf(station).map(([high]) => high as number);
    return highs.indexOf(Math.max(...highs));
  };
  expect([6, 7]).toContain(warmest("16008"));
  expect(warmest("94910")).toBe(0);
});

test("what a service does not report is blank, never 0", () => {
  const [january] = call(stationRecord, "USC00051660");
  expect(january?.slice(2)).toEqual(["", "", ""]);
});

test("in °F and inches", () => {
  const [[high, low, rain, humidity, days]] = yearOf("16008") as [number[]];
  const [imperial] = call(stationRecord, "16008", "imperial") as [number[]];
  expect(imperial[0]).toBeCloseTo((high as number) * 1.8 + 32, 9);
  expect(imperial[1]).toBeCloseTo((low as number) * 1.8 + 32, 9);
  expect(imperial[2]).toBeCloseTo((rain as number) / 25.4, 9);
  expect(imperial.slice(3)).toEqual([humidity, days]);
});

describe("the station", () => {
  test("may be a number that lost its zero, its text, its name, or its name with the country", () => {
    for (const given of [1001, "1001", "01001", "Jan Mayen", "jan mayen, norway"]) {
      expect(call(stationRecord, given)).toEqual(call(stationRecord, "01001"));
    }
  });
  test.each([
    [
      "a name that several have",
      "Madrid",
      /^#VALUE! station holds 'Madrid': 3 stations fit, Madrid\/Barajas, Spain \(08221\); .*give the number$/,
    ],
    [
      "a name that none has",
      "Zugspize",
      /^#N\/A station holds 'Zugspize': no station is called so; the nearest names are Zugspitze, Germany \(10961\)/,
    ],
    ["a number that none has", 99999, /^#N\/A station holds '99999': no station has this number/],
    ["signs alone", "--", /^#VALUE! station holds '--': give a WMO number or a name/],
  ])("%s gives words", (_, given, words) => expect(callCell(stationRecord, given)).toMatch(words));
});
