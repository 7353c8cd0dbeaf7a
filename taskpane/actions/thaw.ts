import type { CellContent, Change, SheetContents, Workbook } from "../workbook";
import { CHOOSE_A_SHEET, counted, impossible, stopIfCancelled, type Action } from "./action";
import { blockOf, changesOf, rewriteOf } from "./freeze";
import { isExplaining, isMarked, unexplaining, unmarked } from "./mark";
import { takeBack } from "./takeBack";
import { joined } from "./joined";
import { areaName, onSheet } from "./place";
import {
  checkOf,
  columnsOf,
  contentOf,
  entriesOf,
  FIRST,
  isWorked,
  overlap,
  wordsOf,
  type Entry,
  type KeptEntry,
} from "./worked";

/** A sheet of entries, and what stays on it. */
interface Worked {
  readonly sheet: SheetContents;
  readonly staying: readonly KeptEntry[];
  /** How many of its rows cannot be read. */
  readonly unread: number;
}

interface Plan {
  /** Entries whose cells hold just what Freeze left there. */
  readonly thawed: readonly Entry[];
  /** Why the others stay. */
  readonly left: readonly string[];
  readonly worked: readonly Worked[];
  readonly all: readonly SheetContents[];
}

const contentsAt = (sheet: SheetContents | undefined, { row, column, rows, columns }: Entry): CellContent[][] =>
  Array.from({ length: rows }, (_, i) =>
    Array.from({ length: columns }, (_, j) => contentOf(sheet?.cells[row + i]?.[column + j])),
  );

const planOf = async (workbook: Workbook, names: readonly string[] | undefined): Promise<Plan> => {
  const all = await workbook.read();
  const byName = new Map(all.map((sheet) => [sheet.name, sheet]));
  const left: string[] = [];
  const thawed: Entry[] = [];
  const found = all.filter(isWorked).map((sheet) => ({ sheet, ...entriesOf(sheet) }));
  for (const { sheet, unread } of found) {
    for (const row of unread) left.push(`Row ${row} of "${sheet.name}" cannot be read: it has been changed`);
  }
  const wanted = names && new Set(names);
  // A sheet of entries that is protected cannot lose its entries, so they stay.
  const protectedOnes = new Set(found.filter(({ sheet }) => sheet.locked).map(({ sheet }) => sheet.name));
  const worked: Worked[] = [];
  // The latest entry of a cell is the one that counts.
  for (const { sheet, entries, unread } of [...found].reverse()) {
    const staying: KeptEntry[] = [];
    for (const entry of [...entries].reverse()) {
      const place = onSheet(entry.sheet, areaName(entry));
      const target = byName.get(entry.sheet);
      const reason =
        wanted && !wanted.has(entry.sheet)
          ? "" // not asked for
          : protectedOnes.has(sheet.name)
            ? `${place}: "${sheet.name}" is protected`
            : !target
              ? `${place}: there is no sheet of that name any more`
              : target.locked
                ? `${place}: the sheet is protected`
                : checkOf(contentsAt(target, entry)) !== entry.check
                  ? `${place} has been changed since, or moved`
                  : thawed.some((other) => overlap(other, entry))
                    ? `${place} has been frozen again since`
                    : undefined;
      if (reason === undefined) {
        thawed.push(entry);
      } else {
        staying.unshift(entry);
        if (reason) left.push(reason);
      }
    }
    worked.unshift({ sheet, staying, unread: unread.length });
  }
  return { thawed, left, worked, all };
};

/** Formula first, blanks where its answer will spill. */
const contentsFor = ({ rows, columns, formula }: Entry): CellContent[][] =>
  Array.from({ length: rows }, (_, i) =>
    Array.from({ length: columns }, (_, j) => (i === 0 && j === 0 ? { formula } : null)),
  );

const changeFor = ({ sheet, row, column }: Entry, cells: CellContent[][]): Change => ({ sheet, row, column, cells });

/** The formula back in its cell; where its figures were marked as fixed, the mark goes too. */
const thawing = (sheet: SheetContents, entry: Entry): readonly Change[] => {
  const cells = contentsFor(entry);
  const block = blockOf(sheet, entry);
  const plain = block.map((row) => row.map(unmarked));
  const isMarked = plain.some((row, i) => row.some((cell, j) => cell !== block[i]?.[j]));
  return isMarked ? changesOf(sheet.name, { ...entry, cells }, plain) : [changeFor(entry, cells)];
};

/** Where no figure of a sheet carries the mark any more, its title no longer says what it means. */
const unexplained = ({ name, cells }: SheetContents, thawed: readonly Entry[]): readonly Change[] => {
  const own = thawed.filter(({ sheet }) => sheet === name);
  const isThawed = (row: number, column: number): boolean =>
    own.some(
      (one) => row >= one.row && row < one.row + one.rows && column >= one.column && column < one.column + one.columns,
    );
  const each = cells.flatMap((line, row) => line.map((cell, column) => ({ cell, row, column })));
  if (each.some(({ cell, row, column }) => isMarked(cell) && !isThawed(row, column))) return [];
  return each
    .filter(({ cell }) => isExplaining(cell))
    .map(({ cell, row, column }) => ({
      sheet: name,
      row,
      column,
      cells: [[contentOf(cell)]],
      format: unexplaining(cell).format ?? "General",
    }));
};

/** Whether any formula of the workbook names the sheet: then it may not go. */
const isNamed = (all: readonly SheetContents[], name: string): boolean => {
  const asWritten = name.replaceAll("'", "''").toLowerCase();
  return all.some(({ cells }) =>
    cells.some((line) => line.some(({ formula }) => formula?.toLowerCase().includes(asWritten))),
  );
};

/** `choice`: the names of the sheets to thaw, or undefined for all. */
export const thaw: Action<readonly string[] | undefined> = {
  key: "thaw",
  label: "Thaw",
  about: "Puts frozen formulas back into their cells. A cell that has been changed since is left, and named.",
  async describe(workbook, choice) {
    if (choice?.length === 0) return impossible(CHOOSE_A_SHEET);
    const { thawed, left } = await planOf(workbook, choice);
    const list = [...left, ...thawed.map((entry) => onSheet(entry.sheet, areaName(entry)))];
    if (thawed.length === 0) {
      return impossible(
        left.length > 0
          ? "No formula can be put back:"
          : "Nothing here has been frozen, so there is nothing to put back.",
        left,
      );
    }
    return {
      text:
        `${counted(thawed.length, "formula")} will go back into ${thawed.length === 1 ? "its cell" : "their cells"}. All other ` +
        `cells stay as they are.${left.length > 0 ? ` ${counted(left.length, "entry", "entries")} will be left.` : ""}`,
      list,
      possible: true,
      ask: true,
    };
  },
  async run(workbook, choice, options) {
    const { thawed, left, worked, all } = await planOf(workbook, choice);
    stopIfCancelled(options);
    if (thawed.length === 0) return { text: "Nothing was put back, and nothing was changed.", left };
    const byName = new Map(all.map((sheet) => [sheet.name, sheet]));
    const touched = worked.filter(({ sheet, staying }) => staying.length < entriesOf(sheet).entries.length);
    const emptied = touched.filter(
      ({ sheet, staying, unread }) =>
        staying.length === 0 && unread === 0 && onlyEntries(sheet) && !isNamed(all, sheet.name),
    );
    const rewritten = touched.filter((one) => !emptied.includes(one));
    await workbook.write(
      [
        ...joined(thawed.flatMap((entry) => thawing(byName.get(entry.sheet) as SheetContents, entry))),
        ...[...new Set(thawed.map(({ sheet }) => sheet))].flatMap((name) =>
          unexplained(byName.get(name) as SheetContents, thawed),
        ),
        ...rewritten.flatMap(withoutThawed),
      ],
      options,
    );
    if (emptied.length > 0) {
      try {
        await workbook.remove(emptied.map(({ sheet }) => sheet.name));
      } catch (failure) {
        // As it was: the figures back in place, the entries back on their sheets.
        const back = [
          ...joined(thawed.map((entry) => changeFor(entry, contentsAt(byName.get(entry.sheet), entry)))),
          ...rewritten.map(({ sheet }) => asItWas(sheet)),
        ];
        await takeBack(() => workbook.write(back), failure, "The formulas are back in their cells all the same.");
      }
    }
    return {
      text:
        `${counted(thawed.length, "formula")} ${thawed.length === 1 ? "is" : "are"} back.` +
        (left.length > 0 ? " Left as it was:" : ""),
      left,
    };
  },
};

/** Takes the thawed entries off their sheet: closed up, but where rows cannot be read and so must not move. */
const withoutThawed = ({ sheet, staying, unread }: Worked): readonly Change[] => {
  if (unread === 0) return [rewriteOf(sheet, staying)];
  const stays = new Set(staying.map(({ line }) => line));
  return entriesOf(sheet)
    .entries.filter(({ line }) => !stays.has(line))
    .map(({ line }) => ({
      sheet: sheet.name,
      row: line,
      column: 0,
      cells: [Array.from({ length: columnsOf(sheet) }, () => null)],
    }));
};

/** Writes the sheet's own columns as they were read. */
const asItWas = (sheet: SheetContents): Change => ({
  sheet: sheet.name,
  row: 0,
  column: 0,
  cells: sheet.cells.map((line) => Array.from({ length: columnsOf(sheet) }, (_, column) => contentOf(line[column]))),
});

/** Whether the sheet holds nothing but its entries: a note of the keeper's own keeps it. */
const onlyEntries = (sheet: SheetContents): boolean => {
  const [, words = 0] = wordsOf(sheet) ?? [];
  const last = Math.max(...entriesOf(sheet).entries.map(({ line }) => line), FIRST - 1, words);
  return sheet.cells.every((line, row) =>
    line.every(({ value, formula }, column) => {
      if (formula !== undefined) return false;
      return value === null || value === "" || (column < columnsOf(sheet) && row <= last);
    }),
  );
};
