import { isoOf } from "../../../functions/dates";
import { areaOf, areaFrom, columnLetters } from "../../sheets/shared/address";
import { areaOfBlock } from "../../sheets/shared/part";
import { LEGEND } from "../../sheets/shared/assemble";
import type { Role, Sheet } from "../../sheets/sheet";
import type { CellState } from "../../workbook";

type Cells = readonly (readonly CellState[])[];

/** A cell of a page: the columns that it takes, counted from 0, and how it is said. */
export interface PageCell {
  readonly from: number;
  readonly to: number;
  readonly text: string;
  readonly role: Role;
  readonly isNumber: boolean;
}

/** A sheet as a page: its columns in characters, and its rows from top to bottom without those that say nothing. */
export interface SheetPage {
  readonly widths: readonly number[];
  readonly rows: readonly (readonly PageCell[])[];
  /** Rows that found no room. */
  readonly more: number;
}

/** As many rows as a page holds. */
const MOST = 150;

/** A cell's value as it is shown there. An error is said as it stands: the reader must not take it for a blank. */
const shown = ({ value, format = "" }: CellState): string => {
  if (value === null) return "";
  if (typeof value === "object") return value.error;
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string") return value.trim();
  if (format.startsWith("yyyy-mm-dd")) {
    const minutes = Math.round((value % 1) * 1440);
    const time = `${String(Math.floor(minutes / 60)).padStart(2, "0")}:${String(minutes % 60).padStart(2, "0")}`;
    return format.includes("hh") ? `${isoOf(Math.floor(value))} ${time}` : isoOf(value);
  }
  const isShare = format.endsWith("%");
  const figure = isShare ? value * 100 : value;
  const decimals = /^0(?:\.(0+))?%?$/.exec(format)?.[1]?.length ?? (/^0%?$/.test(format) ? 0 : undefined);
  const text = decimals === undefined ? String(Number(figure.toPrecision(6))) : figure.toFixed(decimals);
  return `${text.replace(/^-(?=0(?:\.0*)?$)/, "")}${isShare ? " %" : ""}`;
};

/** What stands in the sheet's own words elsewhere on the page: its title, its lead, its cautions, its sources. */
const isApart = (role: Role): boolean => role === "title" || role === "caution" || role === "source";

/** The last column of the page, counted from 1: what stands to the right of the cautions helps the sheet alone. */
const lastColumn = ({ blocks, merges, widths }: Sheet): number => {
  const [first] = blocks.filter(({ role }) => role === "caution");
  if (!first) return widths.length;
  const merge = merges.find((one) => one.split(":")[0] === first.at) ?? first.at;
  return areaOf(merge).right;
};

/** Where the animal's home lies to the minute is not for a post: its latitude and longitude stay on the sheet. */
const AT_HOME = /^(place|home|year)\.(latitude|longitude)$/;

/** The rows of a sheet that say something, between its lead and its sources. */
export const readPage = (template: Sheet, cells: Cells): SheetPage => {
  const last = Math.min(lastColumn(template), template.widths.length);
  const roles = new Map<string, Role>();
  for (const block of template.blocks) {
    const { top, bottom, left, right } = areaOfBlock(block);
    for (let row = top; row <= bottom; row++)
      for (let column = left; column <= right; column++) roles.set(`${row},${column}`, block.role);
  }
  const wide = new Map(template.merges.map((merge) => [merge.split(":")[0], areaOf(merge)]));
  // The example's line and the sentence are told in the caption; the legend is for the one who fills the sheet in.
  const leads = template.blocks.filter(
    ({ role, at }) => role === "text" && areaOf(at).left === 1 && areaOf(at).top <= 5,
  );
  const leadEnd = Math.max(1, ...leads.map((block) => areaOf(block.at).top));
  const foot = Math.min(
    ...template.blocks.filter(({ role }) => role === "source").map(({ at }) => areaOf(at).top - 1),
    Infinity,
  );
  const homes = Object.entries(template.places).flatMap(([name, address]) =>
    AT_HOME.test(name) ? [areaOf(address)] : [],
  );
  const charts = template.charts.map(({ area }) => areaOf(area));
  const rows: PageCell[][] = [];
  for (let row = leadEnd + 1; row < Math.min(foot, cells.length + 1); row++) {
    const line: PageCell[] = [];
    for (let column = 1; column <= last; column++) {
      const role = roles.get(`${row},${column}`) ?? "computed";
      const text = shown(cells[row - 1]?.[column - 1] ?? { value: null });
      const inChart = charts.some(
        (area) => row >= area.top && row <= area.bottom && column >= area.left && column <= area.right,
      );
      if (text === "" || isApart(role) || inChart || text.startsWith(LEGEND)) continue;
      const merge = wide.get(`${columnLetters(column)}${row}`) ?? areaFrom(`${columnLetters(column)}${row}`, 1, 1);
      const isNumber = typeof cells[row - 1]?.[column - 1]?.value === "number";
      line.push({ from: column - 1, to: Math.min(merge.right, last), text, role, isNumber });
    }
    for (const { left } of homes.filter(({ top }) => top === row)) {
      const figure = line.findIndex(({ from }) => from === left - 1);
      // With the label before it.
      if (figure >= 0) line.splice(Math.max(0, figure - 1), Math.min(2, figure + 1));
    }
    // Words run on over what is free to their right.
    rows.push(
      line.map((cell, i) =>
        cell.isNumber ? cell : { ...cell, to: Math.max(cell.to, Math.min(line[i + 1]?.from ?? last, last)) },
      ),
    );
  }
  // A heading over nothing says nothing.
  const said = rows.filter(
    (line, i) =>
      line.length > 0 &&
      (line.some(({ role }) => role !== "heading") ||
        (rows.slice(i + 1).find((next) => next.length > 0) ?? []).some(({ role }) => role !== "heading")),
  );
  const used = Math.max(
    1,
    ...said
      .flat()
      .map(({ isNumber, from, to, text }) => (isNumber ? to : Math.min(to, from + Math.ceil(text.length / 8)))),
  );
  return {
    widths: template.widths.slice(0, Math.min(last, used)),
    rows: said.slice(0, MOST),
    more: Math.max(0, said.length - MOST),
  };
};
