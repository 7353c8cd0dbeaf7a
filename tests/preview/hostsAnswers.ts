import { spills, blockOf } from "../../taskpane/actions/freeze";
import { cellName } from "../../taskpane/actions/place";
import type { CellState, SheetContents, Workbook } from "../../taskpane/workbook";
import { asExcelSpells, type Answer, type FakeExcel } from "../excel/fake";

/** A formula as both programs have it: Excel drops quotes, and keeps what stood on a sheet that is gone. */
export const inBoth = (formula: string): string =>
  asExcelSpells(formula).replace(/#REF!\$?[A-Z]{1,3}\$?\d+(:\$?[A-Z]{1,3}\$?\d+)?/g, "#REF!");

const placeOf = (sheet: string, row: number, column: number, formula: string): string =>
  `${sheet}!${cellName(row, column)}${inBoth(formula)}`;
const toldOf = ({ value }: CellState): unknown =>
  typeof value === "object" && value !== null ? value.error : (value ?? "");

const asExcelTells = ({ words: _, formula, ...state }: CellState): CellState =>
  formula === undefined ? state : { ...state, formula: asExcelSpells(formula) };

/**
 * The stand-in for Excel works nothing out. Here it answers what the preview answers for the same formula in the same cell,
 * at the same moment: each time that the preview's workbook is read, what stands there is kept, and told to the stand-in when
 * its workbook is read for the same time. So the figures of both are the preview's, and no test of one another; what is
 * tested is what the hosts make of them. Whether the figures are right other tests ask.
 */
export class SameAnswers {
  private readonly known = new Map<string, readonly (readonly unknown[])[]>();
  private waiting: (readonly SheetContents[])[] = [];

  readonly answer: Answer = (formula, { sheet, row, column }) =>
    this.known.get(placeOf(sheet, row, column, formula)) ?? [[0]];

  /** The preview, whose every reading is kept. What it says of an error Excel would not know, and its quotes. */
  asked(preview: Workbook): Workbook {
    return Object.assign(Object.create(preview) as Workbook, {
      read: async (names?: readonly string[]) => {
        const sheets = (await preview.read(names)).map((sheet) => ({
          ...sheet,
          cells: sheet.cells.map((line) => line.map(asExcelTells)),
        }));
        this.waiting.push(sheets);
        return sheets;
      },
    });
  }

  /** Excel, which has worked out the same before each reading. */
  answering(workbook: Workbook, excel: FakeExcel): Workbook {
    return {
      ...workbook,
      read: (names?: readonly string[]) => {
        const sheets = this.waiting.shift();
        if (!sheets) throw new Error("Excel is read where the preview is not");
        this.learn(sheets);
        excel.recalculate();
        return workbook.read(names);
      },
    };
  }

  /** Forgets what Excel has not asked for; answers how many readings that were. */
  rest(): number {
    const { length } = this.waiting;
    this.waiting = [];
    return length;
  }

  private learn(sheets: readonly SheetContents[]): void {
    for (const sheet of sheets) {
      const areas = spills(sheet);
      sheet.cells.forEach((line, row) =>
        line.forEach((state, column) => {
          if (state.formula === undefined) return;
          const area = areas.get(cellName(row, column));
          const told = area ? blockOf(sheet, area).map((one) => one.map(toldOf)) : [[toldOf(state)]];
          this.known.set(placeOf(sheet.name, row, column, state.formula), told);
        }),
      );
    }
  }
}
