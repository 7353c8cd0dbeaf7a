import { range } from "./range";
import type { Turn } from "./turn";
import { OfficeError, type HeldTable, type HeldWorkbook, type Tab } from "./workbook";

/** Office.js's Table: its headings, its rows, and columns that are added last. */
export const tableOf = (excel: HeldWorkbook, turn: Turn, tab: () => Tab, find: () => HeldTable | undefined): object => {
  const { queue, strict } = turn;
  const table = (): HeldTable => {
    const found = find();
    if (!found) throw new OfficeError("ItemNotFound", "there is no such table");
    return found;
  };
  const column = (at: () => number): object =>
    strict("TableColumn", {
      getDataBodyRange: () =>
        range(excel, turn, {
          tab,
          row: () => table().row + 1,
          column: () => table().column + at(),
          rows: () => table().rows,
          columns: () => 1,
        }),
      delete: () =>
        queue("TableColumn.delete", () => {
          const own = table();
          const index = at();
          for (let i = 0; i <= own.rows; i++) tab().cells.delete(`${own.row + i},${own.column + index}`);
          own.headings.splice(index, 1);
        }),
    });
  return strict("Table", {
    getHeaderRowRange: () =>
      range(excel, turn, {
        tab,
        row: () => table().row,
        column: () => table().column,
        rows: () => 1,
        columns: () => table().headings.length,
      }),
    columns: strict("TableColumnCollection", {
      add: (index: number | undefined, values: unknown, name: string) => {
        if (index !== undefined || values !== undefined) throw new Error("only a last, empty column is modelled");
        let at = -1;
        queue("TableColumnCollection.add", () => {
          const own = table();
          if (own.headings.includes(name)) throw new OfficeError("InvalidArgument", `${name} is taken`);
          at = own.headings.push(name) - 1;
          excel.enter(tab(), own.row, own.column + at, name);
        });
        return column(() => at);
      },
      getItem: (name: string) =>
        column(() => {
          const at = table().headings.indexOf(name);
          if (at < 0) throw new OfficeError("ItemNotFound", `there is no column ${name}`);
          return at;
        }),
    }),
  });
};

/** The tables over a place, once they are loaded. */
export const tablesOver = (
  excel: HeldWorkbook,
  turn: Turn,
  tab: () => Tab,
  place: { readonly row: () => number; readonly column: () => number },
): object => {
  const { queue, strict } = turn;
  let items: object[] | undefined;
  return strict("TableScopedCollection", {
    load: (wanted: string) => {
      const names = wanted.split(",").map((one) => one.replace(/^items\//, ""));
      queue("tables.load", () => {
        items = tab()
          .tables.filter(
            ({ row, column, rows, headings }) =>
              place.row() >= row &&
              place.row() <= row + rows &&
              place.column() >= column &&
              place.column() < column + headings.length,
          )
          .map((held) => {
            const values: Readonly<Record<string, unknown>> = { name: held.name, showHeaders: held.showHeaders };
            const own = tableOf(excel, turn, tab, () => held);
            return strict(
              "Table",
              Object.defineProperties(
                { getHeaderRowRange: (own as { getHeaderRowRange: unknown }).getHeaderRowRange },
                Object.fromEntries(names.map((name) => [name, { value: values[name] }])),
              ),
            );
          });
      });
    },
    get items() {
      if (!items) throw new OfficeError("PropertyNotLoaded", "tables.items was read before it was loaded");
      return items;
    },
  });
};
