import { LocaleType, type ICellData, type IWorkbookData } from "@univerjs/core";
import { evaluate } from "../../addin/boundary/evaluate";
import { startHeadless } from "../../addin/preview/headless";
import { PreviewWorkbook } from "../../addin/preview/workbook";
import { catalogue } from "../../functions/catalogue";
import { serialOfIso } from "../../functions/dates";
import type { Example, Value } from "../../functions/define";
import { answersOf } from "../../taskpane/uses/answersOf";
import type { UseCell } from "../../taskpane/uses/grid";
import { usesOf } from "../../taskpane/uses/usesOf";
import type { CellState } from "../../taskpane/workbook";

/** Every use of every function stands on a sheet of its own, and is worked out by the preview's engine at once. */
const all = catalogue.flatMap((definition) => usesOf(definition).map((use) => ({ definition, use })));
const named = all.map((one, i) => [`${i} ${one.definition.name}: ${one.use.title}`, `S${i}`, one] as const);

const dataOf = (cell: UseCell): ICellData => {
  if (cell === null) return {};
  return { v: typeof cell === "object" ? (serialOfIso(cell.day) ?? 0) : cell };
};

let sheets: ReadonlyMap<string, readonly (readonly CellState[])[]>;
let close = (): void => undefined;
/** How many cells are shown without a workbook. */
let shown = 0;

beforeAll(async () => {
  const data: Partial<IWorkbookData> = {
    id: "uses",
    locale: LocaleType.EN_US,
    sheetOrder: named.map(([, id]) => id),
    sheets: Object.fromEntries(
      named.map(([, id, { use }]) => {
        const cellData: Record<number, Record<number, ICellData>> = {};
        for (const [row, line] of use.cells.entries()) {
          for (const [column, cell] of line.entries()) (cellData[row] ??= {})[column] = dataOf(cell);
        }
        for (const { row, column, formula } of use.formulas) (cellData[row] ??= {})[column] = { f: formula };
        return [id, { id, name: id, rowCount: 400, columnCount: 40, cellData }];
      }),
    ),
  };
  const engine = startHeadless(catalogue, data);
  close = () => engine.univer.dispose();
  engine.api.getFormula().executeCalculation();
  await engine.settle();
  sheets = new Map((await new PreviewWorkbook(engine).read()).map(({ name, cells }) => [name, cells]));
}, 60_000);
afterAll(() => close());

/** The rows of the first example's answer; a list stands in a column, as its sample does. */
const rowsOf = ({ gives }: Example, shape: string): readonly (readonly Value[])[] => {
  if (!Array.isArray(gives)) return [[gives as Value]];
  const rows = gives as readonly (readonly Value[])[];
  return shape === "list" ? rows.flat().map((value) => [value]) : rows;
};

test("every function has a use on columns of a keeper's own, and no formula holds a figure or an array", () => {
  expect(new Set(all.map(({ definition }) => definition.name)).size).toBe(catalogue.length);
  expect(all.filter(({ use }) => use.formulas[0]?.formula.includes("FILTER(")).length).toBeGreaterThan(4);
  const written = all.flatMap(({ use }) => use.formulas.map(({ formula }) => formula));
  expect(written.filter((formula) => /[{}]|[(,]-?\d|,,|,\)/.test(formula))).toEqual([]);
});

test.each(named)("%s answers what its example does, and nothing beyond its cells", (_, id, { definition, use }) => {
  const cells = sheets.get(id) ?? [];
  const { row, column, rows, columns } = use.answers;
  const [example] = definition.examples;
  const expected = rowsOf(example, definition.result.shape);
  for (let i = 0; i < rows; i++) {
    for (let j = 0; j < columns; j++) {
      const value = cells[row + i]?.[column + j]?.value;
      expect([i, j, typeof value === "object" && value !== null ? value.error : ""]).toEqual([i, j, ""]);
      const wanted = expected[i]?.[j];
      if (wanted === undefined) continue;
      const serial = typeof wanted === "string" ? serialOfIso(wanted) : undefined;
      if (typeof wanted === "number") expect(Math.abs((value as number) - wanted)).toBeLessThanOrEqual(example.within);
      else expect(value ?? "").toBe(serial !== undefined && typeof value === "number" ? serial : wanted);
    }
  }
  // What is shown of it without a workbook is what the workbook shows.
  for (const [i, line] of answersOf(definition, use, evaluate).entries()) {
    for (const [j, told] of line.entries()) {
      if (told === undefined) continue;
      const value = cells[row + i]?.[column + j]?.value ?? "";
      const serial = typeof told === "string" && typeof value === "number" ? serialOfIso(told) : undefined;
      if (typeof told === "number" || serial !== undefined) expect(value).toBeCloseTo(serial ?? (told as number), 9);
      else expect(value).toBe(told);
      shown++;
    }
  }
  const spilled = cells.flatMap((line, i) => line.flatMap((cell, j) => (cell.spilledFrom ? [[i, j] as const] : [])));
  const outside = spilled.filter(([i, j]) => i < row || i >= row + rows || j < column || j >= column + columns);
  expect(outside).toEqual([]);
});

test("most cells of a sample are known without a workbook", () => {
  const cells = all.reduce((sum, { use: { answers } }) => sum + answers.rows * answers.columns, 0);
  expect(shown).toBeGreaterThan(0.7 * cells);
});
