import type { Value } from "../../functions/define";
import { hasFunction } from "../../taskpane/actions/formulas";
import { areaOf } from "../../taskpane/actions/place";
import { formulaMoved } from "../../taskpane/sheets/grown";
import type { Sheet } from "../../taskpane/sheets/sheet";
import {
  WorkbookError,
  type CellContent,
  type CellState,
  type Change,
  type Insertion,
  type Options,
  type SheetContents,
  type Workbook,
} from "../../taskpane/workbook";

type Answer = Value | { readonly error: string };
/** What a formula answers: rows of values, which spill. */
export type Evaluate = (formula: string) => readonly (readonly Answer[])[];

interface StoredSheet {
  name: string;
  hidden: boolean;
  locked: boolean;
  /** By "row,column". */
  readonly contents: Map<string, CellContent>;
  readonly formats: Map<string, string>;
}

const NATIVE: Readonly<Record<string, Answer>> = {
  "=NA()": { error: "#N/A" },
  '=VALUE("?")': { error: "#VALUE!" },
  "=1/0": { error: "#DIV/0!" },
  "=SQRT(-1)": { error: "#NUM!" },
  '=""': "",
};

/**
 * A workbook in memory that keeps every promise of the port and none beyond: contents, spills, formats, hidden and
 * protected sheets. Formulas are answered by `evaluate`, by their text alone.
 */
export class MemoryWorkbook implements Workbook {
  readonly program = "the test";
  readonly undoes = false;
  sheets: StoredSheet[] = [];
  selected = { sheet: "", row: 0, column: 0 };
  saved: (readonly string[])[] = [];
  open?: Workbook["open"];
  look?: Workbook["look"];
  /** The method calls so far. */
  calls: string[] = [];
  /** The number of the call that fails, from 1. */
  failing = 0;

  constructor(private readonly evaluate: Evaluate = () => [[{ error: "#NAME?" }]]) {}

  put(
    name: string,
    cells: readonly (readonly CellContent[])[],
    state: { hidden?: boolean; locked?: boolean; format?: string } = {},
  ): this {
    const sheet: StoredSheet = {
      name,
      hidden: state.hidden ?? false,
      locked: state.locked ?? false,
      contents: new Map(),
      formats: new Map(),
    };
    this.sheets.push(sheet);
    this.fill(sheet, 0, 0, cells, state.format);
    if (this.selected.sheet === "") this.selected = { sheet: name, row: 0, column: 0 };
    return this;
  }

  /** Everything that the workbook holds, for comparing before and after. */
  snapshot(): unknown {
    return this.sheets.map(({ name, hidden, locked, contents, formats }) => ({
      name,
      hidden,
      locked,
      contents: [...contents].sort(([a], [b]) => (a < b ? -1 : 1)),
      formats: [...formats].sort(([a], [b]) => (a < b ? -1 : 1)),
    }));
  }

  private called(method: string): void {
    this.calls.push(method);
    if (this.calls.length === this.failing) throw new WorkbookError(`${method} failed. Nothing was changed.`);
  }

  private find(name: string): StoredSheet {
    const found = this.sheets.find((sheet) => sheet.name === name);
    if (!found) throw new WorkbookError(`There is no sheet "${name}". Nothing was changed.`);
    return found;
  }

  private fill(
    sheet: StoredSheet,
    row: number,
    column: number,
    cells: readonly (readonly CellContent[])[],
    format?: string,
  ): void {
    for (const [i, line] of cells.entries()) {
      for (const [j, content] of line.entries()) {
        const key = `${row + i},${column + j}`;
        if (content === null || content === "") sheet.contents.delete(key);
        else sheet.contents.set(key, content);
        if (format === "General") sheet.formats.delete(key);
        else if (format !== undefined) sheet.formats.set(key, format);
      }
    }
  }

  private free(name: string): string {
    const taken = new Set(this.sheets.map((sheet) => sheet.name.toLowerCase()));
    for (let i = 1; ; i++) {
      const wanted = i === 1 ? name : `${name} (${i})`;
      if (!taken.has(wanted.toLowerCase())) return wanted;
    }
  }

  insertRows({ sheet: name, rows, count, fill }: Insertion): Promise<void> {
    this.called("insertRows");
    const sheet = this.find(name);
    if (sheet.locked) return Promise.reject(new WorkbookError(`"${name}" is protected. Nothing was changed.`));
    const down = <T>(map: Map<string, T>, from: number): void => {
      const before = [...map];
      map.clear();
      for (const [key, value] of before) {
        const [row = 0, column = 0] = key.split(",").map(Number);
        map.set(`${row >= from ? row + count : row},${column}`, value);
      }
    };
    for (const row of rows) {
      down(sheet.contents, row);
      down(sheet.formats, row);
      for (const [key, content] of sheet.contents) {
        if (typeof content === "object" && content !== null) {
          sheet.contents.set(key, { formula: formulaMoved(content.formula, row + 1, count) });
        }
      }
    }
    for (const { row, column, cells, format } of fill) this.fill(sheet, row, column, cells, format);
    return Promise.resolve();
  }

  private answer(formula: string): readonly (readonly Answer[])[] {
    const native = NATIVE[formula];
    return native === undefined ? this.evaluate(formula) : [[native]];
  }

  private cellsOf(sheet: StoredSheet): readonly (readonly CellState[])[] {
    const states = new Map<string, CellState>();
    let [rows, columns] = [0, 0];
    const set = (row: number, column: number, state: CellState) => {
      const format = sheet.formats.get(`${row},${column}`);
      states.set(`${row},${column}`, format === undefined ? state : { ...state, format });
      rows = Math.max(rows, row + 1);
      columns = Math.max(columns, column + 1);
    };
    const places = [...sheet.contents].map(([key, content]) => {
      const [row = 0, column = 0] = key.split(",").map(Number);
      return { row, column, content };
    });
    for (const { row, column, content } of places) {
      if (content === null || typeof content !== "object") set(row, column, { value: content });
    }
    for (const { row, column, content } of places.sort((a, b) => a.row - b.row || a.column - b.column)) {
      if (content === null || typeof content !== "object") continue;
      const answer = this.answer(content.formula);
      const others = answer.flatMap((line, i) => line.map((value, j) => ({ i, j, value }))).slice(1);
      const blocked = others.some(
        ({ i, j }) => states.has(`${row + i},${column + j}`) || sheet.contents.has(`${row + i},${column + j}`),
      );
      set(row, column, { formula: content.formula, value: blocked ? { error: "#SPILL!" } : (answer[0]?.[0] ?? null) });
      if (blocked) continue;
      for (const { i, j, value } of others) set(row + i, column + j, { value, spilledFrom: { row, column } });
    }
    return Array.from({ length: rows }, (_, row) =>
      Array.from({ length: columns }, (_, column) => states.get(`${row},${column}`) ?? { value: null }),
    );
  }

  private contentsOf(sheet: StoredSheet): SheetContents {
    return { name: sheet.name, hidden: sheet.hidden, locked: sheet.locked, cells: this.cellsOf(sheet) };
  }

  async sheetNames(): Promise<readonly string[]> {
    this.called("sheetNames");
    return this.sheets.map(({ name }) => name);
  }

  async insert(sheets: readonly Sheet[]): Promise<readonly string[]> {
    this.called("insert");
    return sheets.map((sheet) => {
      const name = this.free(sheet.name);
      this.put(name, []);
      const stored = this.find(name);
      for (const { at, rows } of sheet.blocks) {
        const area = areaOf(at);
        if (!area) throw new Error(`${at} is no place`);
        const cells = rows.map((line) =>
          line.map((content): CellContent =>
            typeof content === "string" && content.startsWith("=") ? { formula: content } : content,
          ),
        );
        this.fill(stored, area.row, area.column, cells);
      }
      this.selected = { sheet: name, row: 0, column: 0 };
      return name;
    });
  }

  async read(names?: readonly string[]): Promise<readonly SheetContents[]> {
    this.called("read");
    return (names ? names.map((name) => this.find(name)) : this.sheets).map((sheet) => this.contentsOf(sheet));
  }

  async write(changes: readonly Change[], { signal, progress }: Options = {}): Promise<void> {
    this.called("write");
    const written = new Set(
      changes.flatMap(({ sheet, row, column, cells }) =>
        cells.flatMap((line, i) => line.map((_, j) => `${sheet}\n${row + i},${column + j}`)),
      ),
    );
    const before = new Map<string, readonly (readonly CellState[])[]>();
    for (const { sheet: name, row, column, cells } of changes) {
      const sheet = this.find(name);
      if (sheet.locked) throw new WorkbookError(`"${name}" is protected. Nothing was changed.`);
      const now = before.get(name) ?? this.cellsOf(sheet);
      before.set(name, now);
      for (const [i, line] of cells.entries()) {
        for (const [j, content] of line.entries()) {
          const from = now[row + i]?.[column + j]?.spilledFrom;
          if (content !== null && from && !written.has(`${name}\n${from.row},${from.column}`)) {
            throw new WorkbookError("A cell belongs to another formula's answer. Nothing was changed.");
          }
        }
      }
    }
    // Half way through: what has been done must not show.
    progress?.(0.5);
    await Promise.resolve();
    if (signal?.aborted) throw new WorkbookError("Cancelled. Nothing was changed.");
    for (const { sheet, row, column, cells, format } of changes)
      this.fill(this.find(sheet), row, column, cells, format);
    progress?.(1);
  }

  async add(name: string, cells: readonly (readonly CellContent[])[]): Promise<string> {
    this.called("add");
    const given = this.free(name);
    this.put(given, cells);
    return given;
  }

  async copy(names: readonly string[]): Promise<readonly string[]> {
    this.called("copy");
    return names.map((name) => {
      const sheet = this.find(name);
      const given = this.free(sheet.name);
      this.sheets.push({
        ...sheet,
        name: given,
        hidden: false,
        contents: new Map(sheet.contents),
        formats: new Map(sheet.formats),
      });
      return given;
    });
  }

  async remove(names: readonly string[]): Promise<void> {
    this.called("remove");
    for (const name of names) this.find(name);
    this.sheets = this.sheets.filter(({ name }) => !names.includes(name));
  }

  async show(name: string, row = 0, column = 0): Promise<void> {
    this.called("show");
    this.selected = { sheet: this.find(name).name, row, column };
  }

  async selection(): ReturnType<Workbook["selection"]> {
    this.called("selection");
    const { sheet, row, column } = this.selected;
    const cell = this.cellsOf(this.find(sheet))[row]?.[column] ?? { value: null };
    return { sheet, row, column, cell };
  }

  asOne<T>(change: () => Promise<T>): Promise<T> {
    return change();
  }

  async toFile(names: readonly string[]): Promise<Uint8Array> {
    this.called("toFile");
    this.saved.push(names);
    return new Uint8Array([80, 75, 3, 4]);
  }

  /** Places of the formulas with a VIV function, over all sheets. */
  functions(): readonly string[] {
    return this.sheets.flatMap(({ name, contents }) =>
      [...contents].flatMap(([key, content]) =>
        content !== null && typeof content === "object" && hasFunction(content.formula) ? [`${name} ${key}`] : [],
      ),
    );
  }
}
