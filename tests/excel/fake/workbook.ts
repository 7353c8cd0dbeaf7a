import { isReference, parseA1Ref, tokenize, type ReferenceA1 } from "@borgar/fx";
import { formulaMoved } from "../../../taskpane/sheets/grown";

/** What the stand-in holds, apart from how it is spoken to: sheets, cells, and what formulas answer and fill. */
export interface Cell {
  formula: unknown;
  value: unknown;
  format: string;
  /** Entered with a leading apostrophe: text, whatever it looks like. */
  isText: boolean;
}
/** A table of Excel's own: the row of its headings, and how many rows it has below them. */
export interface HeldTable {
  name: string;
  showHeaders: boolean;
  row: number;
  column: number;
  rows: number;
  headings: string[];
}
export interface Tab {
  tables: HeldTable[];
  id: string;
  name: string;
  visibility: string;
  locked: boolean;
  cells: Map<string, Cell>;
  properties: Map<string, string>;
  charts: HeldChart[];
  /** The cell with which it opens. */
  selected?: { row: number; column: number };
  /** What cells were told of their looks one by one, by "row,column". */
  looks: Map<string, unknown>;
  /** Everything else that was told, in words, for tests to look at. */
  told: string[];
}

/** A chart, with the series that it has now; those that Excel guessed have no figures that anybody told it. */
export interface HeldChart {
  readonly id: string;
  name: string;
  series: { name: string; values: string; along: string }[];
}

/** What an answer of a formula is: values from its own cell on. */
export type Answer = (formula: string, at: Place) => readonly (readonly unknown[])[];
export interface Place {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

export class OfficeError extends Error {
  constructor(
    readonly code: string,
    message: string,
  ) {
    super(message);
  }
}

export interface Spill {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
  readonly values: readonly (readonly unknown[])[];
}

export const key = (row: number, column: number): string => `${row},${column}`;

/** A formula as Excel hands it back: without quotes around a sheet's name that needs none, as words of four letters and more. */
export const asExcelSpells = (formula: string): string =>
  formula
    .split(/("(?:[^"]|"")*")/)
    .map((part, i) => (i % 2 === 0 ? part.replace(/'(\p{L}{4,})'!/gu, "$1!") : part))
    .join("");

/** A formula with what it names on a sheet told in another way; `tell` is given the sheet with its "!", and what is named there. */
const toldAnew = (formula: string, sheet: string, tell: (sheet: string, address: string) => string): string =>
  formula.includes("!")
    ? tokenize(formula)
        .map((token) => {
          const at = token.value.lastIndexOf("!") + 1;
          const named = at > 0 && isReference(token) && (parseA1Ref(token.value) as ReferenceA1 | undefined)?.context;
          return named && named.at(-1)?.toLowerCase() === sheet.toLowerCase()
            ? tell(token.value.slice(0, at), token.value.slice(at))
            : token.value;
        })
        .join("")
    : formula;

/** The workbook itself. `FakeExcel` speaks to it as Office.js does. */
export class HeldWorkbook {
  tabs: Tab[] = [];
  active = "";
  selected = { row: 0, column: 0 };
  syncs = 0;
  /** Everything asked of Excel so far, and the one that fails, if any, and everything after it for `stuck`. */
  calls = 0;
  /** What was asked in each turn. */
  readonly turns: string[][] = [[]];
  failAt: number | undefined;
  failWith = "GeneralException";
  /** What somebody else does in the same workbook before a turn. */
  beforeSync: () => void = () => undefined;
  stuck = false;
  /** The newest part of the Excel API that it has. */
  newest = 1.12;
  /** Whether the client's script knows notes: one that is older than its Excel does not. */
  hasNotes = true;
  private made = 0;

  constructor(readonly answer: Answer = () => [[0]]) {
    this.tabs.push(this.newTab("Sheet1"));
    this.active = this.tabs[0]?.id ?? "";
  }

  /** Everything that it holds now: what is answered gives it back. */
  kept(): () => void {
    const held = ({ tabs, active, selected, made }: HeldWorkbook) => structuredClone({ tabs, active, selected, made });
    const now = held(this);
    return () => {
      Object.assign(this, structuredClone(now));
      this.version++;
    };
  }

  newId(): string {
    return `{${++this.made}}`;
  }

  newTab(name: string): Tab {
    return {
      id: this.newId(),
      name,
      visibility: "Visible",
      locked: false,
      cells: new Map(),
      tables: [],
      properties: new Map(),
      charts: [],
      looks: new Map(),
      told: [],
    };
  }

  tab(name: string): Tab {
    const found = this.tabs.find((tab) => tab.name === name);
    if (!found) throw new Error(`no tab ${name}`);
    return found;
  }

  cell(tab: Tab, row: number, column: number): Cell {
    const at = key(row, column);
    let cell = tab.cells.get(at);
    if (!cell) tab.cells.set(at, (cell = { formula: "", value: "", format: "General", isText: false }));
    return cell;
  }

  /** Enters something into a cell as a keeper or a program would. */
  enter(tab: Tab, row: number, column: number, entry: unknown): void {
    this.version++;
    const cell = this.cell(tab, row, column);
    cell.isText = false;
    if (typeof entry === "string" && entry.startsWith("'")) {
      Object.assign(cell, { formula: entry.slice(1), value: entry.slice(1), isText: true });
    } else if (typeof entry === "string" && cell.format === "@") {
      Object.assign(cell, { formula: entry, value: entry, isText: true });
    } else if (typeof entry === "string" && entry.startsWith("=")) {
      const formula = asExcelSpells(entry);
      Object.assign(cell, { formula, value: this.answer(formula, { sheet: tab.name, row, column })[0]?.[0] ?? "" });
    } else if (typeof entry === "string" && /^[+\-@\t\r]|^\d{4}-\d\d-\d\d$|^0\d+$|^(true|false)$/i.test(entry)) {
      throw new Error(`Excel would take the text ${JSON.stringify(entry)} for something else`);
    } else {
      if (entry === null || entry === undefined || (typeof entry === "number" && !Number.isFinite(entry))) {
        throw new OfficeError("InvalidArgument", `a cell was given ${String(entry)}`);
      }
      Object.assign(cell, { formula: entry, value: entry });
    }
  }

  /** Puts whole rows in before a row, looking like the one above, or takes them out again; formulas follow. */
  insertRows(tab: Tab, row: number, rows: number, columns: number): void {
    if (tab.locked) throw new OfficeError("AccessDenied", "the sheet is protected");
    if (columns !== 16_384) throw new Error("only whole rows are modelled");
    this.version++;
    const before = [...tab.cells].map(([at, cell]) => [at.split(",").map(Number) as [number, number], cell] as const);
    tab.cells.clear();
    for (const [[at, column], cell] of before) {
      if (rows < 0 && at >= row && at < row - rows) continue;
      const isBelow = at >= (rows < 0 ? row - rows : row);
      tab.cells.set(key(isBelow ? at + rows : at, column), cell);
      if (at !== row - 1) continue;
      for (let i = 0; i < rows; i++) this.cell(tab, row + i, column).format = cell.format;
    }
    // Joined cells go along, and go with their rows.
    tab.told = tab.told.flatMap((one) => {
      const [, first, last] = /^[A-Z]+(\d+)(?::[A-Z]+(\d+))? merge\(/.exec(one) ?? [];
      if (first === undefined) return [one];
      const [top, bottom] = [Number(first) - 1, Number(last ?? first) - 1];
      if (rows < 0 && top >= row && bottom < row - rows) return [];
      return [one.replace(/\d+/g, (at) => String(Number(at) > row ? Number(at) + rows : Number(at)))];
    });
    const from = (rows < 0 ? row - rows : row) + 1;
    for (const other of this.tabs) {
      for (const cell of other.cells.values()) {
        if (cell.isText || typeof cell.formula !== "string" || !cell.formula.startsWith("=")) continue;
        const named = toldAnew(cell.formula, tab.name, (sheet, address) => sheet + formulaMoved(address, from, rows));
        cell.formula = other === tab ? formulaMoved(named, from, rows) : named;
      }
    }
  }

  /** Takes a sheet away: what named it names nothing. */
  delete(tab: Tab): void {
    this.version++;
    this.tabs = this.tabs.filter((one) => one !== tab);
    for (const { cells } of this.tabs) {
      for (const cell of cells.values()) {
        if (cell.isText || typeof cell.formula !== "string" || !cell.formula.startsWith("=")) continue;
        cell.formula = toldAnew(cell.formula, tab.name, (_, address) => `#REF!${address}`);
      }
    }
  }

  private readonly known = new WeakMap<
    Tab,
    { readonly version: number; readonly spills: readonly Spill[]; readonly filled: ReadonlyMap<string, Spill> }
  >();
  private version = 0;

  /** What spills; the same as long as nothing is entered, because it is asked for every cell of a range. */
  spills(tab: Tab): readonly Spill[] {
    return this.knownOf(tab).spills;
  }

  /** The spill of every cell that belongs to one, its own formula's cell too. */
  filled(tab: Tab): ReadonlyMap<string, Spill> {
    return this.knownOf(tab).filled;
  }

  /** Formulas have other answers from now on: they are asked again. */
  recalculate(): void {
    this.version++;
    for (const tab of this.tabs) {
      for (const [at, cell] of tab.cells) {
        if (cell.isText || typeof cell.formula !== "string" || !cell.formula.startsWith("=")) continue;
        const [row, column] = at.split(",").map(Number) as [number, number];
        cell.value = this.answer(cell.formula, { sheet: tab.name, row, column })[0]?.[0] ?? "";
      }
    }
  }

  private knownOf(tab: Tab) {
    const known = this.known.get(tab);
    if (known?.version === this.version) return known;
    const spills = this.spillsNow(tab);
    const filled = new Map(
      spills.flatMap((spill) =>
        spill.values.flatMap((line, i) => line.map((_, j) => [key(spill.row + i, spill.column + j), spill] as const)),
      ),
    );
    const now = { version: this.version, spills, filled };
    this.known.set(tab, now);
    return now;
  }

  /** The formulas that spill, and where to; one whose place is taken says so instead. */
  private spillsNow(tab: Tab): readonly Spill[] {
    const taken = new Set([...tab.cells].filter(([, { formula }]) => formula !== "").map(([at]) => at));
    const anchors = [...tab.cells]
      .filter(([, { isText, formula }]) => !isText && typeof formula === "string" && formula.startsWith("="))
      .map(([at, cell]) => ({ at, cell, place: at.split(",").map(Number) as [number, number] }))
      .sort((a, b) => a.place[0] - b.place[0] || a.place[1] - b.place[1]);
    return anchors.flatMap(({ at, cell, place: [row, column] }) => {
      const values = this.answer(String(cell.formula), { sheet: tab.name, row, column });
      const [rows, columns] = [values.length, values[0]?.length ?? 1];
      if (rows === 1 && columns === 1) return [];
      const filled = values
        .flatMap((line, i) => line.map((_, j) => key(row + i, column + j)))
        .filter((one) => one !== at);
      if (filled.some((one) => taken.has(one))) {
        cell.value = "#SPILL!";
        return [];
      }
      for (const one of filled) taken.add(one);
      cell.value = values[0]?.[0];
      return [{ row, column, rows, columns, values }];
    });
  }

  /** A cell as Excel tells it. */
  shown(tab: Tab, row: number, column: number): { formula: unknown; value: unknown; type: string; format: string } {
    const spills = this.filled(tab);
    const cell = tab.cells.get(key(row, column)) ?? { formula: "", value: "", format: "General", isText: false };
    const spill = spills.get(key(row, column));
    const isAnchor = spill?.row === row && spill.column === column;
    const value = spill && !isAnchor ? spill.values[row - spill.row]?.[column - spill.column] : cell.value;
    const formula = spill && !isAnchor ? value : cell.formula;
    const hasFormula = !cell.isText && typeof cell.formula === "string" && cell.formula.startsWith("=");
    const type =
      value === "" && !hasFormula && !spill
        ? "Empty"
        : typeof value === "number"
          ? "Double"
          : typeof value === "boolean"
            ? "Boolean"
            : typeof value === "string" &&
                !cell.isText &&
                /^#(N\/A|VALUE!|SPILL!|DIV\/0!|NAME\?|REF!|NUM!|BUSY!)$/.test(value)
              ? "Error"
              : "String";
    return { formula, value, type, format: cell.format };
  }

  /** The whole workbook in a form that can be compared. */
  snapshot(): unknown {
    return {
      active: this.active,
      tabs: this.tabs.map((tab) => ({
        id: tab.id,
        name: tab.name,
        visibility: tab.visibility,
        locked: tab.locked,
        tables: tab.tables,
        told: [...tab.told],
        looks: [...tab.looks],
        charts: tab.charts,
        cells: [...tab.cells]
          .filter(([, cell]) => cell.formula !== "" || cell.format !== "General")
          // What a formula answers follows from the rest, and is worked out when it is asked for.
          .map(
            ([at, cell]) =>
              [
                at,
                !cell.isText && String(cell.formula).startsWith("=") ? { ...cell, value: null } : { ...cell },
              ] as const,
          )
          .sort(([a], [b]) => (a < b ? -1 : 1)),
      })),
    };
  }
}
