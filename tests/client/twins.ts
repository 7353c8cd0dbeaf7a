import { excelWorkbook } from "../../addin/excel/workbook";
import { hasFunction } from "../../taskpane/actions/formulas";
import type { CellState, SheetContents, Workbook } from "../../taskpane/workbook";
import { FakeExcel, type Answer } from "../excel/fake";
import { openWorkbook } from "../preview/engine";

/**
 * A workbook beside the Excel that the platform's client speaks to. Whatever the keeper does in the one is done in the
 * other, and both have to hold the same. The functions answer late: until `settle` their cells show #BUSY!.
 */
export interface Twin {
  /** What stands behind the client. */
  readonly excel: FakeExcel;
  /** The other one. */
  readonly workbook: Workbook;
  settle(): Promise<void>;
  /** What Excel holds and what has been answered in it; what is answered gives it back. The other one stays as it is. */
  kept(): () => void;
  /** In words what Excel holds otherwise than the other; nothing where both hold the same. */
  differences(): Promise<readonly string[]>;
  close(): void;
}

const BUSY = [["#BUSY!"]] as const;

/** The formula by which the pane looks at a blank cell, and the answer over a blank that came as one. */
const isProbe = (formula: string): boolean => formula.includes("FLUCTUATION(10,");
const BLANK_AS_BLANK = [["#N/A"]] as const;

/** A copy of a sheet comes with the answers of the one that it was copied from. */
const origin = (name: string): string => name.replace(/ \(\d+\)$/, "");

/** Sheets beyond these go again, on both sides. */
export const keepOnly = async ({ excel, workbook }: Twin, names: readonly string[]): Promise<void> => {
  await workbook.remove((await workbook.sheetNames()).filter((name) => !names.includes(name)));
  excel.tabs = excel.tabs.filter(({ name }) => names.includes(name));
  excel.active = excel.tabs[0]?.id ?? "";
  await workbook.show(excel.tabs[0]?.name ?? "");
};

/**
 * The same stand-in, driven without the client: what it was told has to be the same to the letter, ornaments included.
 * Its functions answer by the text of their formulas; one of them spills.
 */
export const directTwin = (): Twin => {
  const native: Readonly<Record<string, string>> = { "=NA()": "#N/A", '=""': "", '=VALUE("?")': "#VALUE!" };
  /** The formulas that have been answered, with their places. */
  const answered = new Set<string>();
  const placed = (formula: string, { sheet, row, column }: Parameters<Answer>[1]): string =>
    `${origin(sheet)} ${row} ${column} ${formula}`;
  const late: Answer = (formula, at) => {
    if (native[formula] !== undefined) return [[native[formula]]];
    if (!hasFunction(formula)) return [[3]];
    if (isProbe(formula)) return BLANK_AS_BLANK;
    if (!answered.has(placed(formula, at))) return BUSY;
    return formula.includes("SCALEDMASS(") ? [[7], [8], [9]] : [[7]];
  };
  const excel = new FakeExcel(late);
  const other = new FakeExcel(late);
  Object.assign(globalThis, other.globals());
  const lines = (one: FakeExcel): string[] => {
    const { active, tabs } = one.snapshot() as { active: string; tabs: { name: string; told: string[]; cells: [] }[] };
    return [
      `active ${active}`,
      ...tabs.flatMap(({ name, told, cells, ...rest }) => [
        `${name} ${JSON.stringify(rest)}`,
        ...told.map((line) => `${name}: ${line}`),
        ...cells.map((cell) => `${name}: ${JSON.stringify(cell)}`),
      ]),
    ];
  };
  return {
    excel,
    workbook: excelWorkbook,
    async settle() {
      for (const { name, cells } of [...excel.tabs, ...other.tabs]) {
        for (const [at, { formula }] of cells) {
          const [row = 0, column = 0] = at.split(",").map(Number);
          answered.add(placed(String(formula), { sheet: name, row, column }));
        }
      }
      for (const one of [excel, other]) one.recalculate();
    },
    kept() {
      const back = excel.kept();
      const before = [...answered];
      return () => {
        back();
        answered.clear();
        for (const one of before) answered.add(one);
        excel.recalculate();
      };
    },
    async differences() {
      const [own, theirs] = [lines(excel), lines(other)];
      return Array.from({ length: Math.max(own.length, theirs.length) }, (_, i) =>
        own[i] === theirs[i] ? [] : [`${own[i]}; without the client: ${theirs[i]}`],
      ).flat();
    },
    close: () => undefined,
  };
};

const plain = ({ value }: CellState): unknown =>
  typeof value === "object" && value !== null ? value.error : (value ?? "");

/** The preview's headless workbook: what the same cell of it answers to the same formula is what Excel's cell shows. */
export const previewTwin = (): Twin => {
  const { workbook, close } = openWorkbook();
  let known = new Map<string, readonly (readonly CellState[])[]>();
  /** How many rows and columns each formula fills, by its sheet and place. */
  let sizes = new Map<string, { rows: number; columns: number }>();

  const answer: Answer = (formula, { sheet: name, row, column }) => {
    if (isProbe(formula)) return BLANK_AS_BLANK;
    const sheet = known.has(name) ? name : origin(name);
    const cells = known.get(sheet);
    if (!cells || cells[row]?.[column]?.formula !== formula) return BUSY;
    const { rows, columns } = sizes.get(`${sheet} ${row} ${column}`) ?? { rows: 1, columns: 1 };
    return Array.from({ length: rows }, (_, i) =>
      Array.from({ length: columns }, (_, j) => plain(cells[row + i]?.[column + j] ?? { value: null })),
    );
  };
  const excel = new FakeExcel(answer);

  return {
    excel,
    workbook,
    close,
    async settle() {
      const contents = await workbook.read();
      known = new Map(contents.map(({ name, cells }) => [name, cells]));
      sizes = new Map();
      for (const { name, cells } of contents) {
        for (const [row, line] of cells.entries()) {
          for (const [column, { spilledFrom: from }] of line.entries()) {
            if (!from) continue;
            const key = `${name} ${from.row} ${from.column}`;
            const { rows, columns } = sizes.get(key) ?? { rows: 1, columns: 1 };
            sizes.set(key, {
              rows: Math.max(rows, row - from.row + 1),
              columns: Math.max(columns, column - from.column + 1),
            });
          }
        }
      }
      excel.recalculate();
    },
    kept: () => excel.kept(),
    async differences() {
      Object.assign(globalThis, excel.globals());
      const [ours, theirs] = [await excelWorkbook.read(), await workbook.read()];
      const names = (all: readonly SheetContents[]): string => all.map(({ name }) => name).join(", ");
      if (names(ours) !== names(theirs)) return [`sheets: ${names(ours)}; the preview: ${names(theirs)}`];
      return ours.flatMap(({ name, cells }, i) => {
        const others = theirs[i]?.cells ?? [];
        return Array.from({ length: Math.max(cells.length, others.length) }, (_, row) =>
          Array.from({ length: Math.max(cells[row]?.length ?? 0, others[row]?.length ?? 0) }, (_, column) => {
            const [own, other] = [told(cells[row]?.[column]), told(others[row]?.[column])];
            return own === other ? [] : [`${name} R${row + 1}C${column + 1}: ${own}; the preview: ${other}`];
          }),
        ).flat(2);
      });
    },
  };
};

const told = (state: CellState = { value: null }): string => {
  const { formula, value, format, spilledFrom } = state;
  const blank = value === null || (value === "" && formula === undefined && !spilledFrom);
  return JSON.stringify([formula ?? "", blank ? null : value, format ?? "General", spilledFrom ?? null]);
};
