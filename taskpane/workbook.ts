import type { Value } from "../functions/define";
import type { Sheet } from "./sheets/sheet";
import type { Form } from "./text/form";

/**
 * What the pane may ask of a workbook. Every host implements the whole port; the pane knows no spreadsheet program.
 * Rows and columns count from 0. Every change happens whole or not at all: a promise that rejects has changed nothing,
 * and its `WorkbookError` says so in words for the keeper.
 */
export interface Workbook {
  /** The program's name for a sentence: "Excel", "the preview". */
  readonly program: string;
  /** Whether the program's own undo takes back what was done through the port. */
  readonly undoes: boolean;

  /** The sheets' names, in order. */
  sheetNames(): Promise<readonly string[]>;

  /** Inserts templated sheets after the last one, each to open where it begins to be filled in, and shows the first; answers the names that they were given. */
  insert(sheets: readonly Sheet[], options?: Options): Promise<readonly string[]>;

  /** Everything in the named sheets (all where none are named) from A1 to the last used cell. */
  read(names?: readonly string[]): Promise<readonly SheetContents[]>;

  /** Writes blocks of cells. Protected sheets and cells under somebody else's spill are refused before anything is written. */
  write(changes: readonly Change[], options?: Options): Promise<void>;

  /**
   * Puts whole rows into a sheet, with the looks, lists and colour rules of the row above. Formulas, lists,
   * rules and charts that reach across them reach across the new ones too.
   */
  insertRows(insertion: Insertion): Promise<void>;

  /** The table of the program's own in which a cell stands; only where the program has such tables. */
  readonly tableAt?: (place: CellPlace) => Promise<ProgramTable | undefined>;

  /** Adds a last column to such a table: one formula for all of its rows, those that are added later too. */
  readonly addTableColumn?: (
    table: ProgramTable,
    column: { readonly heading: string; readonly formula: string; readonly format?: string },
  ) => Promise<void>;

  /**
   * Gives a column's cells the look of those of another in the same rows: colours, font, lines and alignment. Number formats,
   * lists and colour rules stay as they are. A column that is narrower than so many characters becomes as wide.
   */
  readonly takeLook?: (look: ColumnLook) => Promise<void>;

  /** Adds a plain sheet of text and figures after the last one; answers the name that it was given. */
  add(name: string, cells: readonly (readonly CellContent[])[], look?: PlainLook): Promise<string>;

  /** Copies sheets after the last one; answers the names of the copies, in order. */
  copy(names: readonly string[]): Promise<readonly string[]>;

  /** Removes sheets. */
  remove(names: readonly string[]): Promise<void>;

  /** Shows a sheet and selects a cell of it. */
  show(name: string, row?: number, column?: number): Promise<void>;

  /** The selected cell and what it holds. */
  selection(): Promise<CellPlace & { readonly cell: CellState }>;

  /**
   * Everything that `change` does through the port, as one step of undo where the program's undo is ours; where it rejects
   * there, all of it is taken back.
   */
  asOne<T>(change: () => Promise<T>): Promise<T>;

  /**
   * The named sheets as an .xlsx file for people without the add-in: values, formats, charts of templates, native
   * formulas; no VIV formula. `more` are plain sheets behind them. `instead` is written into the file's sheets in place of
   * what the workbook's cells hold; the answers that they show stay.
   */
  toFile(names: readonly string[], more?: readonly PlainSheet[], instead?: readonly Change[]): Promise<Uint8Array>;

  /** In words why this program takes no file from the pane; undefined where it does. */
  readonly takesNoFiles?: () => string | undefined;

  /** The most rows that this program hands to a function in one argument; undefined where no such limit is known. */
  readonly mostRowsOfCall?: () => number | undefined;

  /** The name of the file that was opened, without its ending; undefined where there is none. */
  readonly title?: () => string | undefined;

  /** What is kept between visits; only where the host is a page of ours. */
  readonly kept?: Keeping;

  /**
   * The whole workbook as an .xlsx file to go on working with, VIV formulas included; as it stood then it counts as saved
   * once `take` has the file. There where `open` is.
   */
  readonly save?: (take?: (bytes: Uint8Array) => void | Promise<void>) => Promise<Uint8Array>;

  /** What opening a file would bring, and what could not be carried over; nothing is opened. There where `open` is. */
  readonly look?: (name: string, bytes: Uint8Array, said?: Partial<Form>) => Promise<Opened>;

  /**
   * Opens a file of the user's own as the workbook; only where the host is a spreadsheet of ours. `said` is what the user
   * has said of a CSV file's form: the rest is guessed, and refused where it can be read in two ways.
   */
  readonly open?: (name: string, bytes: Uint8Array, said?: Partial<Form>) => Promise<Opened>;
}

/** A workbook that a page of ours keeps in its browser. */
export interface KeptWorkbook {
  readonly id: string;
  /** The name of its file, without its ending. */
  readonly title: string;
  readonly sheets: number;
  /** When it was changed last, in milliseconds since 1970. */
  readonly changed: number;
  /** Whether all of it was saved as a file as well. */
  readonly saved: boolean;
}

/** What a page of ours keeps of workbooks between visits, in the browser's own storage on this machine. */
export interface Keeping {
  /** Those that are open nowhere now, the latest first. */
  list(): Promise<readonly KeptWorkbook[]>;
  /** Puts one in the place of the workbook that is open. */
  restore(id: string): Promise<Opened>;
  discard(id: string): Promise<void>;
  /** In words why the open workbook is not kept; undefined where it is. */
  trouble(): string | undefined;
}

export interface Options {
  /** Called now and then with the share done, 0..1. */
  readonly progress?: (share: number) => void;
  /** Aborting rejects with a WorkbookError, and leaves the workbook as it was. */
  readonly signal?: AbortSignal;
  /** Told, in words, what the program refused to draw on a sheet that it has inserted all the same. */
  readonly missing?: (words: string) => void;
}

export interface CellPlace {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** Cells of one column that are to look like those of another. */
export interface ColumnLook extends CellPlace {
  readonly rows: number;
  /** The column that is looked like. */
  readonly like: number;
  readonly characters: number;
}

/** A table of the program's own: the row of its headings, and its columns from the first on. */
export interface ProgramTable extends CellPlace {
  readonly name: string;
  readonly columns: number;
}

/** What is written into a cell. Text is written as text, even when it starts with "="; null clears the content. */
export type CellContent = Value | null | { readonly formula: string };

export interface Change extends CellPlace {
  readonly cells: readonly (readonly CellContent[])[];
  /** A number format code for the whole block, where it is to be set. */
  readonly format?: string;
}

/** Rows that are put in, so many before each of some rows, one after the other; then cells are joined and `fill` is written. */
export interface Insertion {
  readonly sheet: string;
  /** Counted from 0, each as it is called when those before it are in. */
  readonly rows: readonly number[];
  readonly count: number;
  readonly fill: readonly Change[];
  /** Cells of the new rows that are one to the eye, "B5:C5": no program takes that from the row above. */
  readonly joined?: readonly string[];
}

export interface CellState {
  /** With its "=", as typed; undefined where the cell holds none (a spilled cell holds none). */
  readonly formula?: string;
  /** The value shown; null where blank; an error as { error: "#N/A" }. */
  readonly value: Value | null | { readonly error: string };
  /** What a function of ours says of the error that it answers, where the host keeps it. */
  readonly words?: string;
  readonly format?: string;
  /** The place of the formula that fills this cell by spilling. */
  readonly spilledFrom?: { readonly row: number; readonly column: number };
}

export interface SheetContents {
  readonly name: string;
  readonly hidden: boolean;
  readonly locked: boolean;
  readonly cells: readonly (readonly CellState[])[];
}

/** How a plain sheet is laid out. */
export interface PlainLook {
  readonly widths?: readonly number[];
  /** Rows from the top that are headings. */
  readonly headings?: number;
  /** Heights in lines of text, from the first row down; where they are given, words under the headings run over lines. */
  readonly lines?: readonly number[];
}

/** A sheet of text and figures for a file. */
export interface PlainSheet {
  readonly name: string;
  readonly cells: readonly (readonly CellContent[])[];
  readonly look?: PlainLook;
}

/** What came of opening a file: its sheets, and in words what could not be carried over. */
export interface Opened {
  readonly sheets: readonly string[];
  readonly left: readonly string[];
}

/** A failure in words for the keeper: what happened, that nothing was changed, what to do. */
export class WorkbookError extends Error {
  override readonly name = "WorkbookError";
}
