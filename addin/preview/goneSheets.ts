import { SheetRenderController } from "@univerjs/sheets-ui";
import { gone } from "./patches";

interface Drawing {
  readonly _sheetSkeletonManagerService: { getCurrentParam(): object | undefined };
  _rangeToBounds(ranges: readonly object[]): readonly object[];
}

/**
 * Nothing is drawn anew of a sheet that is gone. An undo that takes away the sheet which is shown goes on to take back
 * what was written elsewhere, before another sheet is shown: the engine asks then where on the sheet that is gone those
 * cells stand, and fails. A new version of the engine that has no such member fails here at once.
 */
export const drawNoGoneSheet = (): void => {
  const drawing = SheetRenderController.prototype as unknown as Drawing;
  // eslint-disable-next-line @typescript-eslint/unbound-method -- called with the drawing that it belongs to
  const own = drawing._rangeToBounds as Drawing["_rangeToBounds"] | undefined;
  if (typeof own !== "function")
    throw gone("_rangeToBounds", "an undo of an insert would fail in the middle of drawing");
  drawing._rangeToBounds = function (this: Drawing, ranges) {
    return this._sheetSkeletonManagerService.getCurrentParam() ? own.call(this, ranges) : [];
  };
};
