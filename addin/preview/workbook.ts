import { BooleanNumber, ICommandService, type ICellData, type IWorksheetData } from "@univerjs/core";
import { InsertSheetCommand, SetRangeValuesCommand, SetSelectionsOperation } from "@univerjs/sheets";
import type { FWorkbook, FWorksheet } from "@univerjs/sheets/lib/facade";
import {
  WorkbookError,
  type CellContent,
  type CellPlace,
  type CellState,
  type Change,
  type ColumnLook,
  type Insertion,
  type Opened,
  type Options,
  type PlainSheet,
  type Keeping,
  type SheetContents,
  type Workbook,
} from "../../taskpane/workbook";
import { sheetReferences } from "../../taskpane/actions/formulas";
import { firstInput } from "../../taskpane/sheets/firstInput";
import { roleLooks } from "../../taskpane/sheets/look";
import { addressOf } from "../../taskpane/sheets/shared/address";
import type { Form } from "../../taskpane/text/form";
import type { Book } from "../file/book";
import type { Engine } from "./engine";
import { fileSheetOf } from "./fileSheet";
import { insertSheet } from "./insert";
import { freeName } from "../freeName";
import { UNTITLED } from "./engine";
import { mannerNow } from "./manner";
import { growBeyond, ROOM } from "./room";
import { rulesFollow } from "./rulesFollow";
import { oneStep } from "./oneStep";
import { readFile, replaceSheets } from "./open";
import { cellsOf } from "./readCells";
import { contentOf as plainContentOf, pixelsOfLines, pixelsOfWidth, styleOf } from "./sheetData";

/** Blanks a cell's content and leaves its looks. */
const NOTHING = { v: null, t: null, f: null, si: null, p: null } as const;

const contentOf = (content: CellContent): ICellData => {
  if (content === null) return NOTHING;
  return { ...NOTHING, ...(typeof content === "object" ? { f: content.formula } : plainContentOf(content, true)) };
};

const cancelled = (): WorkbookError => new WorkbookError("Cancelled. Nothing was changed.");

/** Lets a page draw what it has been told before more is done. */
const pause = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

/** How many cells are told of one by one. */
const MOST_TOLD = 20;

/** Formulas of a sheet that name the sheet itself, cleared: the engine would rewrite them on the sheet that is gone, and fail. */
const withoutOwnReferences = (sheet: FWorksheet): Change[] => {
  const name = sheet.getSheetName();
  return cellsOf(sheet).flatMap((line, row) =>
    line.flatMap(({ formula = "" }, column): Change[] =>
      sheetReferences(formula).some((one) => one.sheet.toLowerCase() === name.toLowerCase())
        ? [{ sheet: name, row, column, cells: [[null]] }]
        : [],
    ),
  );
};

const address = (row: number, column: number): string =>
  addressOf({ top: row + 1, left: column + 1, bottom: row + 1, right: column + 1 });

/** The port to the workbook of an engine, with a page or without one. */
export class PreviewWorkbook implements Workbook {
  readonly program = "the preview";
  readonly undoes = true;
  /** Where there is a browser's storage to keep the workbook in. */
  kept?: Keeping;

  /** `hang` puts a sheet's charts over it, where there is a page to put them on; `standing` marks what a save holds. */
  constructor(
    private readonly engine: Engine,
    private readonly hang: (sheet: FWorksheet) => Promise<void> = () => Promise.resolve(),
    private readonly standing: () => () => void = () => () => undefined,
  ) {}

  private get book(): FWorkbook {
    const book = this.engine.api.getActiveWorkbook();
    if (!book) throw new WorkbookError("There is no workbook. Load the page again.");
    return book;
  }

  private sheet(name: string): FWorksheet {
    const sheet = this.book.getSheets().find((one) => one.getSheetName() === name);
    if (!sheet) throw new WorkbookError(`There is no sheet "${name}". Nothing was changed.`);
    return sheet;
  }

  private command(command: { readonly id: string }, params: object): void {
    const done = this.engine.univer.__getInjector().get(ICommandService).syncExecuteCommand(command.id, params);
    if (!done) throw new Error(`the engine refused ${command.id}`);
  }

  async asOne<T>(change: () => Promise<T> | T): Promise<T> {
    const { book } = this;
    const shown = book.getActiveSheet().getSheetId();
    try {
      return await oneStep(this.engine, book.getId(), change);
    } catch (failure) {
      if (book.getSheetBySheetId(shown)) book.setActiveSheet(shown);
      await this.engine.settle();
      throw failure;
    }
  }

  /** Everything that `change` does, as one step of undo; a failure has changed nothing, and says so in words. */
  private async whole<T>(what: string, change: () => Promise<T> | T): Promise<T> {
    try {
      return await this.asOne(change);
    } catch (failure) {
      if (failure instanceof WorkbookError) throw failure;
      const words = failure instanceof Error ? failure.message : String(failure);
      throw new WorkbookError(`${what} did not work (${words}). Nothing was changed.`);
    }
  }

  async sheetNames(): Promise<readonly string[]> {
    return this.book.getSheets().map((sheet) => sheet.getSheetName());
  }

  insert(sheets: Parameters<Workbook["insert"]>[0], { progress, signal }: Options = {}): Promise<readonly string[]> {
    return this.whole("Inserting", async () => {
      const names: string[] = [];
      for (const [i, sheet] of sheets.entries()) {
        if (signal?.aborted) throw cancelled();
        const name = insertSheet(this.engine, this.book, sheet);
        names.push(name);
        await this.hang(this.sheet(name));
        progress?.((i + 1) / sheets.length);
      }
      if (signal?.aborted) throw cancelled();
      for (const [i, sheet] of sheets.entries()) this.select(names[i] as string, firstInput(sheet));
      const [first] = names;
      if (first !== undefined) this.book.setActiveSheet(this.sheet(first));
      await this.engine.settle();
      return names;
    });
  }

  async read(names?: readonly string[]): Promise<readonly SheetContents[]> {
    await this.engine.settle();
    const sheets = names ? names.map((name) => this.sheet(name)) : this.book.getSheets();
    return sheets.map((sheet) => ({
      name: sheet.getSheetName(),
      hidden: sheet.isSheetHidden(),
      // The preview locks nothing.
      locked: false,
      cells: cellsOf(sheet),
    }));
  }

  async write(changes: readonly Change[], { progress, signal }: Options = {}): Promise<void> {
    this.refuseSpills(changes);
    if (signal?.aborted) throw cancelled();
    await this.whole("Writing", async () => {
      for (const [i, change] of changes.entries()) {
        if (signal?.aborted) throw cancelled();
        this.writeOne(change);
        progress?.((i + 1) / changes.length);
        if (i % 50 === 49) await pause();
      }
    });
    await this.engine.settle();
  }

  private writeOne({ sheet: name, row, column, cells, format }: Change): void {
    const sheet = this.sheet(name);
    const columns = Math.max(0, ...cells.map((line) => line.length));
    if (cells.length === 0 || columns === 0) return;
    growBeyond(
      this.engine.univer.__getInjector(),
      { unitId: this.book.getId(), subUnitId: sheet.getSheetId() },
      row + cells.length,
      column + columns,
    );
    const style = format === undefined ? {} : { s: { n: { pattern: format } } };
    const standing = sheet.getSheet().getCellMatrix();
    // The words of an error go with what answered it; what else is kept of a cell, such as a link, stays.
    const wordless = (at: number, across: number): Pick<ICellData, "custom"> => {
      const { custom } = standing.getValue(at, across) ?? {};
      return custom?.message === undefined ? {} : { custom: { ...custom, message: null } };
    };
    this.command(SetRangeValuesCommand, {
      unitId: this.book.getId(),
      subUnitId: sheet.getSheetId(),
      // Without a range the command needs a selection, which a workbook without a page may not have.
      range: { startRow: row, endRow: row + cells.length - 1, startColumn: column, endColumn: column + columns - 1 },
      value: Object.fromEntries(
        cells.map((line, i) => [
          row + i,
          Object.fromEntries(
            line.map((content, j) => [
              column + j,
              { ...contentOf(content), ...style, ...wordless(row + i, column + j) },
            ]),
          ),
        ]),
      ),
    });
  }

  /** A cell that a formula elsewhere fills can't be written: the formula would be left with no room. */
  private refuseSpills(changes: readonly Change[]): void {
    const states = new Map<string, readonly (readonly CellState[])[]>();
    const written = new Set<string>();
    const key = (sheet: string, row: number, column: number): string => `${row},${column},${sheet}`;
    for (const { sheet, row, column, cells } of changes) {
      cells.forEach((line, i) => line.forEach((_, j) => written.add(key(sheet, row + i, column + j))));
      if (!states.has(sheet)) states.set(sheet, cellsOf(this.sheet(sheet)));
    }
    for (const { sheet, row, column, cells } of changes) {
      for (const [i, line] of cells.entries()) {
        for (const [j, content] of line.entries()) {
          const from = states.get(sheet)?.[row + i]?.[column + j]?.spilledFrom;
          if (content === null || !from || written.has(key(sheet, from.row, from.column))) continue;
          const formula = states.get(sheet)?.[from.row]?.[from.column]?.formula ?? "";
          throw new WorkbookError(
            `A cell of "${sheet}" is filled by the formula ${formula.slice(0, 60)}. Choose empty cells; nothing was changed.`,
          );
        }
      }
    }
  }

  async insertRows({ sheet: name, rows, count, fill, joined = [] }: Insertion): Promise<void> {
    const sheet = this.sheet(name);
    const shown = this.book.getActiveSheet();
    const selected = this.book.getActiveCell();
    await this.whole("Adding rows", () => {
      for (const row of rows) {
        // Copied: the engine moves its own in place.
        const rules = structuredClone(sheet.getConditionalFormattingRules());
        sheet.insertRowsBefore(row, count);
        rulesFollow(sheet, rules, row, count);
      }
      for (const one of joined) sheet.getRange(one).merge();
      for (const change of fill) this.writeOne(change);
      // The engine selects the rows that it has put in, and goes where they are.
      if (!selected) return;
      const down =
        shown.getSheetId() === sheet.getSheetId() ? rows.filter((row) => row <= selected.getRow()).length : 0;
      const at = { row: selected.getRow() + down * count, column: selected.getColumn() };
      this.select(shown.getSheetName(), at, true);
    });
    await this.engine.settle();
  }

  async takeLook({ sheet: name, row, column, rows, like, characters }: ColumnLook): Promise<void> {
    const sheet = this.sheet(name);
    await this.whole("Taking the look", () => {
      const standing = sheet.getSheet().getCellMatrix();
      // The engine takes a cell that is told no formula for one that has none any more.
      const lookAt = (at: number): Pick<ICellData, "s" | "f" | "si"> => {
        const { n: _, ...look } = sheet.getRange(at, like).getCellStyleData() ?? {};
        const { f, si } = standing.getValue(at, column) ?? {};
        return { s: look, ...(f ? { f } : {}), ...(si ? { si } : {}) };
      };
      this.command(SetRangeValuesCommand, {
        unitId: this.book.getId(),
        subUnitId: sheet.getSheetId(),
        range: { startRow: row, endRow: row + rows - 1, startColumn: column, endColumn: column },
        value: Object.fromEntries(Array.from({ length: rows }, (_, i) => [row + i, { [column]: lookAt(row + i) }])),
      });
      const wanted = pixelsOfWidth(characters);
      if (sheet.getColumnWidth(column) < wanted) sheet.setColumnWidth(column, wanted);
    });
    await this.engine.settle();
  }

  async add(
    wanted: string,
    cells: Parameters<Workbook["add"]>[1],
    { widths = [], headings = 0, lines }: Parameters<Workbook["add"]>[2] = {},
  ): Promise<string> {
    return this.whole("Adding a sheet", async () => {
      const name = freeName(wanted, await this.sheetNames());
      const heading = styleOf(roleLooks.heading);
      const body = lines ? { s: styleOf(roleLooks.text) } : {};
      const columns = Math.max(1, ...cells.map((row) => row.length));
      const data: Partial<IWorksheetData> = {
        name,
        rowCount: cells.length + ROOM.rows,
        columnCount: columns + ROOM.columns,
        cellData: Object.fromEntries(
          cells.map((row, i) => [
            i,
            Object.fromEntries(
              row.flatMap((content, j) => {
                if (content === null && i >= headings) return [];
                return [
                  [j, { ...(content === null ? {} : contentOf(content)), ...(i < headings ? { s: heading } : body) }],
                ];
              }),
            ),
          ]),
        ),
        columnData: Object.fromEntries(
          widths.map((width, i) => [i, { w: pixelsOfWidth(width), hd: BooleanNumber.FALSE }]),
        ),
        rowData: Object.fromEntries(
          (lines ?? []).flatMap((count, i) =>
            count > 1 ? [[i, { h: pixelsOfLines(count), ia: BooleanNumber.FALSE }]] : [],
          ),
        ),
        freeze: { startRow: headings, startColumn: -1, ySplit: headings, xSplit: 0 },
      };
      this.command(InsertSheetCommand, {
        unitId: this.book.getId(),
        index: this.book.getSheets().length,
        sheet: data,
      });
      await this.engine.settle();
      return name;
    });
  }

  copy(names: readonly string[]): Promise<readonly string[]> {
    return this.whole("Copying", async () => {
      const sheets = names.map((name) => this.sheet(name));
      const copies: string[] = [];
      for (const sheet of sheets) {
        const name = freeName(sheet.getSheetName(), await this.sheetNames());
        const copy = this.book.duplicateSheet(sheet);
        copy.setName(name);
        this.book.moveSheet(copy, this.book.getSheets().length - 1);
        copies.push(name);
      }
      await this.engine.settle();
      return copies;
    });
  }

  async remove(names: readonly string[]): Promise<void> {
    const sheets = names.map((name) => this.sheet(name));
    if (sheets.length >= this.book.getSheets().length) {
      throw new WorkbookError("A workbook needs one sheet at least. Nothing was removed.");
    }
    await this.whole("Removing", async () => {
      await this.write(sheets.flatMap(withoutOwnReferences));
      for (const sheet of sheets) if (!this.book.deleteSheet(sheet)) throw new Error(`"${sheet.getSheetName()}" stays`);
    });
    await this.engine.settle();
  }

  async show(name: string, row = 0, column = 0): Promise<void> {
    const sheet = this.sheet(name);
    this.book.setActiveSheet(sheet);
    this.book.setActiveRange(sheet.getRange(row, column));
  }

  /** Selects a cell of a sheet, whether it is shown or not. */
  private select(name: string, { row, column }: Pick<CellPlace, "row" | "column">, reveal = false): void {
    const range = { startRow: row, endRow: row, startColumn: column, endColumn: column };
    this.command(SetSelectionsOperation, {
      unitId: this.book.getId(),
      subUnitId: this.sheet(name).getSheetId(),
      reveal,
      selections: [
        {
          range,
          primary: { ...range, actualRow: row, actualColumn: column, isMerged: false, isMergedMainCell: false },
          style: null,
        },
      ],
    });
  }

  async selection(): ReturnType<Workbook["selection"]> {
    const sheet = this.book.getActiveSheet();
    const range = this.book.getActiveCell() ?? sheet.getRange(0, 0);
    const [row, column] = [range.getRow(), range.getColumn()];
    await this.engine.settle();
    const cell = cellsOf(sheet)[row]?.[column] ?? { value: null };
    return { sheet: sheet.getSheetName(), row, column, cell };
  }

  async toFile(
    names: readonly string[],
    more: readonly PlainSheet[] = [],
    instead: readonly Change[] = [],
  ): Promise<Uint8Array> {
    return this.written(names, more, "others", instead);
  }

  title(): string | undefined {
    const name = this.book.getName();
    return name === UNTITLED ? undefined : name;
  }

  async save(take?: (bytes: Uint8Array) => void | Promise<void>): Promise<Uint8Array> {
    await this.engine.settle();
    // While the file is made the keeper may go on: what is changed then is not in it.
    const saved = this.standing();
    const bytes = await this.written(await this.sheetNames(), [], "own");
    await take?.(bytes);
    saved();
    return bytes;
  }

  private async written(
    names: readonly string[],
    more: readonly PlainSheet[],
    purpose: "own" | "others",
    instead: readonly Change[] = [],
  ): Promise<Uint8Array> {
    await this.engine.settle();
    const { sheets, manner } = this.contents(names);
    // Loaded when it is wanted: most pages of a preview are closed without a file.
    const [{ writeXlsx }, { plainFileSheet }, { withChanges }] = await Promise.all([
      import("../file/write"),
      import("../file/plain"),
      import("../file/instead"),
    ]);
    return writeXlsx(
      [...withChanges(sheets, instead), ...more.map(plainFileSheet)],
      purpose,
      purpose === "own" ? manner : undefined,
    );
  }

  /** The named sheets as a file holds them, with the figures that stand at this moment. */
  contents(names: readonly string[]): Book {
    return { sheets: names.map((name) => fileSheetOf(this.engine, this.book, this.sheet(name))), manner: mannerNow() };
  }

  async look(name: string, bytes: Uint8Array, said?: Partial<Form>): Promise<Opened> {
    const { sheets, left } = await readFile(name, bytes, said);
    return { sheets: sheets.map((sheet) => sheet.name), left };
  }

  /** The file's sheets take the place of all that are open, as one step of undo. */
  async open(name: string, bytes: Uint8Array, said?: Partial<Form>): Promise<Opened> {
    const { left, ...book } = await readFile(name, bytes, said);
    if (book.sheets.length === 0) throw new WorkbookError(`"${name}" holds no sheet. Nothing was changed.`);
    const opened = await this.place(name.replace(/\.[^.]*$/, ""), book);
    return { ...opened, left: [...left, ...opened.left] };
  }

  /** Puts a workbook in the place of the one that is open, as one step of undo. */
  async place(title: string, book: Book): Promise<Opened> {
    const { sheets } = book;
    const unplaced = await this.whole("Opening", async () => {
      const words = replaceSheets(this.engine, this.book, title, book);
      const first = this.book.getActiveSheet();
      for (const { name: sheet, template } of sheets) if (template !== undefined) await this.hang(this.sheet(sheet));
      this.book.setActiveSheet(first);
      return words;
    });
    await this.engine.settle();
    // A formula that the file's own program could work out and the preview cannot is told of; its figure is lost here.
    const stuck = sheets.flatMap((sheet) => {
      const cells = cellsOf(this.sheet(sheet.name));
      return sheet.cells.flatMap((row, i) =>
        row.flatMap(({ formula, value: before }, j) => {
          const now = cells[i]?.[j]?.value;
          const fails = typeof now === "object" && now !== null;
          if (formula === undefined || !fails || before === null || typeof before === "object") return [];
          return [`"${sheet.name}" ${address(i, j)}: ${formula} was ${before} in the file and is ${now.error} here`];
        }),
      );
    });
    const told = stuck.slice(0, MOST_TOLD);
    const more = stuck.length - told.length;
    return {
      sheets: await this.sheetNames(),
      left: [...unplaced, ...told, ...(more > 0 ? [`${more} more formulas that the preview cannot work out`] : [])],
    };
  }
}
