import { PREFIX } from "../../functions/define";
import { Problem } from "../../functions/problem";
import { dayTable } from "../../functions/readings/dayTable";
import type { System } from "../../functions/units";
import type { Evaluate } from "../columns/expression";
import { sheets } from "../sheets/catalogue";
import { callsIn } from "../sheets/shared/calls";
import { wordsIn } from "../sheets/shared/quantities";
import { inSystem } from "../sheets/shared/systems";
import { cleared } from "../sheets/clear";
import { formats } from "../sheets/sheet";
import { paste } from "../sheets/readings";
import { grouped } from "../text/grouped";
import { WorkbookError, type CellContent, type Change, type Options, type Workbook } from "../workbook";
import { counted, impossible, type Action } from "./action";
import { frozenContent } from "./freeze";
import { undrawn } from "./insertLinked";
import { takeBack } from "./takeBack";
import { areaName, areaOf } from "./place";
import { clockChanges } from "./readings/clockChanges";
import type { Layout } from "./readings/layout";
import { inUnits, readReadings, type Landed, type Refused } from "./readings/readReadings";

export interface ReadingsChoice {
  /** The file's name, or "pasted text". */
  readonly name: string;
  readonly text: string;
  readonly layout: Layout;
  /** The words over the file's columns. */
  readonly titles: readonly string[];
  /** What the keeper has not yet said, in words; nothing is written before. */
  readonly open?: string;
  /** The units of the new sheet; metric where nothing is said. */
  readonly system?: System;
  /** Works out the days where the program cannot hand so many readings to a function. */
  readonly evaluate: Evaluate;
}

const SHEET = "Readings";
/** The row of the first reading, counted from 0. */
const FIRST = 4;
/** Rows of a sheet, less those above the readings. */
const MOST = 1_048_576 - FIRST;
/** Rows written at a time. */
const BLOCK = 5000;
/** Reading the file takes about so much of the whole work. */
const READING = 0.3;

const DAYS = [
  "Day",
  "High °C",
  "Low °C",
  "Fluctuation",
  "Mid-point",
  "Mean of 24 h",
  "Readings",
  "Skipped",
  "Hours covered",
] as const;
const OUTSIDE = [
  "Hours below",
  "Hours above",
  "Longest spell above, h",
  "Lowest °C",
  "Highest °C",
  "Degree-hours above",
  "Hours not covered",
  "Skipped",
  "Longest spell below, h",
  "Degree-hours below",
] as const;

/** Everything in the file, in memory: the sheet is begun only when all of it has been read. */
const readAll = async ({ text, layout, system = "metric" }: ReadingsChoice, { signal, progress }: Options) => {
  const rows: (readonly Landed[])[] = [];
  const refused: Refused[] = [];
  try {
    for await (const block of readReadings(text, layout, { signal })) {
      for (const row of block.rows) rows.push(inUnits(row, system));
      for (const one of block.refused) refused.push(one);
      progress?.(block.share * READING);
    }
  } catch (failure) {
    if (signal?.aborted) throw new WorkbookError("Cancelled. Nothing was changed.");
    throw failure;
  }
  return { rows, refused };
};

/** The head of the sheet: what the readings are, and beside them the table of days and the time outside limits. */
const headOf = (
  { name, layout, titles, system = "metric" }: ReadingsChoice,
  rows: number,
): readonly (readonly CellContent[])[] => {
  const further = layout.others.map((column) => titles[column] ?? `column ${column + 1}`);
  const own = 2 + further.length;
  const times = areaName({ row: FIRST, column: 0, rows, columns: 1 });
  const temperatures = areaName({ row: FIRST, column: 1, rows, columns: 1 });
  const [low, high] = [
    areaName({ row: 1, column: own + 2, rows: 1, columns: 1 }),
    areaName({ row: 1, column: own + 4, rows: 1, columns: 1 }),
  ];
  const at = DAYS.length + 1; // the table of times outside stands right of the days
  const blank = (count: number): null[] => Array.from({ length: count }, () => null);
  const wide = own + 1 + at + OUTSIDE.length;
  const row = (cells: readonly CellContent[]): readonly CellContent[] => [...cells, ...blank(wide - cells.length)];
  const words = (list: readonly string[]): readonly string[] => list.map((one) => wordsIn(one, system));
  const formula = (called: string) => ({ formula: system === "metric" ? called : callsIn(called, system) });
  return [
    row([`Readings from ${name}`, ...blank(own), "Limits: fill in both"]),
    row([...blank(own + 1), ...words(["Low °C"]), null, ...words(["High °C"])]),
    row([]),
    row(["Time", ...words(["°C"]), ...further, null, ...words(DAYS), null, ...words(OUTSIDE)]),
    row([
      ...blank(own + 1),
      formula(`=${PREFIX}.DAYTABLE(${times},${temperatures})`),
      ...blank(DAYS.length - 1),
      null,
      formula(`=IF(COUNT(${low},${high})<2,"",${PREFIX}.TIMEOUTSIDE(${times},${temperatures},${low},${high}))`),
    ]),
  ];
};

/** The readings as changes of so many rows: times with their format, the rest as it is. */
const changesOf = (sheet: string, rows: readonly (readonly Landed[])[], row: number, column: number): Change[] => {
  const changes: Change[] = [];
  for (let from = 0; from < rows.length; from += BLOCK) {
    const block = rows.slice(from, from + BLOCK);
    changes.push(
      { sheet, row: row + from, column, cells: block.map(([time]) => [time ?? null]), format: formats.moment },
      { sheet, row: row + from, column: column + 1, cells: block.map(([, ...rest]) => rest) },
    );
  }
  return changes;
};

/** The format of the days, which a spreadsheet may not know by itself: as many rows as there can be days. */
const daysFormat = (sheet: string, column: number, formula: CellContent, days: number): Change => ({
  sheet,
  row: FIRST,
  column,
  cells: Array.from({ length: Math.max(1, days) }, (_, i) => [i === 0 ? formula : null]),
  format: formats.date,
});

/** The part of the progress that is left for writing. */
const within = ({ signal, progress }: Options): Options => ({
  ...(signal ? { signal } : {}),
  progress: (share) => progress?.(READING + (1 - READING) * share),
});

/** Writes, or takes the sheet away again that was begun for it. */
const writeOrRemove = async (
  workbook: Workbook,
  name: string,
  changes: readonly Change[],
  options: Options,
): Promise<string> => {
  try {
    await workbook.write(changes, within(options));
  } catch (failure) {
    await takeBack(() => workbook.remove([name]), failure, `Remove the sheet "${name}" by hand.`);
  }
  return name;
};

/** Into the templated sheet, without its example: no invented limit or plan may stand beside real readings. */
const fillTemplate = async (
  workbook: Workbook,
  { system = "metric" }: ReadingsChoice,
  rows: readonly (readonly Landed[])[],
  options: Options,
) => {
  const template = sheets.find(({ key }) => key === paste.sheet);
  const area = areaOf(paste.at);
  if (!template || !area) throw new Error(`there is no sheet ${paste.sheet}`);
  const [name = ""] = await workbook.insert([cleared(inSystem(template, system))], {
    ...(options.missing ? { missing: options.missing } : {}),
  });
  return writeOrRemove(workbook, name, changesOf(name, rows, area.row, area.column), options);
};

/** Onto a plain sheet, where the templated one has no room for so many rows or for further columns. */
const writePlain = async (
  workbook: Workbook,
  choice: ReadingsChoice,
  rows: readonly (readonly Landed[])[],
  options: Options,
) => {
  const head = headOf(choice, rows.length);
  const own = 2 + choice.layout.others.length;
  const formulas = head[FIRST] ?? [];
  const widths = [17, 8, ...choice.layout.others.map(() => 12), 3, 12, ...Array.from({ length: 15 }, () => 10)];
  const name = await workbook.add(SHEET, head.slice(0, FIRST), { widths, headings: FIRST });
  const days = new Set(rows.map(([time]) => Math.floor(Number(time)))).size;
  return writeOrRemove(
    workbook,
    name,
    [
      ...changesOf(name, rows, FIRST, 0),
      daysFormat(name, own + 1, formulas[own + 1] ?? null, days),
      {
        sheet: name,
        row: FIRST,
        column: own + 1 + DAYS.length + 1,
        cells: [[formulas[own + 1 + DAYS.length + 1] ?? null]],
      },
    ],
    options,
  );
};

/**
 * Onto a plain sheet, with the days as figures: more readings than the program hands to a function. Time outside limits
 * would be such a call, too, and is left out.
 */
const writeFigures = async (
  workbook: Workbook,
  { name: from, layout, titles, system = "metric", evaluate }: ReadingsChoice,
  rows: readonly (readonly Landed[])[],
  options: Options,
) => {
  const [times, temperatures] = [0, 1].map((column) => rows.map((row) => [row[column] ?? null]));
  const days = evaluate(dayTable, [times, temperatures, system]).cells.map((row) =>
    row.map((cell) => frozenContent({ value: cell instanceof Problem ? cell.message : cell })),
  );
  const further = layout.others.map((column) => titles[column] ?? `column ${column + 1}`);
  const own = 2 + further.length;
  const blank = (count: number): null[] => Array.from({ length: count }, () => null);
  const words = (list: readonly string[]): readonly string[] => list.map((one) => wordsIn(one, system));
  const wide = own + 1 + DAYS.length;
  const head: readonly (readonly CellContent[])[] = [
    [`Readings from ${from}`, ...blank(wide - 1)],
    ["The days are fixed figures: they do not follow a reading that is changed", ...blank(wide - 1)],
    blank(wide),
    ["Time", ...words(["°C"]), ...further, null, ...words(DAYS)],
  ];
  const widths = [17, 8, ...further.map(() => 12), 3, 12, ...DAYS.slice(1).map(() => 10)];
  const name = await workbook.add(SHEET, head, { widths, headings: FIRST });
  const at = own + 1;
  return writeOrRemove(
    workbook,
    name,
    [
      ...changesOf(name, rows, FIRST, 0),
      { sheet: name, row: FIRST, column: at, cells: days.map(([day = null]) => [day]), format: formats.date },
      { sheet: name, row: FIRST, column: at + 1, cells: days.map(([, ...rest]) => rest) },
    ],
    options,
  );
};

const FIXED =
  "the table of days is written as fixed figures, and the time outside limits is left out. For both as formulas, divide " +
  "the file into parts";

const rowWords = ({ row, reason, lands }: Refused): string =>
  `Row ${row}: ${reason}${lands ? " (kept, and skipped by the functions)" : " (left out)"}`;

export const importReadings: Action<ReadingsChoice | undefined> = {
  key: "import-readings",
  label: "Write to a new sheet",
  about:
    "Adds a sheet with the readings, a table of days beside them, and the time outside the limits that you fill in.",
  describe(workbook, choice) {
    if (!choice || choice.text.trim() === "") return impossible("Choose a file or paste readings first.");
    if (choice.open) return impossible(choice.open);
    const most = workbook.mostRowsOfCall?.();
    const lines = choice.text.split("\n").filter((line) => line.trim() !== "").length;
    if (most !== undefined && lines - choice.layout.headings > most) {
      return {
        text:
          `Adds a sheet "${SHEET}" after your last one, from ${choice.name}. It has more rows than the ${grouped(most)} ` +
          `that ${workbook.program} hands to a function here: ${FIXED}. Nothing else changes.`,
        possible: true,
        ask: true,
      };
    }
    return {
      text: `Adds a sheet "${SHEET}" after your last one, from ${choice.name}. Nothing else changes.`,
      possible: true,
      ask: false,
    };
  },
  async run(workbook, choice, options = {}) {
    if (!choice) throw new WorkbookError("Choose a file or paste readings first. Nothing was changed.");
    const { rows, refused } = await readAll(choice, options);
    const clocks = clockChanges(rows.map(([time]) => Number(time)));
    const left = [...clocks, ...refused.map(rowWords)];
    if (rows.length === 0) {
      return {
        text: 'No row could be read. Look above at "Between cells", the columns and "Order of the date". Nothing was changed.',
        left,
      };
    }
    if (rows.length > MOST) {
      throw new WorkbookError(
        `${choice.name} holds ${grouped(rows.length)} readings, and a sheet has room for ${grouped(MOST)}. Divide the file into parts. Nothing was changed.`,
      );
    }
    const fits = rows.length <= paste.rows && choice.layout.others.length === 0;
    const without: string[] = [];
    const asFigures = rows.length > (workbook.mostRowsOfCall?.() ?? Infinity);
    const name = asFigures
      ? await writeFigures(workbook, choice, rows, options)
      : fits
        ? await fillTemplate(workbook, choice, rows, { ...options, missing: (words) => without.push(words) })
        : await writePlain(workbook, choice, rows, options);
    return {
      text:
        `${counted(rows.length, "reading")} on "${name}". ` +
        (asFigures
          ? `They are more than ${workbook.program} hands to a function here: ${FIXED}.`
          : `Fill in its ${fits ? "framed cells: limits and plan" : "two limits"}.`) +
        (refused.length > 0
          ? ` ${counted(refused.length, "row")} could not be read as ${refused.length === 1 ? "it stands" : "they stand"}:`
          : ` Every row was read.${clocks.length > 0 ? " Look at the clock:" : ""}`) +
        undrawn(workbook, without),
      left: [...left, ...without],
    };
  },
};
