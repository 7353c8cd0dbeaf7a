import { sheets as templates } from "../sheets/catalogue";
import { areaOfLog } from "../sheets/grown";
import { growing, longer, type GrowingLog } from "../sheets/growing";
import type { Block, Content, Sheet } from "../sheets/sheet";
import { WorkbookError, type Change, type Insertion, type SheetContents, type Workbook } from "../workbook";
import { counted, impossible, stopIfCancelled, type Action } from "./action";
import { hasFunction } from "./formulas";
import { joined } from "./joined";
import { linkedCells, linking, tabsOf, type LinkedCell, type Tab } from "./links";
import { areaOf } from "./place";
import { showAgain } from "./shown";
import { withoutPromise } from "./takeBack";
import { recognise } from "./template";

/** How many rows a keeper may add at a time; a log of thousands belongs in a table of one's own. */
const MOST = 500;

interface Put {
  readonly log: string;
  /** Where rows go in, with their formulas, settings and joined cells. */
  readonly insertion: Insertion;
  /** The sheet as it stands then. */
  readonly then: Tab;
  /** The rows of the log as it is and the last of the longer one, as the sheet counts rows. */
  readonly from: number;
  readonly to: number;
  readonly last: number;
}

const written = (content: Content): Change["cells"][number][number] =>
  typeof content === "string" && content.startsWith("=") ? { formula: content } : content;

const isFilled = ({ role }: Block): boolean => role !== "input";

/** Of several logs the one in which a row lies, its titles and what is said under it too; else the one that a keeper fills most. */
const chosen = (template: Sheet, logs: readonly [GrowingLog, ...GrowingLog[]], row: number): GrowingLog =>
  logs.find((own) =>
    own.some((log) => {
      const { top, bottom } = areaOfLog(template, log);
      return row + 1 >= top - 1 && row + 1 <= bottom + 1;
    }),
  ) ?? logs[0];

/** What would be put in where that row is selected, or in words why nothing can be. */
const putOf = (
  contents: Pick<SheetContents, "name" | "cells" | "locked">,
  row: number,
  count: number,
): Put | string => {
  const { name, cells, locked } = contents;
  const known = recognise(contents, templates);
  const all = known ? growing[known.template.key] : undefined;
  if (!known || !all) {
    return `"${name}" has no log of this pane. Select a cell of a sheet that has one, such as the feeding log. Nothing was changed.`;
  }
  if (!known.inPlace) {
    return `On "${name}" rows, columns or headings have been moved, so the log is not where it was. Nothing was changed.`;
  }
  if (locked) return `"${name}" is protected. Take the protection off, then try again. Nothing was changed.`;
  if (!Number.isInteger(count) || count < 1 || count > MOST)
    return `Give a whole number of rows from 1 to ${MOST}. Nothing was changed.`;
  // In a frozen copy the new rows would have to calculate, and nothing else does.
  const calls = known.template.blocks.some(({ rows }) =>
    rows.flat().some((one) => typeof one === "string" && hasFunction(one)),
  );
  const isFrozen =
    calls && !cells.some((line) => line.some(({ formula }) => formula !== undefined && hasFunction(formula)));
  if (isFrozen) return `"${name}" is frozen. Thaw it first, then add rows. Nothing was changed.`;

  const logs = chosen(known.template, all, row);
  const then = longer(known.template, logs, count);
  // The last row of each log goes down: the new rows lie before it.
  const places = logs.map((log) => areaOfLog(then, log));
  const news = places.map(({ bottom }) => ({ from: bottom - count, to: bottom - 1 }));
  const fill = then.blocks.filter(isFilled).flatMap(({ at, rows }): readonly Change[] => {
    const area = areaOf(at);
    if (!area) return [];
    return news.flatMap(({ from, to }) => {
      const own = rows.flatMap((row, i) => (area.row + 1 + i >= from && area.row + 1 + i <= to ? [{ i, row }] : []));
      const [first] = own;
      if (!first || own.every(({ row }) => row.every((content) => content === null))) return [];
      return [
        { sheet: name, row: area.row + first.i, column: area.column, cells: own.map(({ row }) => row.map(written)) },
      ];
    });
  });
  const isNew = (one: string): boolean => {
    const { row = 0, rows = 0 } = areaOf(one) ?? {};
    return news.some(({ from, to }) => row + 1 >= from && row + rows <= to);
  };
  const rows = news.map(({ from }) => from - 1);
  const blank = Array.from({ length: count }, () => []);
  const { top, bottom } = areaOfLog(known.template, logs[0]);
  return {
    log: logs[0],
    insertion: { sheet: name, rows, count, fill, joined: then.merges.filter(isNew) },
    then: {
      ...contents,
      template: then,
      cells: rows.reduce<Tab["cells"]>((all, from) => [...all.slice(0, from), ...blank, ...all.slice(from)], cells),
    },
    from: top,
    to: bottom,
    last: bottom + count,
  };
};

/** What makes the new rows follow other sheets in the columns in which the rows above do. */
const followingOf = ({ then, insertion, from, last }: Put, tabs: readonly Tab[]): readonly Change[] => {
  const all = tabs.map((tab) => (tab.name === then.name ? then : tab));
  const cells = linkedCells([then], all).filter(({ row }) => row + 1 >= from && row + 1 <= last);
  const isNew = ({ row }: LinkedCell): boolean =>
    insertion.rows.some((first) => row >= first && row < first + insertion.count);
  const follow = new Set(cells.filter((cell) => cell.isLinked && !isNew(cell)).map(({ column }) => column));
  return joined(cells.filter((cell) => isNew(cell) && follow.has(cell.column)).map(linking));
};

const insert = (workbook: Workbook, put: Put, tabs: readonly Tab[]): Promise<void> =>
  workbook.insertRows({ ...put.insertion, fill: [...put.insertion.fill, ...followingOf(put, tabs)] });

/** A log of another sheet that repeats one row by row: it has to be as long, or it would miss what is entered last. */
interface Follower {
  readonly tab: Tab;
  /** A row of it, counted from 0. */
  readonly row: number;
  readonly rows: number;
}

const followersOf = (tabs: readonly Tab[], sheet: string, log: string): readonly Follower[] => {
  const key = tabs.find(({ name }) => name === sheet)?.template.key;
  return tabs.flatMap((tab): Follower[] => {
    const repeated = tab.template.links.filter(({ from, by }) => by === undefined && from.startsWith(`${key}.${log}.`));
    const areas = repeated.flatMap(({ at }) => areaOf(at) ?? []).filter(({ rows }) => rows > 1);
    const follows = ({ source, isLinked, row, column }: LinkedCell): boolean =>
      source.name === sheet &&
      isLinked &&
      areas.some((area) => area.column === column && row >= area.row && row < area.row + area.rows);
    const [first] = areas;
    return first && linkedCells([tab], tabs).some(follows) ? [{ tab, row: first.row, rows: first.rows }] : [];
  });
};

/** Makes another sheet's log as long, and lets its new rows follow; in words why it cannot be done. */
const lengthen = async (
  workbook: Workbook,
  source: Tab,
  { tab, row }: Follower,
  count: number,
  tabs: readonly Tab[],
) => {
  const { name } = tab;
  const missed = `"${name}" does not read the new rows of "${source.name}": add ${counted(count, "row")} to its log too, then press "Link sheets".`;
  const put = putOf(tab, row, count);
  if (typeof put === "string") return `${missed} ${withoutPromise(put)}`;
  try {
    await insert(
      workbook,
      put,
      tabs.map((one) => (one.name === source.name ? source : one)),
    );
    return undefined;
  } catch (failure) {
    if (failure instanceof WorkbookError) return `${missed} ${withoutPromise(failure.message)}`;
    throw failure;
  }
};

const putInSelected = async (workbook: Workbook, count: number) => {
  const { sheet, row, column } = await workbook.selection();
  const [contents] = await workbook.read([sheet]);
  return {
    sheet,
    row,
    column,
    put: contents ? putOf(contents, row, count) : `There is no sheet "${sheet}" any more. Nothing was changed.`,
  };
};

export const addRows: Action<number> = {
  key: "add-rows",
  label: "Add rows to the log",
  about:
    "Makes the log on the sheet that you are looking at longer, with its formulas, lists, colours and pictures. Where there are several, that of the selected cell. A sheet that repeats the log row by row, as Today does, gets as many. What you have entered stays.",
  async describe(workbook, count) {
    const { sheet, put } = await putInSelected(workbook, count);
    return typeof put === "string"
      ? impossible(put)
      : {
          text: `Adds ${counted(count, "row")} to rows ${put.from} to ${put.to} of "${sheet}".`,
          possible: true,
          ask: false,
        };
  },
  async run(workbook, count, options) {
    const { sheet, row, column, put } = await putInSelected(workbook, count);
    if (typeof put === "string") throw new WorkbookError(put);
    const { tabs } = tabsOf(await workbook.read());
    const followers = followersOf(tabs, sheet, put.log);
    stopIfCancelled(options);
    await insert(workbook, put, tabs);
    const left: string[] = [];
    const longer: string[] = [];
    for (const follower of followers) {
      const missing = put.last - put.from + 1 - follower.rows;
      if (missing <= 0) continue;
      const trouble = await lengthen(workbook, put.then, follower, missing, tabs);
      if (trouble === undefined) longer.push(`"${follower.tab.name}"`);
      else left.push(trouble);
    }
    // A program may show the sheet that was changed last. The rows are there by now, whether a cell can be shown or not.
    if (followers.length > 0) await showAgain(workbook, { sheet, row, column });
    return {
      text:
        `The log on "${sheet}" that begins in row ${put.from} has ${counted(count, "row")} more: its last is now row ${put.last}.` +
        (longer.length > 0 ? ` ${longer.join(" and ")} ${longer.length === 1 ? "reads" : "read"} them too.` : "") +
        (left.length > 0 ? " But what repeats it has to be made longer by hand:" : ""),
      left,
    };
  },
};
