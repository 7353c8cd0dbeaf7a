import { ELEVATION, TEMPERATURE } from "../../functions/shared/limits";
import { block } from "./shared/address";
import { assemble, EXAMPLE } from "./shared/assemble";
import { cell, fields, heading, labels, spilled, table, together } from "./shared/part";
import { candidates, home, STATION_TERMS } from "./shared/scenario";
import { LATITUDE, LONGITUDE, number } from "./shared/takes";
import { blanksKept } from "./shared/words";

const ROWS = 12;
const TABLE = 13;
const FIRST = TABLE + 1;
const RANKED = FIRST + ROWS + 1;

const [bandLow, bandHigh, latitude, longitude] = ["$B$7", "$B$8", "$B$9", "$B$10"] as const;
const stations = block(`A${FIRST}`, ROWS, 4);
const elevations = block(`B${FIRST}`, ROWS);
const means = block(`E${FIRST}`, ROWS);
const anyBlank = [bandLow, bandHigh, latitude, longitude].map((cell) => `${cell}=""`).join(",");

export const stationShortlist = assemble(
  {
    key: "stationShortlist",
    name: "Station shortlist",
    sentence: "Which weather station may speak for the animal's home: best first.",
    cautions: ["ruleOfThumb", "proxy", "fewStations"],
    sources: ["practice", "definition"],
    widths: [23, 7.5, 7.5, 8, 8, 9, 9, 8, 1, 14, 14],
    cautionColumns: ["J", "K"],
    example: `${EXAMPLE} an invented home; the stations are real, terms at the foot.`,
    foot: [STATION_TERMS],
  },
  heading("A6", "The animal's home", null),
  fields("A7", [
    { label: "Lives from, m", value: home.bandLow, format: "whole", takes: number(ELEVATION, "m") },
    { label: "to, m", value: home.bandHigh, format: "whole", takes: number(ELEVATION, "m") },
    { label: "Latitude, ° (south −)", value: home.latitude, format: "hundredth", takes: number(LATITUDE, "°") },
    { label: "Longitude, ° (west −)", value: home.longitude, format: "hundredth", takes: number(LONGITUDE, "°") },
  ]),
  heading("D6", "Your own fall of temperature", null, null, null, null),
  labels(
    "D7",
    [
      "Fall, K (degrees) per km",
      "At sea level, °C",
      "Fit (r²; 1 is a straight line)",
      "Stations used",
      "Spread about the line, K",
    ],
    4,
  ),
  ...["H7", "H8", "H9", "H10", "H11"].map((at, i) =>
    cell(
      at,
      "computed",
      `=IF(COUNTA(${means})<3,"",IFNA(INDEX(VIV.LAPSEFIT(${blanksKept(means)},IF(${means}="","",${elevations})),${i + 1},2),"too few"))`,
    ),
  ),
  {
    formats: [
      { range: "H7:H8", format: "tenth" },
      { range: "H9", format: "thousandth" },
      { range: "H10", format: "whole" },
      { range: "H11", format: "tenth" },
    ],
    notes: [
      {
        at: "D6",
        text: "From the stations whose mean is filled in, three or more. Take stations of one mountain, and one kind of mean for all.",
      },
    ],
  },
  table({
    at: `A${TABLE}`,
    rows: ROWS,
    columns: [
      { title: "Candidates", input: candidates.map(({ name }) => name) },
      {
        title: "Elev. m",
        input: candidates.map(({ elevation }) => elevation),
        format: "whole",
        takes: number(ELEVATION, "m"),
        note: "Elevation of the station, m.",
      },
      {
        title: "Lat. °",
        input: candidates.map((one) => one.latitude),
        format: "hundredth",
        takes: number(LATITUDE, "°"),
      },
      {
        title: "Long. °",
        input: candidates.map((one) => one.longitude),
        format: "hundredth",
        takes: number(LONGITUDE, "°"),
      },
      {
        title: "Mean °C",
        input: candidates.map(({ mean }) => mean),
        format: "tenth",
        takes: number(TEMPERATURE, "°C"),
        note: "Only for your own fall of temperature: the year's mean, of the stations of one mountain.",
      },
    ],
  }),
  together(
    heading(`A${RANKED}`, "Best first", "Gap m", "Km", "Verdict", ...Array<null>(7).fill(null)),
    {
      notes: [
        { at: `B${RANKED}`, text: "Metres outside the elevation band: 0 inside, negative below, positive above." },
      ],
    },
    spilled(
      `A${RANKED + 1}`,
      `=IF(OR(COUNTA(${stations})=0,${anyBlank}),"",VIV.STATIONRANK(${blanksKept(stations)},${bandLow},${bandHigh},${latitude},${longitude}))`,
      [ROWS, 4],
    ),
    { formats: [{ range: block(`B${RANKED + 1}`, ROWS, 2), format: "whole" }] },
    {
      rules: [
        {
          range: block(`A${RANKED + 1}`, ROWS, 3),
          when: `=AND(ISNUMBER($B${RANKED + 1}),$B${RANKED + 1}=0)`,
          look: "good",
        },
        {
          range: block(`A${RANKED + 1}`, ROWS, 3),
          when: `=LEFT($D${RANKED + 1},4)="Well"`,
          look: "care",
        },
      ],
    },
  ),
);
