import {
  type CellContent,
  type CellState,
  type Change,
  type Options,
  type SheetContents,
  type Workbook,
} from "../workbook";
import { CHOOSE_A_SHEET, counted, impossible, stopIfCancelled, type Action, type Done } from "./action";
import { datedFormat } from "./datedFormat";
import { followsCalendar, hasFunction, spillReferences } from "./formulas";
import { joined } from "./joined";
import { explaining, isMarked, rowMarked, titleOf } from "./mark";
import { areaName, cellName, onSheet, type Area } from "./place";
import { takeBack } from "./takeBack";
import {
  areaOfGroup,
  checkOf,
  columnsOf,
  contentOf,
  entriesOf,
  filledDown,
  isWorked,
  overlap,
  shownOf,
  workedLook,
  workedRows,
  WORKED,
  type Entry,
} from "./worked";

/**
 * Errors that a function answers, as native formulas that give the same error. The sheet's other formulas must go on
 * meeting an error: text in its place would change what they answer.
 */
const ERRORS: Readonly<Record<string, string>> = {
  "#N/A": "=NA()",
  "#VALUE!": '=VALUE("?")',
  "#DIV/0!": "=1/0",
  "#NUM!": "=SQRT(-1)",
};

/** Errors that say that the functions are not at work, and what helps. */
const NOT_AT_WORK: Readonly<Record<string, string>> = {
  "#NAME?": "shows #NAME?: re-enter formulas first",
  "#BUSY!": "is still being worked out: try again in a moment",
  "#SPILL!": "shows #SPILL!: something stands in its way",
};

/**
 * What is left in place of an answer. An answer that looks empty stays text: as a blank it would count as 0 in the
 * sheet's other formulas.
 */
export const frozenContent = ({ value }: Pick<CellState, "value">): CellContent => {
  if (value === "") return { formula: '=""' };
  return value !== null && typeof value === "object" ? { formula: ERRORS[value.error] ?? `=${value.error}` } : value;
};

/** One cell with a VIV function, and the cells that its answer fills. */
export interface Target extends Area {
  readonly sheet: string;
  readonly formula: string;
}

/** What is left in a formula's cell and in those that its answer fills. */
export interface Leaving extends Area {
  readonly cells: readonly (readonly CellContent[])[];
  /** Whether it stands there whatever the cells show now. */
  readonly lives: boolean;
  /** Why it is a fixed figure, where those around it go on calculating. */
  readonly fixed?: string;
}

/** What is left in place of which formulas. */
export interface Manner {
  /** Whether a formula is one of those; `fillsMany`: its answer fills more than its own cell. */
  wants(formula: string, fillsMany: boolean, sheet: SheetContents): boolean;
  /** What is left in place of one; undefined where it stays. `all` is the whole workbook. */
  leave(target: Target, all: readonly SheetContents[]): Leaving | undefined;
}

/** Whether a sheet has a formula of ours. */
const hasOurs = ({ cells }: SheetContents): boolean =>
  cells.some((line) => line.some(({ formula }) => formula !== undefined && hasFunction(formula)));

/** Figures in place of every formula of ours, and of a date that would go on beside what was said of another day. */
export const asFigures: Manner = {
  wants: (formula, _, sheet) => hasFunction(formula) || (followsCalendar(formula) && hasOurs(sheet)),
  leave: (target, all) => ({
    ...target,
    cells: blockOf(sheetOf(all, target), target).map((row) => row.map(frozenContent)),
    lives: false,
  }),
};

const sheetOf = (all: readonly SheetContents[], { sheet }: Pick<Target, "sheet">): SheetContents =>
  all.find(({ name }) => name === sheet) as SheetContents;

interface Plan {
  readonly targets: readonly (Target & { readonly leaving: Leaving })[];
  /** Cells that stay as they are, with the reason. */
  readonly left: readonly string[];
}

/** The cells filled by each formula of the sheet that spills, by the formula's place. */
export const spills = ({ cells }: SheetContents): ReadonlyMap<string, Area> => {
  const found = new Map<string, { top: number; left: number; bottom: number; right: number }>();
  for (const [row, line] of cells.entries()) {
    for (const [column, { spilledFrom }] of line.entries()) {
      if (!spilledFrom) continue;
      const name = cellName(spilledFrom.row, spilledFrom.column);
      const box = found.get(name) ?? { top: spilledFrom.row, left: spilledFrom.column, bottom: row, right: column };
      found.set(name, { ...box, bottom: Math.max(box.bottom, row), right: Math.max(box.right, column) });
    }
  }
  return new Map(
    [...found].map(([name, { top, left, bottom, right }]) => [
      name,
      { row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 },
    ]),
  );
};

const placeOf = ({ sheet, row, column }: Target): string => onSheet(sheet, cellName(row, column));

const errorIn = ({ value }: CellState): string | undefined =>
  value !== null && typeof value === "object" ? value.error : undefined;

/** Every formula of the workbook that refers to a whole spill by "#": where it stands, and to what it refers. */
const spillUsers = (all: readonly SheetContents[]) =>
  all.flatMap(({ name, cells }) =>
    cells.flatMap((line, row) =>
      line.flatMap(({ formula }, column) =>
        (formula === undefined ? [] : spillReferences(formula)).map(({ sheet = name, cell }) => ({
          place: onSheet(name, cellName(row, column)),
          uses: `${sheet}!${cell}`.toLowerCase(),
        })),
      ),
    ),
  );

/** What freezing the named sheets would do; `all` is the whole workbook, whose other formulas may refer to a spill. */
export const planOf = (all: readonly SheetContents[], names: ReadonlySet<string>, manner: Manner = asFigures): Plan => {
  const left: string[] = [];
  let targets: (Target & { readonly leaving: Leaving })[] = [];
  for (const sheet of all) {
    if (!names.has(sheet.name)) continue;
    const areas = spills(sheet);
    for (const [row, line] of sheet.cells.entries()) {
      for (const [column, { formula }] of line.entries()) {
        const spill = areas.get(cellName(row, column));
        if (formula === undefined || !manner.wants(formula, spill !== undefined, sheet)) continue;
        const area = spill ?? { row, column, rows: 1, columns: 1 };
        const at = { sheet: sheet.name, formula, ...area };
        const leaving = manner.leave(at, all);
        if (!leaving) continue;
        const target = { ...at, leaving };
        const error = blockOf(sheet, area)
          .flat()
          .map(errorIn)
          .find((one) => one !== undefined && !(one in ERRORS));
        if (sheet.locked) left.push(`${placeOf(target)}: the sheet is protected`);
        else if (error !== undefined && !target.leaving.lives)
          left.push(`${placeOf(target)} ${NOT_AT_WORK[error] ?? `shows ${error}`}`);
        else targets.push(target);
      }
    }
  }
  // A spill to which a formula refers by "#" has to stay one, unless that formula is frozen too; and so on back.
  const users = spillUsers(all);
  for (let before = -1; before !== targets.length;) {
    before = targets.length;
    const frozen = new Set(targets.map(placeOf));
    const held = new Map(users.filter(({ place }) => !frozen.has(place)).map(({ uses, place }) => [uses, place]));
    targets = targets.filter((target) => {
      const holder = held.get(`${target.sheet}!${cellName(target.row, target.column)}`.toLowerCase());
      if (holder !== undefined) left.push(`${placeOf(target)}: ${holder} refers to all its answers by "#"`);
      return holder === undefined;
    });
  }
  return { targets, left };
};

export const blockOf = ({ cells }: SheetContents, area: Area): readonly (readonly CellState[])[] =>
  Array.from({ length: area.rows }, (_, i) =>
    Array.from(
      { length: area.columns },
      (_, j): CellState => cells[area.row + i]?.[area.column + j] ?? { value: null },
    ),
  );

/** The changes that leave a block in place, one for each number format, so that a date still shows as one. */
export const changesOf = (
  sheet: string,
  leaving: Pick<Leaving, "row" | "column" | "rows" | "columns" | "cells">,
  block: readonly (readonly CellState[])[],
): readonly Change[] => {
  const at = (row: number, column: number) => ({
    sheet,
    row: leaving.row + row,
    column: leaving.column + column,
  });
  const formats = new Set(block.flat().map(({ format }) => format));
  const [only] = formats;
  if (formats.size === 1) {
    return [
      {
        ...at(0, 0),
        cells: leaving.cells,
        ...(only === undefined ? {} : { format: only }),
      },
    ];
  }
  // Answers of several columns have a format each; down a column it seldom changes.
  const changes: Change[] = [];
  for (let column = 0; column < leaving.columns; column++) {
    for (let from = 0, to = 1; from < leaving.rows; from = to++) {
      const format = block[from]?.[column]?.format;
      while (to < leaving.rows && block[to]?.[column]?.format === format) to++;
      const cells = leaving.cells.slice(from, to).map((row) => [row[column] ?? null]);
      changes.push({ ...at(from, column), cells, ...(format === undefined ? {} : { format }) });
    }
  }
  return changes;
};

const doneTo = (all: readonly SheetContents[], { leaving, formula, sheet }: Plan["targets"][number]) => {
  const block = blockOf(sheetOf(all, { sheet }), leaving);
  const first = block[0]?.[0];
  const { row, column, rows, columns, cells } = leaving;
  const dated = datedFormat(formula);
  const shownAs = block.map((line, i) =>
    line.map((state, j): CellState => {
      const format = state.format ?? (typeof state.value === "number" ? dated(i, j) : undefined);
      return format === undefined ? state : { ...state, format };
    }),
  );
  const shown = first ? shownOf(shownAs[0]?.[0] ?? first) : null;
  const words = leaving.fixed === undefined ? first?.words : `Fixed, marked *: ${leaving.fixed}`;
  const entry: Entry = {
    sheet,
    formula,
    row,
    column,
    rows,
    columns,
    shown,
    check: checkOf(cells),
    words: words ?? null,
  };
  return { entry, changes: changesOf(sheet, leaving, leaving.fixed === undefined ? shownAs : shownAs.map(rowMarked)) };
};

/** What the mark means, once on each sheet on which some figure carries it. */
const explained = (all: readonly SheetContents[], changes: readonly Change[]): readonly Change[] => {
  const marked = new Set(changes.filter(isMarked).map(({ sheet }) => sheet));
  return all.flatMap(({ name, cells }): readonly Change[] => {
    const at = marked.has(name) ? titleOf(cells) : undefined;
    const cell = at && cells[at.row]?.[at.column];
    if (!cell) return [];
    const { format } = explaining(cell);
    return [{ sheet: name, ...at, cells: [[contentOf(cell)]], ...(format === undefined ? {} : { format }) }];
  });
};

const changesOfAll = (all: readonly SheetContents[], done: readonly ReturnType<typeof doneTo>[]): readonly Change[] => {
  const changes = done.flatMap((one) => one.changes);
  return joined([...changes, ...explained(all, changes)]);
};

/** The changes that a plan makes to the workbook's sheets. */
export const changesFor = (all: readonly SheetContents[], { targets }: Plan): readonly Change[] =>
  changesOfAll(
    all,
    targets.map((target) => doneTo(all, target)),
  );

/**
 * What the sheet of worked formulas would hold if the named sheets were frozen: the entries that stand there already, but
 * those of cells that would be frozen anew, and the new ones. Undefined where there is nothing to keep.
 */
export const workedIfFrozen = (
  all: readonly SheetContents[],
  names: readonly string[],
  manner: Manner = asFigures,
): { readonly name: string; readonly entries: readonly Entry[] } | undefined => {
  const entries = planOf(all, new Set(names), manner).targets.map((target) => doneTo(all, target).entry);
  const worked = all.find((sheet) => isWorked(sheet) && entriesOf(sheet).unread.length === 0);
  const kept = worked
    ? entriesOf(worked).entries.filter(
        (old) => names.includes(old.sheet) && !entries.some((entry) => overlap(entry, old)),
      )
    : [];
  const together = [...kept, ...entries];
  return together.length > 0 ? { name: worked?.name ?? WORKED, entries: together } : undefined;
};

/**
 * Freezes every VIV formula of the named sheets, and keeps the formulas on the sheet "Worked formulas". The entries
 * that stand there already stay, but those of cells that are frozen anew.
 */
export const freezeSheets = async (
  workbook: Workbook,
  names: readonly string[],
  options?: Options,
  manner: Manner = asFigures,
): Promise<Done> => {
  const all = await workbook.read();
  const { targets, left } = planOf(all, new Set(names), manner);
  stopIfCancelled(options);
  if (targets.length === 0) {
    const text =
      left.length > 0 ? "No formula could be frozen, and none was touched:" : "There was no formula to freeze.";
    return { text, left };
  }
  const frozen = targets.map((target) => doneTo(all, target));
  const entries = frozen.map(({ entry }) => entry);
  const changes = changesOfAll(all, frozen);
  const worked = all.find((sheet) => isWorked(sheet) && !sheet.locked && entriesOf(sheet).unread.length === 0);
  if (worked) {
    const kept = entriesOf(worked).entries.filter((old) => !entries.some((entry) => overlap(entry, old)));
    await workbook.write([...changes, rewriteOf(worked, [...kept, ...entries])], options);
  } else {
    const rows = workedRows(entries);
    const name = await workbook.add(WORKED, rows, workedLook(rows));
    try {
      await workbook.write(changes, options);
    } catch (failure) {
      await takeBack(() => workbook.remove([name]), failure, `Remove the sheet "${name}" by hand.`);
    }
  }
  const cells = targets.reduce((sum, { rows, columns }) => sum + rows * columns, 0);
  return {
    text:
      `${counted(targets.length, "formula")} in ${counted(new Set(targets.map(({ sheet }) => sheet)).size, "sheet")} ` +
      `${targets.length === 1 ? "is" : "are"} now fixed figures (${counted(cells, "cell")}). ` +
      `The formulas are kept on "${worked?.name ?? WORKED}".${left.length > 0 ? " Not frozen, and not touched:" : ""}`,
    left,
  };
};

/** Writes the entries over whatever rows the sheet has now. */
export const rewriteOf = (worked: SheetContents, entries: readonly Entry[]): Change => {
  const columns = columnsOf(worked);
  const rows = workedRows(entries).map((row) => row.slice(0, columns));
  const surplus = Math.max(0, worked.cells.length - rows.length);
  const blank = rows[0]?.map(() => null) ?? [];
  return { sheet: worked.name, row: 0, column: 0, cells: [...rows, ...Array.from({ length: surplus }, () => blank)] };
};

/** `choice`: the names of the sheets to freeze, or undefined for all, hidden ones too. */
export const freeze: Action<readonly string[] | undefined> = {
  key: "freeze",
  label: "Freeze",
  about:
    "Puts the figure in place of every VIV formula, and of TODAY() on a sheet that has any, for people who have no add-in, and keeps the formulas on the sheet " +
    `"${WORKED}". Thaw puts them back.`,
  async describe(workbook, choice) {
    if (choice?.length === 0) return impossible(CHOOSE_A_SHEET);
    const all = await workbook.read();
    const names = choice ?? all.map(({ name }) => name);
    const { targets, left } = planOf(all, new Set(names));
    if (targets.length === 0) {
      return impossible(
        left.length > 0 ? "No formula can be frozen:" : "There is no VIV formula here, so there is nothing to freeze.",
        left,
      );
    }
    const hidden = all.filter(({ hidden, name }) => hidden && targets.some(({ sheet }) => sheet === name));
    const list = filledDown(targets.map((target) => doneTo(all, target).entry)).map((group) =>
      onSheet((group[0] as Entry).sheet, areaName(areaOfGroup(group))),
    );
    return {
      text:
        `${counted(targets.length, "formula")} will become fixed figures` +
        `${hidden.length > 0 ? ", hidden sheets included" : ""}, and be kept on "${WORKED}". All other cells stay as they are.` +
        (left.length > 0 ? ` ${counted(left.length, "formula")} cannot be frozen.` : ""),
      list: [...left, ...list],
      possible: true,
      ask: true,
    };
  },
  async run(workbook, choice, options) {
    return freezeSheets(workbook, choice ?? (await workbook.sheetNames()), options);
  },
};
