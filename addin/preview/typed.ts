import {
  CellValueType,
  InterceptorEffectEnum,
  type ICellData,
  type ICellDataForSheetInterceptor,
  type Nullable,
} from "@univerjs/core";
import { AFTER_CELL_EDIT, BEFORE_CELL_EDIT, INTERCEPTOR_POINT, SheetInterceptorService } from "@univerjs/sheets";
import { getFormatInfo } from "numfmt";
import { isoOf } from "../../functions/dates";
import { misfitWords } from "../../taskpane/text/misfit";
import type { Engine } from "./engine";
import { mannerNow } from "./manner";

/** Before the engine's own handlers, which are at 0. */
const FIRST = 100;

/** In the corner of a cell that holds what the manner cannot mean; the same colour as a warning of the pane. */
const MARK = { tr: { size: 6, color: "#b4590b" } };

/** Why a cell's text is no date or figure, where it looks like one. */
export const misfitOf = (cell: Nullable<ICellData>): string | undefined =>
  cell && typeof cell.v === "string" && !cell.f && !cell.si && cell.t !== CellValueType.NUMBER
    ? misfitWords(cell.v, mannerNow())
    : undefined;

/**
 * What is typed is read in the keeper's manner or stays text with a mark; what is edited again is shown in a form that
 * reads back as the same, whatever the format of its cell.
 */
export const readAsTyped = ({ univer }: Engine): void => {
  const interceptors = univer.__getInjector().get(SheetInterceptorService);
  interceptors.writeCellInterceptor.intercept(AFTER_CELL_EDIT, {
    priority: FIRST,
    handler: (cell, _, next) =>
      next(misfitOf(cell) === undefined ? cell : { ...cell, t: CellValueType.FORCE_STRING, p: null }),
  });
  interceptors.writeCellInterceptor.intercept(BEFORE_CELL_EDIT, {
    priority: FIRST,
    handler: (cell, { worksheet, workbook, row, col }, next) => {
      const raw = worksheet.getCellRaw(row, col);
      if (!cell || !raw || raw.f || raw.si || raw.t !== CellValueType.NUMBER) return next(cell);
      const value = Number(raw.v);
      const pattern = workbook.getStyles().getStyleByCell(raw)?.n?.pattern;
      const info = pattern ? getFormatInfo(pattern) : undefined;
      if (info?.isDate && value >= 1) return { ...cell, v: isoOf(value).replace("T", " "), t: CellValueType.STRING };
      if (info?.isDate || info?.isPercent) return next(cell);
      return { ...cell, v: String(value).replace(".", mannerNow().decimal), t: CellValueType.STRING };
    },
  });
  interceptors.intercept(INTERCEPTOR_POINT.CELL_CONTENT, {
    priority: 10,
    effect: InterceptorEffectEnum.Style,
    handler: (cell, { rawData }, next) => {
      if (!cell || misfitOf(rawData) === undefined) return next(cell);
      const drawn: ICellDataForSheetInterceptor = cell === rawData ? { ...cell } : cell;
      drawn.markers = { ...drawn.markers, ...MARK };
      return next(drawn);
    },
  });
};
