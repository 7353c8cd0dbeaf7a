import { catalogue } from "../../functions/catalogue";
import { NoTwin } from "../../functions/nativeCall";
import { nativeFormulas, type Extent } from "../native/native";
import {
  WorkbookError,
  type CellContent,
  type Change,
  type Options,
  type SheetContents,
  type Workbook,
} from "../workbook";
import { CHOOSE_A_SHEET, counted, impossible, sheetsInWords, stopIfCancelled, type Action } from "./action";
import {
  asFigures,
  blockOf,
  changesFor,
  freezeSheets,
  planOf,
  spills,
  workedIfFrozen,
  type Leaving,
  type Manner,
  type Target,
} from "./freeze";
import { noFile } from "./files";
import { followsCalendar, hasFunction, onOtherSheets, sheetReferences } from "./formulas";
import { joined } from "./joined";
import { areaName, areaOf, cellName, onSheet } from "./place";
import { fileName, XLSX, type FileChoice } from "./saveFile";
import { takeBack } from "./takeBack";
import { workedLook, workedRows } from "./worked";

const sheetOf = (all: readonly SheetContents[], name: string): SheetContents =>
  all.find((sheet) => sheet.name === name) ?? { name, hidden: false, locked: false, cells: [] };

/** The cells that the answer of a formula fills, where a reference by "#" asks for them. */
const spillAt =
  (all: readonly SheetContents[], own: string) =>
  (reference: string): Extent | undefined => {
    const [cell = "", quoted] = reference.split("!").reverse();
    const name = quoted?.replace(/^'|'$/g, "").replaceAll("''", "'") ?? own;
    const area = areaOf(cell.replaceAll("$", ""));
    return area && spills(sheetOf(all, name)).get(cellName(area.row, area.column));
  };

/** Whether cells outside of the answer are empty, so that it may grow into them. */
const isFree = (sheet: SheetContents, answer: Target, { rows, columns }: Extent): boolean =>
  blockOf(sheet, { ...answer, rows, columns }).every((line, i) =>
    line.every(
      ({ value, formula }, j) =>
        (i < answer.rows && j < answer.columns) || ((value === null || value === "") && formula === undefined),
    ),
  );

/** The formulas that take the place of one, a cell each; the answer may fill more cells than it does now. */
const nativeBlock = (target: Target, all: readonly SheetContents[]): Leaving => {
  const native = nativeFormulas(catalogue, target.formula, spillAt(all, target.sheet));
  const { extent } = native;
  const grown = extent && {
    rows: Math.max(extent.rows, target.rows),
    columns: Math.max(extent.columns, target.columns),
  };
  const { rows, columns } = grown && isFree(sheetOf(all, target.sheet), target, grown) ? grown : target;
  const cells = Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_, column): CellContent => {
      return { formula: native.cell(row, column, row === rows - 1) };
    }),
  );
  const { row, column } = target;
  return { row, column, rows, columns, cells, lives: true };
};

/** Why formulas stay as figures, by their places. */
type Reasons = Map<string, { readonly target: Target; readonly why: string }>;

/** Why a date stays that followed the calendar. */
const WITH_THE_OTHERS = "what is said beside it is of this day, and no longer moves";

/** Whether a formula can be written without the add-in: its first cell says so. */
const isNative = (formula: string, own: string, all: readonly SheetContents[]): boolean => {
  try {
    nativeFormulas(catalogue, formula, spillAt(all, own)).cell(0, 0, true);
    return true;
  } catch (failure) {
    if (failure instanceof NoTwin) return false;
    throw failure;
  }
};

/** Native formulas in place of ours and of those that fill many cells, figures where there are none. */
const asNative = (reasons: Reasons): Manner => {
  const stills = new Map<string, boolean>();
  /** Whether some figure of a sheet stays as it is. */
  const standsStill = (name: string, all: readonly SheetContents[]): boolean => {
    const known = stills.get(name);
    if (known !== undefined) return known;
    const found = sheetOf(all, name).cells.some((line) =>
      line.some(({ formula = "" }) => hasFunction(formula) && !isNative(formula, name, all)),
    );
    stills.set(name, found);
    return found;
  };
  return {
    wants: (formula, fillsMany) => fillsMany || hasFunction(formula) || followsCalendar(formula),
    leave(target, all) {
      const fixed = (why: string): Leaving | undefined => {
        reasons.set(onSheet(target.sheet, cellName(target.row, target.column)), { target, why });
        const figures = asFigures.leave(target, all);
        return figures && { ...figures, fixed: why };
      };
      if (followsCalendar(target.formula)) {
        if (standsStill(target.sheet, all)) return fixed(WITH_THE_OTHERS);
        // A date by itself goes on as it is.
        if (!hasFunction(target.formula) && target.rows * target.columns === 1) return undefined;
      }
      try {
        return nativeBlock(target, all);
      } catch (failure) {
        if (!(failure instanceof NoTwin)) throw failure;
        // What other programs know as it is, stays.
        return hasFunction(target.formula) ? fixed(failure.message) : undefined;
      }
    },
  };
};

/** A line for all that stands below one another and stays for one reason, which stands where changes have their format. */
const deadInWords = (reasons: Reasons): string[] =>
  joined(
    [...reasons.values()].map(({ target: { sheet, row, column }, why }) => ({
      sheet,
      row,
      column,
      cells: [[null]],
      format: why,
    })),
  ).map(({ sheet, row, column, cells: { length: rows }, format: why = "" }) => {
    const place = onSheet(sheet, areaName({ row, column, rows, columns: 1 }));
    return rows === 1 ? `${place} stays as its figure: ${why}` : `${place} stay as their figures: ${why}`;
  });

const HELD = "go on calculating in any spreadsheet program";

const inWords = (all: readonly SheetContents[], names: readonly string[]) => {
  const reasons: Reasons = new Map();
  const { targets, left } = planOf(all, new Set(names), asNative(reasons));
  const alive = targets.filter(({ leaving }) => leaving.lives).length;
  return {
    text:
      `${counted(alive, "formula")} will ${HELD}` +
      (reasons.size > 0 ? `, ${counted(reasons.size, "VIV formula")} will be fixed figures` : "") +
      `. ${sheetsInWords(names)} ${names.length === 1 ? "stays" : "stay"} as ${names.length === 1 ? "it is" : "they are"}.`,
    list: [...left, ...deadInWords(reasons)],
  };
};

/**
 * Makes copies follow one another where their sheets follow one another: a copy's formulas name the sheets that it was made
 * from. Answers in words which sheets, that were not copied, they go on following.
 */
const onEachOther = async (
  workbook: Workbook,
  names: readonly string[],
  copies: readonly string[],
  options: Options | undefined,
): Promise<readonly string[]> => {
  const others = new Map(names.map((name, i) => [name.toLowerCase(), copies[i] as string]));
  const contents = await workbook.read(copies);
  const open = contents.filter(({ locked }) => !locked);
  const changes = open.flatMap(({ name: sheet, cells }) =>
    cells.flatMap((line, row) =>
      line.flatMap(({ formula = "" }, column): Change[] => {
        const own = onOtherSheets(formula, others);
        return own === formula ? [] : [{ sheet, row, column, cells: [[{ formula: own }]] }];
      }),
    ),
  );
  if (changes.length > 0) await workbook.write(joined(changes), options);
  const followed = new Map<string, number>();
  for (const { cells } of contents) {
    for (const { formula = "" } of cells.flat()) {
      const outside = new Set(sheetReferences(formula).map(({ sheet }) => sheet));
      for (const sheet of outside) {
        if (!others.has(sheet.toLowerCase())) followed.set(sheet, (followed.get(sheet) ?? 0) + 1);
      }
    }
  }
  return [...followed].map(
    ([sheet, many]) =>
      `${counted(many, "formula")} of the copies will go on following "${sheet}", which was not copied`,
  );
};

/** `choice`: the names of the sheets to copy. */
export const workingCopy: Action<readonly string[]> = {
  key: "working-copy",
  label: "Working copy",
  about:
    "Copies the chosen sheets and writes the copies' VIV formulas in functions that every spreadsheet has, so that they go on " +
    "calculating without the add-in, and follow one another as the sheets do. What cannot be written so stays as a figure, " +
    "is marked *, and is named.",
  async describe(workbook, names) {
    if (names.length === 0) return impossible(CHOOSE_A_SHEET);
    return { ...inWords(await workbook.read(), names), possible: true, ask: true };
  },
  async run(workbook, names, options) {
    const copies = await workbook.copy(names);
    try {
      const following = await onEachOther(workbook, names, copies, options);
      const reasons: Reasons = new Map();
      const { text, left = [] } = await freezeSheets(workbook, copies, options, asNative(reasons));
      return {
        text: `Copied to ${sheetsInWords(copies)}. ${text}`,
        left: [...left, ...following, ...deadInWords(reasons)],
      };
    } catch (failure) {
      return takeBack(
        () => workbook.remove(copies),
        failure instanceof WorkbookError
          ? failure
          : new WorkbookError("The working copy could not be made. Nothing was changed."),
        `Remove ${sheetsInWords(copies)} by hand.`,
      );
    }
  },
};

export const workingFile: Action<FileChoice> = {
  key: "working-file",
  label: "Save a working copy",
  about: "The same as a file. Your workbook does not change.",
  async describe(workbook, { names }) {
    const no = noFile(workbook, 'Make a "Working copy" above, and save that by the program\'s own menu.');
    if (no) return no;
    if (names.length === 0) return impossible(CHOOSE_A_SHEET);
    return { ...inWords(await workbook.read(), names), possible: true, ask: false };
  },
  async run(workbook, { names, save }, options) {
    const all = await workbook.read();
    const reasons: Reasons = new Map();
    const manner = asNative(reasons);
    const plan = planOf(all, new Set(names), manner);
    const worked = workedIfFrozen(all, names, manner);
    const rows = worked && workedRows(worked.entries);
    const bytes = await workbook.toFile(
      names.filter((name) => name !== worked?.name),
      worked && rows ? [{ name: worked.name, cells: rows, look: workedLook(rows) }] : [],
      changesFor(all, plan),
    );
    stopIfCancelled(options);
    const name = fileName(`${titleOf(workbook, names)} working copy`, "xlsx");
    await save({ name, type: XLSX, bytes });
    return {
      text: `"${name}" is saved where your browser or program puts downloads. The workbook did not change.${reasons.size > 0 ? " Fixed figures in it:" : ""}`,
      left: [...plan.left, ...deadInWords(reasons)],
    };
  },
};

const titleOf = (workbook: Workbook, names: readonly string[]): string =>
  workbook.title?.() ?? (names.length === 1 ? (names[0] as string) : "Vivarium Almanac");
