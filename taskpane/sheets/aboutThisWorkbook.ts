import { VERSION } from "../../functions/release";
import { ELEVATION } from "../../functions/shared/limits";
import { assemble } from "./shared/assemble";
import { cell, fields, heading, label, table, text, together } from "./shared/part";
import { lower, STATION_TERMS, town, TOWN_TERMS, TODAY, upper } from "./shared/scenario";
import { date, number } from "./shared/takes";
import { once } from "./shared/words";

const STATIONS = 25;
const STATION_ROWS = 8;
const FUNCTIONS = STATIONS + STATION_ROWS + 3;
/** How many functions may be asked about, and the lines that their sources and their cautions take at most. */
const ASKED = 3;
const SOURCE_ROWS = 8;
const CAUTION_ROWS = 4;
/** Sentences as running words: a cell of a table would cut them off. */
const lines = (sentences: string): string => `TEXTJOIN(CHAR(10),TRUE,${sentences})`;
const records = [upper, lower, town] as const;

const terms = {
  [upper.name]: ["DWD, CLIMAT reports", "CC BY 4.0"],
  [lower.name]: ["DWD, CLIMAT reports", "CC BY 4.0"],
  [town.name]: ["NOAA NCEI, normals", "US Government"],
} as const;
const used = ["LAPSE", "RAMPDATES", "BOXAIR"] as const;

/** What somebody reads who opens the workbook without the add-in. */
const reading = [
  "For everyone: the figures were worked out with worksheet functions whose names begin with VIV. Without the add-in they stay as they were saved, until something is changed.",
  "A cell that shows #NAME? was worked out again without the add-in. Close without saving and open the workbook again, or ask the keeper for a frozen copy, which holds values alone.",
  "Temperatures in °C, differences of temperature in K (one K is one degree), elevations in m, masses in g, rain in mm; dates as year-month-day. A share of 0.05 is 5 %.",
  "A station shows the year's curve in the open air, not the place where an animal sits. Schedules are practice unless a source is given. Ask a reptile vet before an animal is cooled; follow local law on keeping, trade and release.",
] as const;

export const aboutThisWorkbook = assemble(
  {
    key: "aboutThisWorkbook",
    name: "About this workbook",
    sentence: "What was used, by whom and where it comes from, for a reader without the add-in.",
    cautions: ["noVet", "proxy"],
    sources: ["definition"],
    widths: [25, 11, 11, 22, 16, 1, 13, 12],
    cautionColumns: ["G", "H"],
    foot: [STATION_TERMS, TOWN_TERMS],
  },
  heading("A6", "This workbook", null, null, null, null),
  fields("A7", [
    { label: "Kept by", value: "A keeper (invented)", wide: 4 },
    { label: "Animals", value: "Five montane snakes (invented)", wide: 4 },
    { label: "Last changed on", value: TODAY, format: "date", takes: date },
    { label: "Version of the add-in", value: "=VIV.RELEASE()" },
    {
      label: "Version when it was made",
      value: VERSION,
      note: "Type it once. Where it differs from the line above, look at the figures again.",
    },
  ]),
  cell(
    "C11",
    "computed",
    '=IF(OR(B10="",B11=""),"",IF(B10=B11,"same version","another version: look at the figures again"))',
  ),
  heading("A13", "To read it", null, null, null, null),
  ...reading.map((words, i) => text(`A${14 + 2 * i}`, words, i === reading.length - 1 ? 3 : 2, 5)),
  heading(`A${STATIONS - 1}`, "Where the station records come from", null, null, null, null),
  table({
    at: `A${STATIONS}`,
    rows: STATION_ROWS,
    columns: [
      { title: "Station", input: records.map(({ name }) => name) },
      {
        title: "Elevation m",
        input: records.map(({ elevation }) => elevation),
        format: "whole",
        takes: number(ELEVATION, "m"),
      },
      { title: "Years", input: records.map(({ period }) => period) },
      { title: "Taken from", input: records.map(({ name }) => terms[name]?.[0] ?? null) },
      { title: "Terms", input: records.map(({ name }) => terms[name]?.[1] ?? null) },
    ],
  }),
  heading(`A${FUNCTIONS}`, "What a function rests on: type its name", ...Array<null>(7).fill(null)),
  ...Array.from({ length: ASKED }, (_, i) => {
    const row = FUNCTIONS + 1 + (SOURCE_ROWS + CAUTION_ROWS) * i;
    return together(
      cell(`A${row}`, "input", used[i] ?? null),
      label(`A${row + SOURCE_ROWS}`, "and its cautions"),
      text(`B${row}`, once([`A${row}`], lines(`VIV.SOURCE(A${row})`)), SOURCE_ROWS, 7),
      text(
        `B${row + SOURCE_ROWS}`,
        once([`A${row}`], `IFNA(${lines(`VIV.CAUTION(A${row})`)},"No caution of its own.")`),
        CAUTION_ROWS,
        7,
      ),
    );
  }),
  {
    rules: [{ range: "C11", when: '=LEFT($C$11,7)="another"', look: "care" }],
  },
);
