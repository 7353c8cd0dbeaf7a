import { BooleanNumber, WrapStrategy, type IRange, type IRowData, type IStyleData } from "@univerjs/core";
import { CFSubRuleType, CFRuleType, ConditionalFormattingRuleModel } from "@univerjs/sheets-conditional-formatting";
import { SheetDataValidationModel } from "@univerjs/sheets-data-validation";
import { SheetsNoteModel } from "@univerjs/sheets-note";
import type { FWorkbook, FWorksheet } from "@univerjs/sheets/lib/facade";
import { isoOf, serialOfIso } from "../../functions/dates";
import { markOf } from "../../taskpane/sheets/mark";
import { lookTold, type CellLook } from "../../taskpane/sheets/look";
import { addressOf, isFixed } from "../../taskpane/sheets/shared/address";
import type { Validation } from "../../taskpane/sheets/sheet";
import { spillsIn, type FileCell, type FileRule, type FileSheet, type Page } from "../file/book";
import { printed } from "../file/printed";
import type { Engine } from "./engine";
import { cellsOf } from "./readCells";
import { FONT_SIZE, widthOfPixels } from "./sheetData";
import { templateOf } from "./template";

const addressOfRange = ({ startRow, startColumn, endRow, endColumn }: IRange): string =>
  addressOf({ top: startRow + 1, left: startColumn + 1, bottom: endRow + 1, right: endColumn + 1 });

const colourOf = (colour: IStyleData["bg"]): string | undefined => {
  const rgb = colour?.rgb;
  if (!rgb) return undefined;
  if (/^#[0-9a-f]{6}$/i.test(rgb)) return rgb;
  const parts = /^rgba?\(\s*(\d+)\s*,\s*(\d+)\s*,\s*(\d+)/.exec(rgb)?.slice(1, 4);
  return parts && `#${parts.map((part) => Number(part).toString(16).padStart(2, "0")).join("")}`;
};

const dressOf = ({ bl, fs, cl, bg, bd, tb }: IStyleData): CellLook | undefined => {
  const edge = bd?.b ?? bd?.t;
  return lookTold(
    {
      bold: bl === BooleanNumber.TRUE,
      size: fs,
      colour: colourOf(cl),
      fill: colourOf(bg),
      frame: edge ? (bd?.t && bd.l && bd.r ? "box" : "below") : undefined,
      frameColour: colourOf(edge?.cl),
      wraps: tb === WrapStrategy.WRAP,
    },
    { size: FONT_SIZE },
  );
};

/** A limit, which the engine keeps as a serial number or as a date in words. */
const isoLimit = (limit: string | undefined): string | undefined => {
  const text = limit?.trim().slice(0, "2026-01-01".length).replaceAll("/", "-") ?? "";
  if (serialOfIso(text) !== undefined) return text;
  return text !== "" && Number.isFinite(Number(text)) ? isoOf(Number(text)) : undefined;
};

const validationOf = (engine: Engine, unit: string, sheet: string): Validation[] =>
  engine.univer
    .__getInjector()
    .get(SheetDataValidationModel)
    .getRules(unit, sheet)
    .flatMap(({ type, ranges, formula1, formula2, error = "" }): Validation[] =>
      ranges.flatMap((range): Validation[] => {
        const common = { range: addressOfRange(range), message: error };
        const [least, most] = [Number(formula1), Number(formula2)];
        const bounded =
          formula1 !== undefined && formula2 !== undefined && Number.isFinite(least) && Number.isFinite(most);
        switch (type) {
          case "decimal":
            return bounded ? [{ ...common, kind: "number", least, most }] : [];
          case "whole":
            return bounded ? [{ ...common, kind: "whole", least, most }] : [];
          case "date": {
            const [from, until] = [isoLimit(formula1), isoLimit(formula2)];
            return from && until ? [{ ...common, kind: "date", least: from, most: until }] : [];
          }
          case "list":
            if (!formula1) return [];
            if (!formula1.startsWith("=")) return [{ ...common, kind: "list", words: formula1.split(",") }];
            return isFixed(formula1.slice(1)) ? [{ ...common, kind: "cells", cells: formula1.slice(1) }] : [];
          default:
            return [];
        }
      }),
    );

const rulesOf = (engine: Engine, unit: string, sheet: string): FileRule[] =>
  (engine.univer.__getInjector().get(ConditionalFormattingRuleModel).getSubunitRules(unit, sheet) ?? []).flatMap(
    ({ ranges, rule }): FileRule[] => {
      if (rule.type !== CFRuleType.highlightCell || !("subType" in rule) || rule.subType !== CFSubRuleType.formula)
        return [];
      const [fill, colour] = [colourOf(rule.style.bg), colourOf(rule.style.cl)];
      return [
        {
          ranges: ranges.map(addressOfRange),
          when: rule.value,
          ...(fill === undefined ? {} : { fill }),
          ...(colour === undefined ? {} : { colour }),
          ...(rule.style.bl === BooleanNumber.TRUE ? { bold: true } : {}),
        },
      ];
    },
  );

const POINTS = 0.75; // a pixel

/** A sheet of the workbook as it stands, for a file. */
export const fileSheetOf = (engine: Engine, book: FWorkbook, sheet: FWorksheet): FileSheet => {
  const [unit, id, name] = [book.getId(), sheet.getSheetId(), sheet.getSheetName()];
  const snapshot = sheet.getSheet().getSnapshot();
  const styles = sheet.getWorkbook().getStyles();
  const matrix = sheet.getSheet().getCellMatrix();

  const states = cellsOf(sheet);
  const spills = spillsIn(states);
  const cells: FileCell[][] = [];
  const put = (row: number, column: number, cell: FileCell): void => {
    (cells[row] ??= [])[column] = cell;
  };
  matrix.forValue((row, column, cell) => {
    const look = cell && dressOf(styles.getStyleByCell(cell) ?? {});
    const format = cell && styles.getStyleByCell(cell)?.n?.pattern;
    const link: unknown = cell?.custom?.link;
    if (look || format || typeof link === "string") {
      put(row, column, {
        value: null,
        ...(look ? { look } : {}),
        ...(format ? { format } : {}),
        ...(typeof link === "string" ? { link } : {}),
      });
    }
  });
  states.forEach((line, row) =>
    line.forEach(({ value, formula, format }, column) => {
      if (value === null && formula === undefined) return;
      const filled = spills.get(`${row},${column}`);
      put(row, column, {
        ...cells[row]?.[column],
        value,
        ...(formula === undefined ? {} : { formula }),
        ...(filled ? { spills: filled } : {}),
        ...(format === undefined ? {} : { format }),
      });
    }),
  );

  const columns = Object.keys(snapshot.columnData).reduce((most, column) => Math.max(most, Number(column) + 1), 0);
  const template = templateOf(sheet);
  const given = sheet.getSheet().getCustomMetadata()?.page as Page | undefined;
  const page = given ?? (template && printed(template));
  const hiddenIn = (data: object): number[] =>
    Object.entries(data as Record<string, { readonly hd?: BooleanNumber } | undefined>).flatMap(([index, one]) =>
      one?.hd === BooleanNumber.TRUE ? [Number(index) + 1] : [],
    );
  const notes = engine.univer.__getInjector().get(SheetsNoteModel).getSheetNotes(unit, id);
  return {
    name,
    hidden: sheet.isSheetHidden(),
    cells: Array.from<readonly (FileCell | undefined)[] | undefined, FileCell[]>(cells, (line) =>
      Array.from(line ?? [], (cell) => cell ?? { value: null }),
    ),
    widths: Array.from({ length: columns }, (_, i) => {
      const pixels = snapshot.columnData[i]?.w;
      return pixels === undefined ? undefined : widthOfPixels(pixels);
    }),
    heights: Object.entries(snapshot.rowData as Record<string, Partial<IRowData> | undefined>).flatMap(([row, data]) =>
      data?.h === undefined || data.ia !== BooleanNumber.FALSE
        ? []
        : [{ row: Number(row) + 1, points: data.h * POINTS }],
    ),
    merges: sheet.getSheet().getMergeData().map(addressOfRange),
    freeze: { rows: snapshot.freeze.ySplit, columns: snapshot.freeze.xSplit },
    validation: validationOf(engine, unit, id),
    rules: rulesOf(engine, unit, id),
    notes: [...(notes?.values() ?? [])].map(({ row, col, note }) => ({
      at: addressOf({ top: row + 1, left: col + 1, bottom: row + 1, right: col + 1 }),
      text: note,
    })),
    names: book.getDefinedNames().flatMap((one) => {
      const found = /^(?:'((?:[^']|'')+)'|([^'!]+))!(\$?[A-Z]+\$?\d+(?::\$?[A-Z]+\$?\d+)?)$/i.exec(
        one.getFormulaOrRefString(),
      );
      const on = found?.[1]?.replaceAll("''", "'") ?? found?.[2];
      return on === name && found?.[3] ? [{ name: one.getName(), range: found[3].replaceAll("$", "") }] : [];
    }),
    charts: template?.charts ?? [],
    hiddenRows: hiddenIn(snapshot.rowData),
    hiddenColumns: hiddenIn(snapshot.columnData),
    ...(template ? { template: markOf(template) } : {}),
    ...(page ? { page } : {}),
  };
};
