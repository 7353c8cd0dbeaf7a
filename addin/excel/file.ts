import { lookTold, roleLooks, ruleLooks, type CellLook } from "../../taskpane/sheets/look";
import { asItStands } from "../../taskpane/sheets/growing";
import { markedBy } from "../../taskpane/sheets/markedBy";
import { areaOf } from "../../taskpane/sheets/shared/address";
import { areaOfBlock } from "../../taskpane/sheets/shared/part";
import { formats, type Sheet } from "../../taskpane/sheets/sheet";
import type { CellState, SheetContents } from "../../taskpane/workbook";
import { spillsIn, type FileCell, type FileSheet } from "../file/book";
import { printed } from "../file/printed";
import { CELLS_AT_ONCE, readSheets } from "./contents";
import { pointsOfLines, TEMPLATE, widthOfPoints } from "./insert";

/** What Excel tells of a cell that nobody has dressed. */
const PLAIN = { size: 11, colour: "#000000", fill: "#FFFFFF" };

const WANTED = { format: { fill: { color: true }, font: { bold: true, color: true, size: true }, wrapText: true } };

const dressOf = ({ format }: Excel.CellProperties): CellLook | undefined =>
  lookTold(
    {
      bold: format?.font?.bold,
      size: format?.font?.size,
      colour: format?.font?.color,
      fill: format?.fill?.color,
      wraps: format?.wrapText,
    },
    PLAIN,
  );

/** The template that the sheet was made from, where its titles still stand in their places. */
const templateIn = (states: readonly (readonly CellState[])[], mark: string | undefined): Sheet | undefined => {
  const marked = markedBy(mark);
  const template = marked && asItStands(marked, (row, column) => states[row]?.[column]?.value, states.length);
  const stands = template?.blocks
    .filter(({ role }) => role === "title" || role === "heading" || role === "label")
    .every(({ at, rows }) => {
      const { top, left } = areaOf(at);
      return rows.every((row, i) =>
        row.every(
          (content, j) =>
            typeof content !== "string" ||
            content.startsWith("=") ||
            states[top - 1 + i]?.[left - 1 + j]?.value === content,
        ),
      );
    });
  return stands ? template : undefined;
};

const templateLooks = ({ blocks, formats: numbers }: Sheet): Map<string, Pick<FileCell, "look" | "format">> => {
  const looks = new Map<string, Pick<FileCell, "look" | "format">>();
  const put = (area: ReturnType<typeof areaOf>, more: Pick<FileCell, "look" | "format">): void => {
    for (let row = area.top - 1; row < area.bottom; row++) {
      for (let column = area.left - 1; column < area.right; column++) {
        looks.set(`${row},${column}`, { ...looks.get(`${row},${column}`), ...more });
      }
    }
  };
  for (const block of blocks) put(areaOfBlock(block), { look: roleLooks[block.role] });
  for (const { range, format } of numbers) put(areaOf(range), { format: formats[format] });
  return looks;
};

interface Asked {
  readonly contents: SheetContents;
  readonly key: Excel.WorksheetCustomProperty;
  readonly looks?: OfficeExtension.ClientResult<Excel.CellProperties[][]>;
  readonly columns?: OfficeExtension.ClientResult<Excel.ColumnProperties[]>;
}

const fileSheet = ({ contents, key, looks, columns }: Asked): FileSheet => {
  const { name, hidden, cells: states } = contents;
  const template = templateIn(states, key.isNullObject ? undefined : key.value);
  const known = template && templateLooks(template);
  const spills = spillsIn(states);
  const [rows, width] = [
    Math.max(states.length, ...(template?.blocks.map((block) => areaOfBlock(block).bottom) ?? [])),
    Math.max(states[0]?.length ?? 0, ...(template?.blocks.map((block) => areaOfBlock(block).right) ?? [])),
  ];
  return {
    name,
    hidden,
    cells: Array.from({ length: rows }, (_, row) =>
      Array.from({ length: width }, (_, column): FileCell => {
        const { value, formula, format } = states[row]?.[column] ?? { value: null };
        const filled = spills.get(`${row},${column}`);
        const told = looks?.value[row]?.[column];
        const look = known ? known.get(`${row},${column}`)?.look : told && dressOf(told);
        const number = format ?? known?.get(`${row},${column}`)?.format;
        return {
          value,
          ...(formula === undefined ? {} : { formula }),
          ...(filled ? { spills: filled } : {}),
          ...(number === undefined ? {} : { format: number }),
          ...(look === undefined ? {} : { look }),
        };
      }),
    ),
    widths:
      columns?.value.map(({ format }) =>
        format?.columnWidth === undefined ? undefined : widthOfPoints(format.columnWidth),
      ) ?? [],
    heights: template?.lines.map(({ row, lines }) => ({ row, points: pointsOfLines(lines) })) ?? [],
    merges: template?.merges ?? [],
    freeze: template?.freeze ?? { rows: 0, columns: 0 },
    validation: template?.validation ?? [],
    rules:
      template?.rules.map(({ range, when, look }) => ({
        ranges: [range],
        when: when.startsWith("=") ? when : `=${when}`,
        ...ruleLooks[look],
      })) ?? [],
    notes: template?.notes ?? [],
    names: [],
    charts: template?.charts ?? [],
    ...(template ? { page: printed(template) } : {}),
  };
};

/**
 * Sheets as they stand, for a file. A sheet of ours whose titles have stayed in their places brings its charts,
 * validation and rules along; any other its values, formats, widths and colours. Of a very large sheet Excel is not
 * asked for colours, which would be more than it hands over at once.
 */
export const fileSheets = async (
  context: Excel.RequestContext,
  names: readonly string[],
): Promise<readonly FileSheet[]> => {
  const contents = await readSheets(context, names);
  const asked = contents.map((one): Asked => {
    const sheet = context.workbook.worksheets.getItem(one.name);
    const key = sheet.customProperties.getItemOrNullObject(TEMPLATE);
    key.load("value");
    const [rows, columns] = [one.cells.length, one.cells[0]?.length ?? 0];
    if (rows === 0 || columns === 0) return { contents: one, key };
    const used = sheet.getRangeByIndexes(0, 0, rows, columns);
    return {
      contents: one,
      key,
      columns: used.getColumnProperties({ format: { columnWidth: true } }),
      ...(rows * columns <= CELLS_AT_ONCE ? { looks: used.getCellProperties(WANTED) } : {}),
    };
  });
  await context.sync();
  return asked.map(fileSheet);
};
