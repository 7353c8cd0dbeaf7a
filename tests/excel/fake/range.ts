import { columnLetters } from "../../../taskpane/sheets/shared/address";
import { identified, type Turn } from "./turn";
import { tablesOver } from "./tables";
import { OfficeError, type HeldWorkbook, type Tab } from "./workbook";

/** Where a range is, once its turn comes. */
export interface RangePlace {
  tab: () => Tab;
  row: () => number;
  column: () => number;
  rows: () => number;
  columns: () => number;
  isNull?: () => boolean;
}
const sizeOfPlace = ({ rows, columns }: RangePlace) => `${rows()}x${columns()}`;

/** Where ranges are that are handed to another. */
const corners = new WeakMap<object, RangePlace>();

/** Office.js's Range. */
export const range = (excel: HeldWorkbook, turn: Turn, place: RangePlace): object => {
  const { queue, forgiving, strict, loads, later, written } = turn;
  const name = "Range";
  const where = (): string => {
    const [row, column, rows, columns] = [place.row(), place.column(), place.rows(), place.columns()];
    const first = `${columnLetters(column + 1)}${row + 1}`;
    return rows === 1 && columns === 1 ? first : `${first}:${columnLetters(column + columns)}${row + rows}`;
  };
  const tell = (line: string): void => void place.tab().told.push(`${where()} ${line}`);
  const grid = <T>(of: (row: number, column: number) => T): T[][] =>
    Array.from({ length: place.rows() }, (_, i) =>
      Array.from({ length: place.columns() }, (_, j) => of(place.row() + i, place.column() + j)),
    );
  const members = loads(name, {
    values: () => grid((i, j) => excel.shown(place.tab(), i, j).value),
    formulas: () => grid((i, j) => excel.shown(place.tab(), i, j).formula),
    valueTypes: () => grid((i, j) => excel.shown(place.tab(), i, j).type),
    numberFormat: () => grid((i, j) => excel.shown(place.tab(), i, j).format),
    hasSpill: () => {
      const inside = grid((i, j) =>
        excel
          .spills(place.tab())
          .some((s) => i >= s.row && i < s.row + s.rows && j >= s.column && j < s.column + s.columns),
      ).flat();
      return inside.every(Boolean) ? true : inside.some(Boolean) ? null : false;
    },
    rowIndex: () => place.row(),
    columnIndex: () => place.column(),
    rowCount: () => place.rows(),
    columnCount: () => place.columns(),
  });
  let worksheet: object | undefined;
  let isNull: boolean | undefined;
  if (place.isNull) {
    const asked = place.isNull;
    queue("Range.isNullObject", () => (isNull = asked()));
    forgiving("Range", members, () => isNull);
  }
  Object.defineProperty(members, "isNullObject", {
    get: () => {
      if (isNull === undefined) throw new OfficeError("PropertyNotLoaded", "Range.isNullObject was read before sync");
      return isNull;
    },
  });
  const checked = (what: string, value: unknown): unknown[][] => {
    const rows = value as unknown[][];
    const fits =
      Array.isArray(rows) &&
      rows.length === place.rows() &&
      rows.every((row) => Array.isArray(row) && row.length === place.columns());
    if (!fits)
      throw new OfficeError(
        "InvalidArgument",
        `${what} of ${where()} wants ${sizeOfPlace(place)}, got ${Array.isArray(rows) ? `${rows.length}x${rows[0]?.length}` : typeof rows}`,
      );
    return rows;
  };
  const writable = (
    member: "formulas" | "numberFormat",
    put: (row: number, column: number, value: unknown) => void,
  ): void => {
    const described = Object.getOwnPropertyDescriptor(members, member) as PropertyDescriptor;
    Object.defineProperty(members, member, {
      ...described,
      set: (value: unknown) => {
        const copy = JSON.parse(JSON.stringify(checked(member, value))) as unknown[][];
        queue(`Range.${member}`, () => {
          if (place.tab().locked) throw new OfficeError("AccessDenied", "the sheet is protected");
          copy.forEach((row, i) => row.forEach((entry, j) => put(place.row() + i, place.column() + j, entry)));
        });
      },
    });
  };
  writable("formulas", (row, column, value) => excel.enter(place.tab(), row, column, value));
  writable("numberFormat", (row, column, value) => {
    if (typeof value !== "string") throw new OfficeError("InvalidArgument", "a number format is text");
    excel.cell(place.tab(), row, column).format = value;
  });
  const part = (
    row: () => number,
    column: () => number,
    rows: () => number,
    columns: () => number,
    isNull?: () => boolean,
  ): object => range(excel, turn, { tab: place.tab, row, column, rows, columns, ...(isNull ? { isNull } : {}) });
  const spillOf = () => excel.spills(place.tab()).find((s) => s.row === place.row() && s.column === place.column());
  const parentOf = () =>
    excel
      .spills(place.tab())
      .find(
        (s) =>
          place.row() >= s.row &&
          place.row() < s.row + s.rows &&
          place.column() >= s.column &&
          place.column() < s.column + s.columns,
      );
  const single = (): void => {
    if (place.rows() !== 1 || place.columns() !== 1) throw new OfficeError("InvalidArgument", "one cell is wanted");
  };
  const own = identified(
    strict(
      name,
      Object.defineProperties(
        {
          getCell: (row: number, column: number) =>
            part(
              () => place.row() + row,
              () => place.column() + column,
              () => 1,
              () => 1,
            ),
          getRow: (row: number) =>
            part(
              () => place.row() + row,
              place.column,
              () => 1,
              place.columns,
            ),
          getBoundingRect: (other: object) => {
            const end = corners.get(other);
            if (!end) throw new OfficeError("InvalidArgument", "a range is wanted");
            return part(
              () => Math.min(place.row(), end.row()),
              () => Math.min(place.column(), end.column()),
              () => Math.max(place.row() + place.rows(), end.row() + end.rows()) - Math.min(place.row(), end.row()),
              () =>
                Math.max(place.column() + place.columns(), end.column() + end.columns()) -
                Math.min(place.column(), end.column()),
            );
          },
          getEntireColumn: () =>
            part(
              () => 0,
              place.column,
              () => 1_048_576,
              place.columns,
            ),
          getEntireRow: () =>
            part(
              place.row,
              () => 0,
              place.rows,
              () => 16_384,
            ),
          getSpillingToRangeOrNullObject: () => {
            single();
            return part(
              place.row,
              place.column,
              () => spillOf()?.rows ?? 1,
              () => spillOf()?.columns ?? 1,
              () => spillOf() === undefined,
            );
          },
          getSpillParentOrNullObject: () => {
            single();
            return part(
              () => parentOf()?.row ?? 0,
              () => parentOf()?.column ?? 0,
              () => 1,
              () => 1,
              () => parentOf() === undefined,
            );
          },
          getColumnProperties: () =>
            later("Range.getColumnProperties", () =>
              Array.from({ length: place.columns() }, () => ({ format: { columnWidth: 48 } })),
            ),
          getCellProperties: () =>
            later("Range.getCellProperties", () =>
              grid(
                (row, column) =>
                  place.tab().looks.get(`${row},${column}`) ?? {
                    format: {
                      fill: { color: "#FFFFFF" },
                      font: { bold: false, color: "#000000", size: 11 },
                      wrapText: false,
                    },
                  },
              ),
            ),
          setCellProperties: (looks: unknown) => {
            const copy = JSON.parse(JSON.stringify(checked("setCellProperties", looks))) as unknown[][];
            queue("Range.setCellProperties", () => {
              if (place.tab().locked) throw new OfficeError("AccessDenied", "the sheet is protected");
              copy.forEach((line, i) =>
                line.forEach((look, j) => place.tab().looks.set(`${place.row() + i},${place.column() + j}`, look)),
              );
            });
          },
          insert: (shift: string) => {
            if (shift !== "Down") throw new Error(`insert ${shift} is not modelled`);
            queue("Range.insert", () => excel.insertRows(place.tab(), place.row(), place.rows(), place.columns()));
            return part(place.row, place.column, place.rows, place.columns);
          },
          delete: (shift: string) => {
            if (shift !== "Up") throw new Error(`delete ${shift} is not modelled`);
            queue("Range.delete", () => excel.insertRows(place.tab(), place.row(), -place.rows(), place.columns()));
          },
          getTables: (whole: boolean) => {
            if (whole) throw new Error("tables that are wholly inside are not modelled");
            return tablesOver(excel, turn, place.tab, place);
          },
          merge: (across: boolean) => queue("Range.merge", () => tell(`merge(${across})`)),
          select: () =>
            queue("Range.select", () => {
              if (excel.active !== place.tab().id) throw new OfficeError("InvalidSelection", "the sheet is not shown");
              excel.selected = { row: place.row(), column: place.column() };
              place.tab().selected = excel.selected;
            }),
          get worksheet() {
            return (worksheet ??= strict("Worksheet", loads("Worksheet", { name: () => place.tab().name })));
          },
          set columnHidden(hidden: boolean) {
            queue("Range.columnHidden", () => tell(`columnHidden ${hidden}`));
          },
          get format() {
            return written("format", tell, ["wrapText", "verticalAlignment", "columnWidth", "rowHeight"], {
              fill: written("fill", tell, ["color"]),
              font: written("font", tell, ["bold", "size", "color"]),
              borders: strict("borders", {
                getItem: (side: string) => written(`border ${side}`, tell, ["style", "color"]),
              }),
            });
          },
          get dataValidation() {
            return written(
              "validation",
              (line) => {
                const rule = /^validation\.(errorAlert|prompt) = (.*)$/.exec(line);
                const message = rule ? (JSON.parse(rule[2] as string) as { message: string }).message : "";
                if (message.length > 255) throw new OfficeError("InvalidArgument", "a message has at most 255 letters");
                tell(line);
              },
              ["rule", "ignoreBlanks", "errorAlert", "prompt"],
            );
          },
          get conditionalFormats() {
            return strict("conditionalFormats", {
              add: (type: string) => {
                if (type !== "Custom") throw new Error(`${type} is not modelled`);
                queue("conditionalFormats.add", () => tell("rule added"));
                return strict("ConditionalFormat", {
                  custom: strict("custom", {
                    rule: written("rule", tell, ["formula"]),
                    format: strict("format", {
                      fill: written("rule fill", tell, ["color"]),
                      font: written("rule font", tell, ["color", "bold"]),
                    }),
                  }),
                });
              },
            });
          },
          /** For the fake alone: where it is, and what a chart makes of it. */
          where,
          columns: place.columns,
          isFigure: () => typeof excel.shown(place.tab(), place.row(), place.column()).value === "number",
        },
        Object.getOwnPropertyDescriptors(members),
      ),
    ),
    () => ({ sheet: place.tab().id, address: where() }),
  );
  corners.set(own, place);
  return own;
};
