import { firstInput } from "../../taskpane/sheets/firstInput";
import { roleLooks } from "../../taskpane/sheets/look";
import { block } from "../../taskpane/sheets/shared/address";
import { WorkbookError, type CellContent, type Options, type PlainLook, type Workbook } from "../../taskpane/workbook";
import { freeName } from "../freeName";
import { LOADED, readSheets, sheetNames, sheetsNamed, statesOf, withSpillParents } from "./contents";
import { entryOf } from "./entry";
import { failed, isNameTaken, stopIfAborted } from "./failure";
import { dress, drawSheet, pointsOfLines, pointsOfWidth } from "./insert";
import { insertRows } from "./insertRows";
import { adorn } from "./ornaments";
import { addTableColumn, tableAt } from "./tables";
import { takeLook } from "./takeLook";
import { sizeOf, write } from "./write";

/** What the workbook looked like before sheets were added. */
interface Before {
  readonly ids: ReadonlySet<string>;
  readonly names: readonly string[];
  readonly active: string;
}

const lookBefore = async (context: Excel.RequestContext): Promise<Before> => {
  const { worksheets } = context.workbook;
  worksheets.load("items/id,items/name");
  const active = worksheets.getActiveWorksheet();
  active.load("id");
  await context.sync();
  return {
    ids: new Set(worksheets.items.map(({ id }) => id)),
    names: worksheets.items.map(({ name }) => name),
    active: active.id,
  };
};

/**
 * Adds sheets whole or not at all: where `add` fails, every sheet that has come since and is one of `ours` goes again,
 * and the sheet that was shown is shown. A turn that fails half-way leaves behind what it had done, so that nothing but
 * the list of sheets says what there is to take back.
 */
const adding = async <T>(
  could: string,
  ours: (name: string, before: Before) => boolean,
  add: (context: Excel.RequestContext, before: Before) => Promise<T>,
): Promise<T> => {
  let before: Before | undefined;
  try {
    return await Excel.run(async (context) => {
      before = await lookBefore(context);
      return add(context, before);
    });
  } catch (failure) {
    const was = before;
    if (!was) throw failed(could, failure);
    try {
      await Excel.run(async (context) => {
        const { worksheets } = context.workbook;
        worksheets.load("items/id,items/name");
        await context.sync();
        const added = worksheets.items.filter(({ id, name }) => !was.ids.has(id) && ours(name, was));
        // A name that was taken in this very moment belongs to a sheet of somebody else's.
        if (added.length === 0 || (isNameTaken(failure) && added.length === 1)) return;
        for (const sheet of added) sheet.delete();
        worksheets.getItem(was.active).activate();
        await context.sync();
      });
    } catch {
      throw failed(could, failure, "What it had begun could not be removed: delete the new sheets yourself.");
    }
    throw failed(could, failure);
  }
};

/** Runs what adds nothing that would have to be taken back. */
const running = async <T>(could: string, batch: (context: Excel.RequestContext) => Promise<T>): Promise<T> => {
  try {
    return await Excel.run(batch);
  } catch (failure) {
    throw failed(could, failure);
  }
};

const insert: Workbook["insert"] = async (sheets, options: Options = {}) => {
  const names: string[] = [];
  return adding(
    "insert the sheet",
    (name) => names.includes(name),
    async (context, before) => {
      for (const [i, sheet] of sheets.entries()) {
        stopIfAborted(options);
        const name = freeName(sheet.name, [...before.names, ...names]);
        names.push(name);
        context.application.suspendScreenUpdatingUntilNextSync();
        drawSheet(context.workbook.worksheets.add(name), sheet);
        // A cell is selected only on the sheet that is shown: all in one turn that is not drawn, from the last to the first.
        if (i === sheets.length - 1) {
          for (const [j, begun] of [...sheets.entries()].reverse()) {
            const own = context.workbook.worksheets.getItem(names[j] as string);
            const { row, column } = firstInput(begun);
            own.activate();
            own.getRangeByIndexes(row, column, 1, 1).select();
          }
        }
        await context.sync();
        const missing = await adorn(name, sheet);
        if (missing.length > 0) options.missing?.(`"${name}" is without ${missing.join(", ")}`);
        options.progress?.((i + 1) / sheets.length);
      }
      return names;
    },
  );
};

const add: Workbook["add"] = async (wanted, cells, look: PlainLook = {}) => {
  let name = "";
  return adding(
    "add the sheet",
    (added) => added === name,
    async (context, before) => {
      name = freeName(wanted, before.names);
      const sheet = context.workbook.worksheets.add(name);
      const [rows, columns] = sizeOf(cells);
      if (rows > 0 && columns > 0) {
        sheet.getRangeByIndexes(0, 0, rows, columns).formulas = cells.map((row: readonly CellContent[]) =>
          Array.from({ length: columns }, (_, j) => entryOf(row[j])),
        );
        const headings = Math.min(look.headings ?? 0, rows);
        if (headings > 0) {
          dress(sheet.getRangeByIndexes(0, 0, headings, columns), block("A1", headings, columns), roleLooks.heading);
          sheet.freezePanes.freezeRows(headings);
        }
        const { lines } = look;
        if (lines && rows > headings) {
          const [below, at] = [rows - headings, `A${headings + 1}`];
          dress(sheet.getRangeByIndexes(headings, 0, below, columns), block(at, below, columns), roleLooks.text);
          for (const [row, count] of lines.entries()) {
            if (count > 1) {
              sheet.getRangeByIndexes(row, 0, 1, 1).getEntireRow().format.rowHeight = pointsOfLines(count);
            }
          }
        }
      }
      look.widths?.forEach((width, i) => {
        sheet.getRangeByIndexes(0, i, 1, 1).getEntireColumn().format.columnWidth = pointsOfWidth(width);
      });
      await context.sync();
      return name;
    },
  );
};

/** Letters of a sheet's name that its copy's name keeps: 31 in all, less " (99)". */
const COPY_KEEPS = 26;

/** Excel names the copies itself. */
const copy: Workbook["copy"] = async (names) =>
  adding(
    "copy the sheet",
    (added) => names.some((name) => added.startsWith(name.slice(0, COPY_KEEPS))),
    async (context) => {
      const sheets = await sheetsNamed(context, names);
      const copies = names.map((name) => {
        const made = (sheets.get(name) as Excel.Worksheet).copy("End");
        made.load("name");
        return made;
      });
      await context.sync();
      return copies.map(({ name }) => name);
    },
  );

/**
 * What Excel is asked to delete is gone for good: all that can be refused is refused before the first sheet goes.
 */
const remove: Workbook["remove"] = async (names) =>
  running("remove the sheet", async (context) => {
    const { worksheets } = context.workbook;
    worksheets.load("items/name,items/visibility");
    const sheets = await sheetsNamed(context, names);
    const stay = worksheets.items.filter(({ name, visibility }) => visibility === "Visible" && !names.includes(name));
    if (stay.length === 0) {
      throw new WorkbookError(
        "A workbook keeps at least one sheet that is not hidden. Nothing was changed. Add a sheet first.",
      );
    }
    for (const sheet of sheets.values()) sheet.delete();
    await context.sync();
  });

/** A request of Excel on the web has 5 MB; a year of readings by the minute is more, and stays #BUSY!. With room to spare. */
const MOST_ROWS_ON_THE_WEB = 50_000;

/** Excel as the pane knows it. Its own undo takes back little of what an add-in does, and nothing on some versions. */
export const excelWorkbook: Workbook = {
  program: "Excel",
  undoes: false,
  // Its web view drops what a page hands over as a download, without a word.
  takesNoFiles: () =>
    String(Office.context.platform) === "Mac" ? "Excel for Mac takes no file from an add-in." : undefined,
  mostRowsOfCall: () => (String(Office.context.platform) === "OfficeOnline" ? MOST_ROWS_ON_THE_WEB : undefined),
  sheetNames: () => running("list the sheets", sheetNames),
  insert,
  read: (names) => running("read the sheets", (context) => readSheets(context, names)),
  write: (changes, options = {}) => write(changes, options),
  insertRows,
  tableAt,
  addTableColumn,
  takeLook,
  add,
  copy,
  remove,
  // Excel's undo is not ours to join.
  asOne: (change) => change(),
  toFile: (names, more = [], instead = []) =>
    running("write the file", async (context) => {
      // The writer is large, and seldom wanted.
      const [{ fileSheets }, { writeXlsx }, { plainFileSheet }, { withChanges }] = await Promise.all([
        import("./file"),
        import("../file/write"),
        import("../file/plain"),
        import("../file/instead"),
      ]);
      const sheets = withChanges(await fileSheets(context, names), instead);
      return writeXlsx([...sheets, ...more.map(plainFileSheet)]);
    }),
  show: (name, row, column) =>
    running("show the sheet", async (context) => {
      const sheet = (await sheetsNamed(context, [name])).get(name) as Excel.Worksheet;
      sheet.activate();
      if (row !== undefined || column !== undefined) sheet.getRangeByIndexes(row ?? 0, column ?? 0, 1, 1).select();
      await context.sync();
    }),
  selection: () =>
    running("read the selected cell", async (context) => {
      const range = context.workbook.getActiveCell();
      range.load(LOADED);
      range.worksheet.load("name");
      await context.sync();
      const states = statesOf(range);
      await withSpillParents(context, [{ range, states }]);
      return {
        sheet: range.worksheet.name,
        row: range.rowIndex,
        column: range.columnIndex,
        cell: states[0]?.[0] ?? { value: null },
      };
    }),
};
