import { areaOf } from "../../../taskpane/sheets/shared/address";
import { charts } from "./charts";
import { range } from "./range";
import { identified, type Turn } from "./turn";
import { tableOf } from "./tables";
import { OfficeError, type HeldWorkbook, type Tab } from "./workbook";

/** Office.js's Worksheet; `maybe` where it may not be there. */
export const worksheet = (excel: HeldWorkbook, turn: Turn, find: () => Tab | undefined, maybe = false): object => {
  const { queue, forgiving, strict, loads, written } = turn;
  const tab = (): Tab => {
    const found = find();
    if (!found) throw new OfficeError("ItemNotFound", "there is no such sheet");
    return found;
  };
  const tell = (line: string): void => void tab().told.push(line);
  let isNull: boolean | undefined;
  if (maybe) queue("worksheets.getItemOrNullObject", () => (isNull = find() === undefined));
  const lenient = (members: Record<string, unknown>): Record<string, unknown> =>
    maybe ? forgiving("Worksheet", members, () => isNull) : members;
  const members = lenient(
    loads("Worksheet", { name: () => tab().name, id: () => tab().id, visibility: () => tab().visibility }),
  );
  const protection = lenient(loads("protection", { protected: () => tab().locked }));
  const at = (row: number, column: number, rows: number, columns: number): object => {
    if (
      ![row, column, rows, columns].every((n) => Number.isInteger(n)) ||
      rows < 1 ||
      columns < 1 ||
      row < 0 ||
      column < 0
    ) {
      throw new OfficeError("InvalidArgument", `no range of ${[row, column, rows, columns].join()}`);
    }
    return range(excel, turn, { tab, row: () => row, column: () => column, rows: () => rows, columns: () => columns });
  };
  const known = (all: object): object => {
    if (!excel.hasNotes) delete (all as { notes?: unknown }).notes;
    return all;
  };
  return identified(
    strict(
      "Worksheet",
      known(
        Object.defineProperties(
          {
            getRange: (address: string) => {
              const { top, left, bottom, right } = areaOf(address);
              return at(top - 1, left - 1, bottom - top + 1, right - left + 1);
            },
            getRangeByIndexes: at,
            getUsedRangeOrNullObject: (valuesOnly: boolean) => {
              const area = () => {
                const used = [...tab().cells]
                  .filter(([, cell]) => cell.formula !== "" || (!valuesOnly && cell.format !== "General"))
                  .map(([where]) => where.split(",").map(Number) as [number, number]);
                for (const s of excel.spills(tab())) used.push([s.row + s.rows - 1, s.column + s.columns - 1]);
                const rows = used.map(([row]) => row);
                const columns = used.map(([, column]) => column);
                return used.length === 0
                  ? undefined
                  : {
                      top: Math.min(...rows),
                      left: Math.min(...columns),
                      bottom: Math.max(...rows),
                      right: Math.max(...columns),
                    };
              };
              return range(excel, turn, {
                tab,
                row: () => area()?.top ?? 0,
                column: () => area()?.left ?? 0,
                rows: () => {
                  const a = area();
                  return a ? a.bottom - a.top + 1 : 1;
                },
                columns: () => {
                  const a = area();
                  return a ? a.right - a.left + 1 : 1;
                },
                isNull: () => area() === undefined,
              });
            },
            activate: () =>
              queue("Worksheet.activate", () => {
                excel.active = tab().id;
              }),
            delete: () =>
              queue("Worksheet.delete", () => {
                const gone = tab();
                if (
                  excel.tabs.filter(({ visibility }) => visibility === "Visible").length === 1 &&
                  gone.visibility === "Visible"
                )
                  throw new OfficeError("InvalidOperation", "a workbook keeps one visible sheet");
                const index = excel.tabs.indexOf(gone);
                excel.delete(gone);
                if (excel.active === gone.id) excel.active = (excel.tabs[Math.max(0, index - 1)] as Tab).id;
              }),
            copy: (where: string) => {
              if (where !== "End") throw new Error(`copy to ${where} is not modelled`);
              let copied: Tab | undefined;
              queue("Worksheet.copy", () => {
                let n = 2;
                while (excel.tabs.some(({ name }) => name === `${tab().name} (${n})`)) n++;
                copied = {
                  ...excel.newTab(`${tab().name} (${n})`),
                  cells: new Map([...tab().cells].map(([at, cell]) => [at, { ...cell }])),
                  told: [...tab().told],
                  charts: structuredClone(tab().charts),
                  locked: tab().locked,
                };
                excel.tabs.push(copied);
              });
              return worksheet(excel, turn, () => copied);
            },
            get tables() {
              return strict("TableCollection", {
                getItem: (name: string) =>
                  tableOf(excel, turn, tab, () => tab().tables.find((one) => one.name === name)),
              });
            },
            get names() {
              return strict("names", {
                add: (name: string, of: { where(): string }) =>
                  queue("names.add", () => tell(`name ${name} = ${of.where()}`)),
              });
            },
            get freezePanes() {
              return strict("freezePanes", {
                freezeRows: (rows: number) => queue("freezePanes.freezeRows", () => tell(`freeze ${rows} rows`)),
                freezeColumns: (columns: number) =>
                  queue("freezePanes.freezeColumns", () => tell(`freeze ${columns} columns`)),
                freezeAt: (of: { where(): string }) =>
                  queue("freezePanes.freezeAt", () => tell(`freeze ${of.where()}`)),
              });
            },
            get pageLayout() {
              return written("pageLayout", tell, ["orientation", "zoom"], {
                setPrintTitleRows: (rows: string) =>
                  queue("pageLayout.setPrintTitleRows", () => {
                    if (!/^\$\d+:\$\d+$/.test(rows)) throw new OfficeError("InvalidArgument", `no rows of ${rows}`);
                    tell(`title rows ${rows}`);
                  }),
                setPrintArea: (columns: string) =>
                  queue("pageLayout.setPrintArea", () => {
                    if (!/^[A-Z]+:[A-Z]+$/.test(columns))
                      throw new OfficeError("InvalidArgument", `no area ${columns}`);
                    tell(`print area ${columns}`);
                  }),
                get headersFooters() {
                  return strict("headersFooters", {
                    get defaultForAllPages() {
                      return written("footers", tell, ["leftFooter", "centerFooter", "rightFooter"]);
                    },
                  });
                },
              });
            },
            get notes() {
              if (excel.newest < 1.18) throw new Error("notes are newer than this Excel");
              return strict("notes", {
                add: (at: string, words: string) => queue("notes.add", () => tell(`note ${at}: ${words}`)),
              });
            },
            get charts() {
              return charts(excel, turn, tab);
            },
            get customProperties() {
              return strict("customProperties", {
                add: (name: string, value: string) =>
                  queue("customProperties.add", () => tab().properties.set(name, value)),
                getItemOrNullObject: (name: string) => {
                  const found = loads("WorksheetCustomProperty", { value: () => tab().properties.get(name) });
                  let missing: boolean | undefined;
                  queue("customProperties.getItemOrNullObject", () => (missing = !tab().properties.has(name)));
                  Object.defineProperty(found, "isNullObject", { get: () => missing });
                  return strict("WorksheetCustomProperty", found);
                },
              });
            },
            get protection() {
              return strict("protection", Object.defineProperties({}, Object.getOwnPropertyDescriptors(protection)));
            },
            get isNullObject() {
              if (isNull === undefined)
                throw new OfficeError("PropertyNotLoaded", "Worksheet.isNullObject was read before sync");
              return isNull;
            },
            set showGridlines(shown: boolean) {
              queue("Worksheet.showGridlines", () => tell(`gridlines ${shown}`));
            },
          },
          Object.getOwnPropertyDescriptors(members),
        ),
      ),
    ),
    () => ({ id: tab().id }),
  );
};
