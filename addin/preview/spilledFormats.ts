import { InterceptorEffectEnum, type ICellDataForSheetInterceptor } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import { INTERCEPTOR_POINT, SheetInterceptorService } from "@univerjs/sheets";
import type { Engine } from "./engine";

/** After the engine has put a spilled value into its cell, which is at 100, and before it words numbers, which is at 10. */
const BETWEEN = 50;

/**
 * Shows spilled dates as dates. The engine keeps the number format of each spilled value and draws only that of the
 * first: this hands the others on, for cells that have no format of their own.
 */
export const drawSpilledFormats = ({ univer }: Engine): void => {
  const injector = univer.__getInjector();
  const model = injector.get(FormulaDataModel);
  injector.get(SheetInterceptorService).intercept(INTERCEPTOR_POINT.CELL_CONTENT, {
    priority: BETWEEN,
    effect: InterceptorEffectEnum.Value | InterceptorEffectEnum.Style,
    handler: (cell, { unitId, subUnitId, row, col, workbook, rawData }, next) => {
      const spilled = model.getArrayFormulaCellData()[unitId]?.[subUnitId]?.[row]?.[col]?.s;
      if (!cell || typeof spilled !== "object" || !spilled?.n) return next(cell);
      const own = workbook.getStyles().getStyleByCell(cell) ?? {};
      if (own.n) return next(cell);
      const drawn: ICellDataForSheetInterceptor = cell === rawData ? { ...cell } : cell;
      drawn.s = { ...own, n: spilled.n };
      return next(drawn);
    },
  });
};
