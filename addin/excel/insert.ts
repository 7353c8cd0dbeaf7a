import { markOf } from "../../taskpane/sheets/mark";
import { lookOf, type CellLook } from "../../taskpane/sheets/look";
import { addressOf, areaOf, block as blockAddress } from "../../taskpane/sheets/shared/address";
import { areaOfBlock } from "../../taskpane/sheets/shared/part";
import { formats, type Content, type Sheet } from "../../taskpane/sheets/sheet";
import { asText, type Entry } from "./entry";

const LETTER = 7; // px, a digit of Excel's default font
const PADDING = 5; // px, left and right of a cell's text together
const POINTS_PER_PIXEL = 0.75;
const LINE = 15; // points, a row of one line
const TALLEST = 409; // points, the most that Excel gives a row

/** A column's width in points, from characters of the default font. */
export const pointsOfWidth = (characters: number): number => (characters * LETTER + PADDING) * POINTS_PER_PIXEL;
export const widthOfPoints = (points: number): number =>
  Math.round(((points / POINTS_PER_PIXEL - PADDING) / LETTER) * 10) / 10;
export const pointsOfLines = (lines: number): number => Math.min(lines * LINE, TALLEST);

const entry = (content: Content | undefined): Entry =>
  content === null || content === undefined
    ? ""
    : typeof content === "string" && !content.startsWith("=")
      ? asText(content)
      : content;

const filled = <T>(address: string, value: T): T[][] => {
  const { top, bottom, left, right } = areaOf(address);
  return Array.from({ length: bottom - top + 1 }, () => Array.from({ length: right - left + 1 }, () => value));
};

/** Every cell of the range gets the frame: the edges between cells belong to it. */
const frame = (range: Excel.Range, address: string, edges: NonNullable<CellLook["frame"]>, colour: string): void => {
  const { top, bottom, left, right } = areaOf(address);
  const inner = bottom > top ? (["InsideHorizontal"] as const) : [];
  const sides =
    edges === "below"
      ? (["EdgeBottom", ...inner] as const)
      : ([
          "EdgeTop",
          "EdgeBottom",
          "EdgeLeft",
          "EdgeRight",
          ...inner,
          ...(right > left ? (["InsideVertical"] as const) : []),
        ] as const);
  for (const side of sides) {
    const border = range.format.borders.getItem(side);
    border.style = "Continuous";
    border.color = colour;
  }
};

export const dress = (range: Excel.Range, address: string, look: CellLook): void => {
  const { format } = range;
  if (look.bold !== undefined) format.font.bold = look.bold;
  if (look.size !== undefined) format.font.size = look.size;
  if (look.colour !== undefined) format.font.color = look.colour;
  if (look.fill !== undefined) format.fill.color = look.fill;
  if (look.wraps) {
    format.wrapText = true;
    format.verticalAlignment = "Top";
  }
  if (look.frame) frame(range, address, look.frame, look.frameColour ?? "#000000");
};

/** The name under which a sheet remembers what it was made from. */
export const TEMPLATE = "template";

/** Contents and formats of a templated sheet, on an empty one. Nothing is read back, so that it all goes in one turn. */
export const drawSheet = (sheet: Excel.Worksheet, data: Sheet): void => {
  sheet.showGridlines = false;
  sheet.customProperties.add(TEMPLATE, markOf(data));
  data.widths.forEach((width, i) => {
    sheet.getRangeByIndexes(0, i, 1, 1).getEntireColumn().format.columnWidth = pointsOfWidth(width);
  });
  for (const block of data.blocks) {
    const whole = addressOf(areaOfBlock(block));
    const columns = Math.max(...block.rows.map((row) => row.length));
    dress(sheet.getRange(whole), whole, lookOf(block, data));
    sheet.getRange(blockAddress(block.at, block.rows.length, columns)).formulas = block.rows.map((row) =>
      Array.from({ length: columns }, (_, i) => entry(row[i])),
    );
  }
  // After the contents: a formula that is entered into a cell of text would stay text.
  for (const { range, format } of data.formats) sheet.getRange(range).numberFormat = filled(range, formats[format]);
  for (const range of data.merges) sheet.getRange(range).merge(false);
  for (const { row, lines } of data.lines) {
    sheet.getRangeByIndexes(row - 1, 0, 1, 1).getEntireRow().format.rowHeight = pointsOfLines(lines);
  }
  const { rows, columns } = data.freeze;
  if (rows > 0 && columns > 0) sheet.freezePanes.freezeAt(sheet.getRangeByIndexes(0, 0, rows, columns));
  else if (rows > 0) sheet.freezePanes.freezeRows(rows);
  else if (columns > 0) sheet.freezePanes.freezeColumns(columns);
};
