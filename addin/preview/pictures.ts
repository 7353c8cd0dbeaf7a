import type { FWorksheet } from "@univerjs/sheets/lib/facade";
import { rangeOf } from "./sheetData";
import type { Engine } from "./engine";
import { pictureOf, type PictureData } from "./Picture";
import { templateOf } from "./template";

const COMPONENT = "picture";

export const registerPictures = (engine: Engine): void => {
  engine.api.registerComponent(COMPONENT, pictureOf(engine));
};

/** Where a range lies, in pixels from the corner of the headings of rows and columns. */
const frameOf = (sheet: FWorksheet, area: string) => {
  const { startRow, startColumn, endRow, endColumn } = rangeOf(area);
  const width = (until: number): number =>
    Array.from({ length: until }, (_, i) => sheet.getColumnWidth(i)).reduce((sum, one) => sum + one, 0);
  const height = (until: number): number =>
    Array.from({ length: until }, (_, i) => sheet.getRowHeight(i)).reduce((sum, one) => sum + one, 0);
  const { rowHeader, columnHeader } = sheet.getSheet().getSnapshot();
  return {
    startX: rowHeader.width + width(startColumn),
    startY: columnHeader.height + height(startRow),
    endX: rowHeader.width + width(endColumn + 1),
    endY: columnHeader.height + height(endRow + 1),
  };
};

/** Until the engine has drawn what it was told last. */
const drawn = (): Promise<void> => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 50)));

/** Puts a sheet's charts over its cells. The engine places things only on the sheet that it shows. */
export const hangPictures = async (sheet: FWorksheet): Promise<void> => {
  const template = templateOf(sheet);
  if (!template || template.charts.length === 0) return;
  sheet.getWorkbook().setActiveSheet(sheet.getSheet());
  await drawn();
  template.charts.forEach(({ area }, chart) => {
    const data: PictureData = { template: template.key, chart };
    sheet.addFloatDomToPosition({
      componentKey: COMPONENT,
      allowTransform: true,
      data,
      initPosition: frameOf(sheet, area),
    });
  });
  await drawn();
};
