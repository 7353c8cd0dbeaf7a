import { CellValueType, InterceptorEffectEnum } from "@univerjs/core";
import { INTERCEPTOR_POINT, SheetInterceptorService } from "@univerjs/sheets";
import { getFormatInfo } from "numfmt";
import type { Engine } from "./engine";
import { mannerNow } from "./manner";

/** After the engine has worded the numbers that have a format, which is at 10. */
const AFTER_FORMATS = 5;

/** An answer without a format, to four decimals, or four digits below 1: 21.3333333333 says no more than 21.3333. */
export const shortFigure = (value: number): string => {
  if (Number.isInteger(value)) return String(value);
  return String(Math.abs(value) >= 1 ? Math.round(value * 1e4) / 1e4 : Number(value.toPrecision(4)));
};

const otherMark = (text: string): string => text.replace(/[.,]/g, (mark) => (mark === "." ? "," : "."));

/**
 * Draws answers that have no number format without the decimals that mean nothing, and every figure with the keeper's
 * decimal mark. What the cell holds stays as it is.
 */
export const drawFigures = ({ univer }: Engine): void => {
  univer
    .__getInjector()
    .get(SheetInterceptorService)
    .intercept(INTERCEPTOR_POINT.CELL_CONTENT, {
      priority: AFTER_FORMATS,
      effect: InterceptorEffectEnum.Value,
      handler: (cell, { rawData, workbook }, next) => {
        if (!cell || cell.t !== CellValueType.NUMBER || cell.v === null || cell.v === undefined) return next(cell);
        const comma = mannerNow().decimal === ",";
        const typed = rawData !== null && rawData !== undefined && !rawData.f && !rawData.si && rawData.v === cell.v;
        const pattern = workbook.getStyles().getStyleByCell(cell)?.n?.pattern;
        if (!pattern) {
          if (typed && !comma) return next(cell);
          const text = typed ? String(cell.v) : shortFigure(Number(cell.v));
          return next({ ...cell, v: comma ? text.replace(".", ",") : text });
        }
        if (!comma || getFormatInfo(pattern).isDate) return next(cell);
        return next({ ...cell, v: otherMark(String(cell.v)) });
      },
    });
};
