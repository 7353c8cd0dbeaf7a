import { range } from "./range";
import { identified, openTurn } from "./turn";
import { OfficeError, type HeldWorkbook, type Tab } from "./workbook";
import { worksheet } from "./worksheet";

/** What Excel.run hands to its batch, and how it ends: what is left over goes when the batch is done. */
export const openContext = (excel: HeldWorkbook) => {
  const turn = openTurn(excel);
  const { peek, queue, strict, sync } = turn;
  const sheet = (find: () => Tab | undefined, maybe = false): object => worksheet(excel, turn, find, maybe);

  /** A sheet of the list: what was loaded of it, and what can be done to it. */
  const listed = (tab: Tab): object => ({
    delete: () => (sheet(() => (excel.tabs.includes(tab) ? tab : undefined)) as { delete(): void }).delete(),
  });

  let items: object[] | undefined;
  const worksheets = strict("WorksheetCollection", {
    load: (wanted: string) => {
      const names = wanted.split(",").map((one) => one.trim().replace(/^items\//, ""));
      queue("worksheets.load", () => {
        items = excel.tabs.map((tab) => {
          const values: Record<string, unknown> = { name: tab.name, id: tab.id, visibility: tab.visibility };
          const own = listed(tab);
          for (const one of names) Object.defineProperty(own, one, { value: values[one] });
          return identified(strict("Worksheet", own), () => ({ id: tab.id }));
        });
      });
    },
    get items() {
      if (!items) throw new OfficeError("PropertyNotLoaded", "worksheets.items was read before it was loaded");
      return items;
    },
    add: (name: string) => {
      let added: Tab | undefined;
      queue("worksheets.add", () => {
        if (excel.tabs.some((tab) => tab.name.toLowerCase() === name.toLowerCase()))
          throw new OfficeError("ItemAlreadyExists", `${name} is taken`);
        if (name.length > 31 || /[\\/?*[\]:]/.test(name))
          throw new OfficeError("InvalidArgument", `${name} is no name of a sheet`);
        added = excel.newTab(name);
        excel.tabs.push(added);
      });
      return sheet(() => added);
    },
    getItem: (name: string) => sheet(() => excel.tabs.find((tab) => tab.name === name || tab.id === name)),
    getItemOrNullObject: (name: string) => sheet(() => excel.tabs.find((tab) => tab.name === name), true),
    getActiveWorksheet: () => sheet(() => excel.tabs.find(({ id }) => id === excel.active)),
  });
  const application = strict("Application", {
    suspendScreenUpdatingUntilNextSync: () => queue("suspendScreenUpdatingUntilNextSync", () => undefined),
  });
  const context = strict("RequestContext", {
    application,
    workbook: strict("Workbook", {
      application,
      getActiveCell: () =>
        range(excel, turn, {
          tab: () => excel.tabs.find(({ id }) => id === excel.active) as Tab,
          row: () => excel.selected.row,
          column: () => excel.selected.column,
          rows: () => 1,
          columns: () => 1,
        }),
      worksheets,
    }),
    sync,
    peek,
  });
  return { context, end: async (): Promise<void> => (turn.waits() ? sync() : undefined) };
};
