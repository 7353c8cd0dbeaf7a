import type { Workbook } from "../../taskpane/workbook";
import { CELLS_AT_ONCE } from "./contents";
import { failed } from "./failure";
import { pointsOfWidth } from "./insert";

const SIDES = ["top", "bottom", "left", "right"] as const;
const WANTED = {
  format: {
    fill: { color: true },
    font: { name: true, size: true, color: true, bold: true, italic: true, underline: true },
    borders: { style: true, color: true, weight: true },
    horizontalAlignment: true,
    verticalAlignment: true,
    wrapText: true,
  },
};

/** What somebody has set: Excel tells white of a cell without a fill, and a white one would hide the grid. */
const setOf = ({ format }: Excel.CellProperties): Excel.SettableCellProperties => {
  const { fill, borders, ...rest } = format ?? {};
  const drawn = SIDES.filter((side) => (borders?.[side]?.style ?? "None") !== "None");
  return {
    format: {
      ...rest,
      ...(fill?.color && fill.color.toUpperCase() !== "#FFFFFF" ? { fill: { color: fill.color } } : {}),
      ...(drawn.length > 0 ? { borders: Object.fromEntries(drawn.map((side) => [side, borders?.[side]])) } : {}),
    },
  };
};

/** Not by copying the formats, which would bring colour rules and joined cells with them. */
export const takeLook: NonNullable<Workbook["takeLook"]> = async ({
  sheet: name,
  row,
  column,
  rows,
  like,
  characters,
}) => {
  try {
    await Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem(name);
      for (let first = row; first < row + rows; first += CELLS_AT_ONCE) {
        const count = Math.min(CELLS_AT_ONCE, row + rows - first);
        const looks = sheet.getRangeByIndexes(first, like, count, 1).getCellProperties(WANTED);
        await context.sync();
        sheet.getRangeByIndexes(first, column, count, 1).setCellProperties(looks.value.map((line) => line.map(setOf)));
      }
      const own = sheet.getRangeByIndexes(row, column, 1, 1);
      const [wide] = [own.getColumnProperties({ format: { columnWidth: true } })];
      await context.sync();
      const wanted = pointsOfWidth(characters);
      if ((wide.value[0]?.format?.columnWidth ?? 0) < wanted) own.getEntireColumn().format.columnWidth = wanted;
      await context.sync();
    });
  } catch (failure) {
    throw failed("take the look of the column beside it", failure);
  }
};
