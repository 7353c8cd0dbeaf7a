import { areaOf, columnLetters } from "../../taskpane/sheets/shared/address";

/**
 * A strict stand-in for Excel behind Office.js. Like the real one it only records what it is told until `sync`, and
 * then does it in order; unlike a loose one it throws at everything that the real one would punish later or silently:
 * a value read before it was loaded and synchronised, a member that is not modelled, a block of the wrong shape, a
 * sheet's name that is taken, an object of a turn that failed. Any call can be made to fail, and what stood before it
 * in the same turn stays done, as in Excel.
 *
 * Formulas are not worked out: a cell's value is what `answer` says. One that spills is told as Excel tells it.
 */

export interface Cell {
  formula: unknown;
  value: unknown;
  format: string;
  /** Entered with a leading apostrophe: text, whatever it looks like. */
  isText: boolean;
}
export interface Tab {
  id: string;
  name: string;
  visibility: string;
  locked: boolean;
  cells: Map<string, Cell>;
  properties: Map<string, string>;
  /** Everything else that was told, in words, for tests to look at. */
  told: string[];
}

/** What an answer of a formula is: values from its own cell on. */
export type Answer = (formula: string) => readonly (readonly unknown[])[];

export class OfficeError extends Error {
  constructor(
    readonly code: string,
    message: string,
  ) {
    super(message);
  }
}

interface Spill {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
  readonly values: readonly (readonly unknown[])[];
}

const key = (row: number, column: number): string => `${row},${column}`;

export class FakeExcel {
  tabs: Tab[] = [];
  active = "";
  selected = { row: 0, column: 0 };
  syncs = 0;
  /** Everything asked of Excel so far, and the one that fails, if any, and everything after it for `stuck`. */
  calls = 0;
  failAt: number | undefined;
  failWith = "GeneralException";
  /** What somebody else does in the same workbook before a turn. */
  beforeSync: () => void = () => undefined;
  stuck = false;
  /** The newest part of the Excel API that it has. */
  newest = 1.12;
  private made = 0;

  constructor(readonly answer: Answer = () => [[0]]) {
    this.tabs.push(this.newTab("Sheet1"));
    this.active = this.tabs[0]?.id ?? "";
  }

  /** The globals of a page inside Excel. */
  globals(): object {
    return {
      Excel: { run: (batch: (context: unknown) => Promise<unknown>) => this.run(batch) },
      Office: {
        context: {
          requirements: {
            isSetSupported: (set: string, version: string) =>
              set === "ExcelApi" && this.number(version) <= this.number(String(this.newest)),
          },
        },
      },
    };
  }

  private number(version: string): number {
    const [major, minor] = version.split(".").map(Number) as [number, number];
    return major * 1000 + minor;
  }

  newTab(name: string): Tab {
    return {
      id: `{${++this.made}}`,
      name,
      visibility: "Visible",
      locked: false,
      cells: new Map(),
      properties: new Map(),
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
      Object.assign(cell, { formula: entry, value: this.answer(entry)[0]?.[0] ?? "" });
    } else if (typeof entry === "string" && /^[+\-@\t\r]|^\d{4}-\d\d-\d\d$|^0\d+$|^(true|false)$/i.test(entry)) {
      throw new Error(`Excel would take the text ${JSON.stringify(entry)} for something else`);
    } else {
      if (entry === null || entry === undefined || (typeof entry === "number" && !Number.isFinite(entry))) {
        throw new OfficeError("InvalidArgument", `a cell was given ${String(entry)}`);
      }
      Object.assign(cell, { formula: entry, value: entry });
    }
  }

  private readonly known = new WeakMap<Tab, { readonly version: number; readonly spills: readonly Spill[] }>();
  private version = 0;

  /** What spills; the same as long as nothing is entered, because it is asked for every cell of a range. */
  spills(tab: Tab): readonly Spill[] {
    const known = this.known.get(tab);
    if (known?.version === this.version) return known.spills;
    const spills = this.spillsNow(tab);
    this.known.set(tab, { version: this.version, spills });
    return spills;
  }

  /** The formulas that spill, and where to; one whose place is taken says so instead. */
  private spillsNow(tab: Tab): readonly Spill[] {
    const taken = new Set([...tab.cells].filter(([, { formula }]) => formula !== "").map(([at]) => at));
    const anchors = [...tab.cells]
      .filter(([, { isText, formula }]) => !isText && typeof formula === "string" && formula.startsWith("="))
      .map(([at, cell]) => ({ at, cell, place: at.split(",").map(Number) as [number, number] }))
      .sort((a, b) => a.place[0] - b.place[0] || a.place[1] - b.place[1]);
    return anchors.flatMap(({ at, cell, place: [row, column] }) => {
      const values = this.answer(String(cell.formula));
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

  private shown(
    tab: Tab,
    row: number,
    column: number,
  ): { formula: unknown; value: unknown; type: string; format: string } {
    const spills = this.spills(tab);
    const cell = tab.cells.get(key(row, column)) ?? { formula: "", value: "", format: "General", isText: false };
    const spill = spills.find(
      (one) => row >= one.row && row < one.row + one.rows && column >= one.column && column < one.column + one.columns,
    );
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
                /^#(N\/A|VALUE!|SPILL!|DIV\/0!|NAME\?|REF!|NUM!)$/.test(value)
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
        locked: tab.locked,
        told: [...tab.told],
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

  private async run(batch: (context: unknown) => Promise<unknown>): Promise<unknown> {
    let pending: (() => void)[] = [];
    let broken = false;

    /** Counts a call, and fails it where that is asked for. */
    const count = (what: string): void => {
      this.calls++;
      if (this.failAt !== undefined && (this.stuck ? this.calls >= this.failAt : this.calls === this.failAt)) {
        throw new OfficeError(this.failWith, `call ${this.calls}, ${what}, failed`);
      }
    };
    const queue = (what: string, does: () => void): void => {
      if (broken) throw new Error(`${what} was asked of an object of a turn that failed`);
      pending.push(() => {
        count(what);
        does();
      });
    };

    /** A null object has nothing to load, and does not mind: whether it is one is known when its turn comes. */
    const forgiving = <T extends object>(name: string, members: T, isNull: () => boolean | undefined): T => {
      const loading = members as { load: (wanted: string | string[]) => void };
      const { load } = loading;
      loading.load = (wanted) => {
        queue(`${name}.load`, () => undefined);
        pending.push(() => {
          if (isNull()) return;
          const waiting = pending;
          pending = [];
          load(wanted);
          const now = pending;
          pending = waiting;
          now.forEach((does) => does());
        });
      };
      return members;
    };

    /** An object that knows the members listed, and no other. */
    const strict = <T extends object>(name: string, members: T): T =>
      new Proxy(members, {
        get: (target, member) => {
          if (typeof member === "symbol" || member === "then" || member === "toJSON") return undefined;
          if (!(member in target)) throw new Error(`${name}.${member} is not modelled`);
          return Reflect.get(target, member) as unknown;
        },
        set: (target, member, value) => {
          const settable = Object.getOwnPropertyDescriptor(target, member);
          if (!settable?.set) throw new Error(`${name}.${String(member)} is not modelled for writing`);
          settable.set.call(target, value);
          return true;
        },
      });

    /** Members that are read: they hold something once they are loaded and synchronised. */
    const loads = (name: string, values: Record<string, () => unknown>) => {
      const known = new Map<string, unknown>();
      const members: Record<string, unknown> = {
        load: (wanted: string | string[]) => {
          const names = (Array.isArray(wanted) ? wanted : wanted.split(",")).map((one) => one.trim());
          for (const one of names) if (!(one in values)) throw new Error(`${name}.${one} is not modelled`);
          queue(`${name}.load`, () => names.forEach((one) => known.set(one, (values[one] as () => unknown)())));
        },
      };
      for (const one of Object.keys(values)) {
        Object.defineProperty(members, one, {
          enumerable: true,
          configurable: true,
          get: () => {
            if (!known.has(one))
              throw new OfficeError("PropertyNotLoaded", `${name}.${one} was read before it was loaded`);
            return known.get(one);
          },
        });
      }
      return members;
    };
    /** An answer that is there once the turn is done. */
    const later = (what: string, answer: () => unknown): object => {
      let known: { readonly value: unknown } | undefined;
      queue(what, () => (known = { value: answer() }));
      return Object.defineProperty({}, "value", {
        get: () => {
          if (!known) throw new OfficeError("ValueNotLoaded", `${what} was read before sync`);
          return known.value;
        },
      });
    };
    /** Members that are only written, and told to the tab. */
    const written = (name: string, tell: (line: string) => void, members: readonly string[], more: object = {}) => {
      const object = Object.defineProperties({}, Object.getOwnPropertyDescriptors(more));
      for (const member of members) {
        Object.defineProperty(object, member, {
          get: () => {
            throw new Error(`${name}.${member} is only written`);
          },
          set: (value: unknown) =>
            queue(`${name}.${member}`, () => tell(`${name}.${member} = ${JSON.stringify(value)}`)),
        });
      }
      return strict(name, object);
    };

    interface Place {
      tab: () => Tab;
      row: () => number;
      column: () => number;
      rows: () => number;
      columns: () => number;
      isNull?: () => boolean;
    }
    const sizeOfPlace = ({ rows, columns }: Place) => `${rows()}x${columns()}`;

    const range = (place: Place): object => {
      const name = "Range";
      const where = (): string => {
        const [row, column, rows, columns] = [place.row(), place.column(), place.rows(), place.columns()];
        const first = `${columnLetters(column + 1)}${row + 1}`;
        return rows === 1 && columns === 1 ? first : `${first}:${columnLetters(column + columns)}${row + rows}`;
      };
      const tell = (line: string): void => void place.tab().told.push(`${where()} ${line}`);
      const grid = <T>(of: (row: number, column: number) => T): T[][] =>
        Array.from({ length: place.rows() }, (_, i) =>
          Array.from({ length: place.columns() }, (_, j) => of(place.row() + i, place.column() + j)),
        );
      const members = loads(name, {
        values: () => grid((i, j) => this.shown(place.tab(), i, j).value),
        formulas: () => grid((i, j) => this.shown(place.tab(), i, j).formula),
        valueTypes: () => grid((i, j) => this.shown(place.tab(), i, j).type),
        numberFormat: () => grid((i, j) => this.shown(place.tab(), i, j).format),
        hasSpill: () => {
          const inside = grid((i, j) =>
            this.spills(place.tab()).some(
              (s) => i >= s.row && i < s.row + s.rows && j >= s.column && j < s.column + s.columns,
            ),
          ).flat();
          return inside.every(Boolean) ? true : inside.some(Boolean) ? null : false;
        },
        rowIndex: () => place.row(),
        columnIndex: () => place.column(),
        rowCount: () => place.rows(),
        columnCount: () => place.columns(),
      });
      let worksheet: object | undefined;
      let isNull: boolean | undefined;
      if (place.isNull) {
        const asked = place.isNull;
        queue("Range.isNullObject", () => (isNull = asked()));
        forgiving("Range", members, () => isNull);
      }
      Object.defineProperty(members, "isNullObject", {
        get: () => {
          if (isNull === undefined)
            throw new OfficeError("PropertyNotLoaded", "Range.isNullObject was read before sync");
          return isNull;
        },
      });
      const checked = (what: string, value: unknown): unknown[][] => {
        const rows = value as unknown[][];
        const fits =
          Array.isArray(rows) &&
          rows.length === place.rows() &&
          rows.every((row) => Array.isArray(row) && row.length === place.columns());
        if (!fits)
          throw new OfficeError(
            "InvalidArgument",
            `${what} of ${where()} wants ${sizeOfPlace(place)}, got ${Array.isArray(rows) ? `${rows.length}x${rows[0]?.length}` : typeof rows}`,
          );
        return rows;
      };
      const writable = (
        member: "formulas" | "numberFormat",
        put: (row: number, column: number, value: unknown) => void,
      ): void => {
        const described = Object.getOwnPropertyDescriptor(members, member) as PropertyDescriptor;
        Object.defineProperty(members, member, {
          ...described,
          set: (value: unknown) => {
            const copy = JSON.parse(JSON.stringify(checked(member, value))) as unknown[][];
            queue(`Range.${member}`, () => {
              if (place.tab().locked) throw new OfficeError("AccessDenied", "the sheet is protected");
              copy.forEach((row, i) => row.forEach((entry, j) => put(place.row() + i, place.column() + j, entry)));
            });
          },
        });
      };
      writable("formulas", (row, column, value) => this.enter(place.tab(), row, column, value));
      writable("numberFormat", (row, column, value) => {
        if (typeof value !== "string") throw new OfficeError("InvalidArgument", "a number format is text");
        this.cell(place.tab(), row, column).format = value;
      });
      const part = (
        row: () => number,
        column: () => number,
        rows: () => number,
        columns: () => number,
        isNull?: () => boolean,
      ): object => range({ tab: place.tab, row, column, rows, columns, ...(isNull ? { isNull } : {}) });
      const spillOf = () => this.spills(place.tab()).find((s) => s.row === place.row() && s.column === place.column());
      const parentOf = () =>
        this.spills(place.tab()).find(
          (s) =>
            place.row() >= s.row &&
            place.row() < s.row + s.rows &&
            place.column() >= s.column &&
            place.column() < s.column + s.columns,
        );
      const single = (): void => {
        if (place.rows() !== 1 || place.columns() !== 1) throw new OfficeError("InvalidArgument", "one cell is wanted");
      };
      return strict(
        name,
        Object.defineProperties(
          {
            getCell: (row: number, column: number) =>
              part(
                () => place.row() + row,
                () => place.column() + column,
                () => 1,
                () => 1,
              ),
            getEntireColumn: () =>
              part(
                () => 0,
                place.column,
                () => 1_048_576,
                place.columns,
              ),
            getEntireRow: () =>
              part(
                place.row,
                () => 0,
                place.rows,
                () => 16_384,
              ),
            getSpillingToRangeOrNullObject: () => {
              single();
              return part(
                place.row,
                place.column,
                () => spillOf()?.rows ?? 1,
                () => spillOf()?.columns ?? 1,
                () => spillOf() === undefined,
              );
            },
            getSpillParentOrNullObject: () => {
              single();
              return part(
                () => parentOf()?.row ?? 0,
                () => parentOf()?.column ?? 0,
                () => 1,
                () => 1,
                () => parentOf() === undefined,
              );
            },
            getColumnProperties: () =>
              later("Range.getColumnProperties", () =>
                Array.from({ length: place.columns() }, () => ({ format: { columnWidth: 48 } })),
              ),
            getCellProperties: () =>
              later("Range.getCellProperties", () =>
                grid(() => ({
                  format: {
                    fill: { color: "#FFFFFF" },
                    font: { bold: false, color: "#000000", size: 11 },
                    wrapText: false,
                  },
                })),
              ),
            merge: (across: boolean) => queue("Range.merge", () => tell(`merge(${across})`)),
            select: () =>
              queue("Range.select", () => {
                this.selected = { row: place.row(), column: place.column() };
              }),
            get worksheet() {
              return (worksheet ??= strict("Worksheet", loads("Worksheet", { name: () => place.tab().name })));
            },
            get format() {
              return written("format", tell, ["wrapText", "verticalAlignment", "columnWidth", "rowHeight"], {
                fill: written("fill", tell, ["color"]),
                font: written("font", tell, ["bold", "size", "color"]),
                borders: strict("borders", {
                  getItem: (side: string) => written(`border ${side}`, tell, ["style", "color"]),
                }),
              });
            },
            get dataValidation() {
              return written(
                "validation",
                (line) => {
                  const rule = /^validation\.(errorAlert|prompt) = (.*)$/.exec(line);
                  const message = rule ? (JSON.parse(rule[2] as string) as { message: string }).message : "";
                  if (message.length > 255)
                    throw new OfficeError("InvalidArgument", "a message has at most 255 letters");
                  tell(line);
                },
                ["rule", "ignoreBlanks", "errorAlert", "prompt"],
              );
            },
            get conditionalFormats() {
              return strict("conditionalFormats", {
                add: (type: string) => {
                  if (type !== "Custom") throw new Error(`${type} is not modelled`);
                  queue("conditionalFormats.add", () => tell("rule added"));
                  return strict("ConditionalFormat", {
                    custom: strict("custom", {
                      rule: written("rule", tell, ["formula"]),
                      format: strict("format", {
                        fill: written("rule fill", tell, ["color"]),
                        font: written("rule font", tell, ["color", "bold"]),
                      }),
                    }),
                  });
                },
              });
            },
            /** For the fake alone: where it is. */
            where,
          },
          Object.getOwnPropertyDescriptors(members),
        ),
      );
    };

    const sheet = (find: () => Tab | undefined, maybe = false): object => {
      const tab = (): Tab => {
        const found = find();
        if (!found) throw new OfficeError("ItemNotFound", "there is no such sheet");
        return found;
      };
      const tell = (line: string): void => void tab().told.push(line);
      let isNull: boolean | undefined;
      if (maybe) queue("worksheets.getItemOrNullObject", () => (isNull = find() === undefined));
      const lenient = (members: Record<string, unknown>): Record<string, unknown> =>
        maybe ? forgiving("Worksheet", members, () => isNull) : members;
      const members = lenient(
        loads("Worksheet", { name: () => tab().name, id: () => tab().id, visibility: () => tab().visibility }),
      );
      const protection = lenient(loads("protection", { protected: () => tab().locked }));
      const at = (row: number, column: number, rows: number, columns: number): object => {
        if (
          ![row, column, rows, columns].every((n) => Number.isInteger(n)) ||
          rows < 1 ||
          columns < 1 ||
          row < 0 ||
          column < 0
        ) {
          throw new OfficeError("InvalidArgument", `no range of ${[row, column, rows, columns].join()}`);
        }
        return range({ tab, row: () => row, column: () => column, rows: () => rows, columns: () => columns });
      };
      const axis = (name: string) =>
        written(name, tell, ["tickLabelPosition"], { title: written(`${name} title`, tell, ["text"]) });
      const series = (name: string) =>
        written(`series ${name}`, tell, ["name", "chartType", "markerStyle"], {
          setValues: (values: { where(): string }) =>
            queue("series.setValues", () => tell(`series ${name} values ${values.where()}`)),
          setXAxisValues: (values: { where(): string }) =>
            queue("series.setXAxisValues", () => tell(`series ${name} along ${values.where()}`)),
          format: strict("format", {
            line: written(`series ${name} line`, tell, ["color", "lineStyle", "weight"]),
            fill: strict("fill", {
              setSolidColor: (colour: string) =>
                queue("fill.setSolidColor", () => tell(`series ${name} fill ${colour}`)),
            }),
          }),
        });
      return strict(
        "Worksheet",
        Object.defineProperties(
          {
            getRange: (address: string) => {
              const { top, left, bottom, right } = areaOf(address);
              return at(top - 1, left - 1, bottom - top + 1, right - left + 1);
            },
            getRangeByIndexes: at,
            getUsedRangeOrNullObject: (valuesOnly: boolean) => {
              const area = () => {
                const used = [...tab().cells]
                  .filter(([, cell]) => cell.formula !== "" || (!valuesOnly && cell.format !== "General"))
                  .map(([where]) => where.split(",").map(Number) as [number, number]);
                for (const s of this.spills(tab())) used.push([s.row + s.rows - 1, s.column + s.columns - 1]);
                const rows = used.map(([row]) => row);
                const columns = used.map(([, column]) => column);
                return used.length === 0
                  ? undefined
                  : {
                      top: Math.min(...rows),
                      left: Math.min(...columns),
                      bottom: Math.max(...rows),
                      right: Math.max(...columns),
                    };
              };
              return range({
                tab,
                row: () => area()?.top ?? 0,
                column: () => area()?.left ?? 0,
                rows: () => {
                  const a = area();
                  return a ? a.bottom - a.top + 1 : 1;
                },
                columns: () => {
                  const a = area();
                  return a ? a.right - a.left + 1 : 1;
                },
                isNull: () => area() === undefined,
              });
            },
            activate: () =>
              queue("Worksheet.activate", () => {
                this.active = tab().id;
              }),
            delete: () =>
              queue("Worksheet.delete", () => {
                const gone = tab();
                if (
                  this.tabs.filter(({ visibility }) => visibility === "Visible").length === 1 &&
                  gone.visibility === "Visible"
                )
                  throw new OfficeError("InvalidOperation", "a workbook keeps one visible sheet");
                const index = this.tabs.indexOf(gone);
                this.tabs.splice(index, 1);
                if (this.active === gone.id) this.active = (this.tabs[Math.max(0, index - 1)] as Tab).id;
              }),
            copy: (where: string) => {
              if (where !== "End") throw new Error(`copy to ${where} is not modelled`);
              let copied: Tab | undefined;
              queue("Worksheet.copy", () => {
                let n = 2;
                while (this.tabs.some(({ name }) => name === `${tab().name} (${n})`)) n++;
                copied = {
                  ...this.newTab(`${tab().name} (${n})`),
                  cells: new Map([...tab().cells].map(([at, cell]) => [at, { ...cell }])),
                  told: [...tab().told],
                  locked: tab().locked,
                };
                this.tabs.push(copied);
              });
              return sheet(() => copied);
            },
            get names() {
              return strict("names", {
                add: (name: string, of: { where(): string }) =>
                  queue("names.add", () => tell(`name ${name} = ${of.where()}`)),
              });
            },
            get freezePanes() {
              return strict("freezePanes", {
                freezeRows: (rows: number) => queue("freezePanes.freezeRows", () => tell(`freeze ${rows} rows`)),
                freezeColumns: (columns: number) =>
                  queue("freezePanes.freezeColumns", () => tell(`freeze ${columns} columns`)),
                freezeAt: (of: { where(): string }) =>
                  queue("freezePanes.freezeAt", () => tell(`freeze ${of.where()}`)),
              });
            },
            get notes() {
              if (outer.newest < 1.18) throw new Error("notes are newer than this Excel");
              return strict("notes", {
                add: (at: string, words: string) => queue("notes.add", () => tell(`note ${at}: ${words}`)),
              });
            },
            get charts() {
              return strict("charts", {
                add: (type: string, of: { where(): string }, by: string) => {
                  queue("charts.add", () => tell(`chart ${type} ${of.where()} ${by}`));
                  return written("chart", tell, ["name", "displayBlanksAs"], {
                    title: written("chart title", tell, ["text"]),
                    legend: written("legend", tell, ["position"]),
                    axes: strict("axes", { valueAxis: axis("value axis"), categoryAxis: axis("category axis") }),
                    series: strict("series", {
                      getItemAt: (index: number) => series(String(index)),
                      add: (name: string) => {
                        queue("series.add", () => tell(`series ${name} added`));
                        return series(name);
                      },
                    }),
                    setPosition: (from: string, to: string) =>
                      queue("chart.setPosition", () => tell(`chart at ${from}:${to}`)),
                  });
                },
              });
            },
            get customProperties() {
              return strict("customProperties", {
                add: (name: string, value: string) =>
                  queue("customProperties.add", () => tab().properties.set(name, value)),
                getItemOrNullObject: (name: string) => {
                  const found = loads("WorksheetCustomProperty", { value: () => tab().properties.get(name) });
                  let missing: boolean | undefined;
                  queue("customProperties.getItemOrNullObject", () => (missing = !tab().properties.has(name)));
                  Object.defineProperty(found, "isNullObject", { get: () => missing });
                  return strict("WorksheetCustomProperty", found);
                },
              });
            },
            get protection() {
              return strict("protection", Object.defineProperties({}, Object.getOwnPropertyDescriptors(protection)));
            },
            get isNullObject() {
              if (isNull === undefined)
                throw new OfficeError("PropertyNotLoaded", "Worksheet.isNullObject was read before sync");
              return isNull;
            },
            set showGridlines(shown: boolean) {
              queue("Worksheet.showGridlines", () => tell(`gridlines ${shown}`));
            },
          },
          Object.getOwnPropertyDescriptors(members),
        ),
      );
    };
    // eslint-disable-next-line @typescript-eslint/no-this-alias -- getters above have a `this` of their own
    const outer = this;

    let items: object[] | undefined;
    const context = strict("RequestContext", {
      application: strict("Application", {
        suspendScreenUpdatingUntilNextSync: () => queue("suspendScreenUpdatingUntilNextSync", () => undefined),
      }),
      workbook: strict("Workbook", {
        getActiveCell: () =>
          range({
            tab: () => this.tabs.find(({ id }) => id === this.active) as Tab,
            row: () => this.selected.row,
            column: () => this.selected.column,
            rows: () => 1,
            columns: () => 1,
          }),
        worksheets: strict("WorksheetCollection", {
          load: (wanted: string) => {
            const names = wanted.split(",").map((one) => one.trim().replace(/^items\//, ""));
            queue("worksheets.load", () => {
              items = this.tabs.map((tab) => {
                const values: Record<string, unknown> = { name: tab.name, id: tab.id, visibility: tab.visibility };
                const own = sheetOf(tab);
                for (const one of names) Object.defineProperty(own, one, { value: values[one] });
                return strict("Worksheet", own);
              });
            });
          },
          get items() {
            if (!items) throw new OfficeError("PropertyNotLoaded", "worksheets.items was read before it was loaded");
            return items;
          },
          add: (name: string) => {
            let added: Tab | undefined;
            queue("worksheets.add", () => {
              if (this.tabs.some((tab) => tab.name.toLowerCase() === name.toLowerCase()))
                throw new OfficeError("ItemAlreadyExists", `${name} is taken`);
              if (name.length > 31 || /[\\/?*[\]:]/.test(name))
                throw new OfficeError("InvalidArgument", `${name} is no name of a sheet`);
              added = this.newTab(name);
              this.tabs.push(added);
            });
            return sheet(() => added);
          },
          getItem: (name: string) => sheet(() => this.tabs.find((tab) => tab.name === name || tab.id === name)),
          getItemOrNullObject: (name: string) => sheet(() => this.tabs.find((tab) => tab.name === name), true),
          getActiveWorksheet: () => sheet(() => this.tabs.find(({ id }) => id === this.active)),
        }),
      }),
      sync: async () => {
        if (broken) throw new Error("a turn that failed was asked to go on");
        const now = pending;
        pending = [];
        try {
          count("sync");
          this.beforeSync();
          this.syncs++;
          // A step may put further steps in its own place.
          for (const step of now) step();
        } catch (failure) {
          broken = true;
          throw failure;
        }
        await Promise.resolve();
      },
    });
    /** A sheet of the list: what was loaded of it, and what can be done to it. */
    const sheetOf = (tab: Tab): object => ({
      delete: () => (sheet(() => (this.tabs.includes(tab) ? tab : undefined)) as { delete(): void }).delete(),
    });

    const result = await batch(context);
    // What is left over goes when the batch is done.
    if (pending.length > 0) await (context as { sync(): Promise<void> }).sync();
    return result;
  }
}
