import { cautions } from "../../../functions/cautions";
import { sources } from "../../../functions/sources";
import type { Sheet, Year } from "../sheet";
import { addressOf, areaOf, columnLetters, columnNumber, fixed } from "./address";
import { linesOf } from "./linesOf";
import { areaOfBlock, heading, text, together, type Part } from "./part";

export type About = Pick<Sheet, "key" | "name" | "sentence" | "cautions" | "sources" | "widths" | "printTo"> & {
  /** The columns of the caution block, at the top right, first and last. Running words keep to the left of it. */
  readonly cautionColumns: readonly [first: string, last: string];
  /** The last column of the sentence and the legend; where nothing is said, one column is left free beside the cautions. */
  readonly leadTo?: string;
  /** What the example is made of; `INVENTED` where nothing is said, null where the sheet has no example. */
  readonly example?: string | null;
  /** Says that headings stay in view in the row under the title. */
  readonly guide?: boolean;
  /** The first column of the foot; A where nothing is said. */
  readonly footColumn?: string;
  /** Says that its figures stand in the units of their sources, whatever its keeper works in. */
  readonly metricOnly?: true;
  /** Whole years that are pictured. */
  readonly years?: readonly Year[];
  /** More lines for the foot, such as the terms of data. */
  readonly foot?: readonly string[];
};

/** The row of the headings that stay in view, where a sheet has them; what follows the title begins below it. */
export const GUIDE = 2;
const belowTitle = ({ guide }: About): number => (guide ? GUIDE + 1 : GUIDE);

/** Begins every line that says what the example is: it goes when the example is cleared. */
export const EXAMPLE = "Example:";
export const INVENTED = `${EXAMPLE} invented animals and figures. Look, clear, fill in your own.`;
export const INVENTED_WITH_RECORDS = `${EXAMPLE} an invented animal; the station records are real, terms at the foot.`;
/** The line that says how a sheet is filled in. */
export const LEGEND = "Fill in the framed cells. Tinted ones may stay. The rest is worked out.";
const LINKED = `${LEGEND} Lilac: from another sheet, to be changed there.`;

const characters = (widths: readonly number[], first: number, last: number): number =>
  widths.slice(first - 1, last).reduce((sum, width) => sum + width, 0);

/** The two standing lines of the foot for each source: its status in words, and the text. */
const sourceLine = (key: About["sources"][number]): string => {
  const { status, text: words } = sources[key] as { readonly status: string; readonly text: string };
  return status === "recalled" ? `${words} (From memory.)` : words;
};

/** Words one under the other from a row on, and the first row after them. */
const stacked = (
  list: readonly string[],
  from: number,
  left: number,
  right: number,
  widths: readonly number[],
  role: "text" | "caution" | "source",
): { readonly part: Part; readonly next: number } => {
  const width = characters(widths, left, right);
  let row = from;
  const parts = list.map((words) => {
    const rows = linesOf(words, width);
    const part = text(`${columnLetters(left)}${row}`, words, rows, right - left + 1, role);
    row += rows;
    return part;
  });
  return { part: together(...parts), next: row };
};

/** The last row that the parts reach in the columns up to one, charts included. */
const lastRow = ({ blocks, charts, merges }: Required<Part>, until: number): number =>
  Math.max(
    ...[
      ...blocks.map(areaOfBlock),
      ...merges.map((merge) => areaOf(merge)),
      ...charts.map(({ area }) => areaOf(area)),
    ].flatMap(({ left, bottom }) => (left <= until ? [bottom] : [])),
  );

/** The last column of the running words under the title. */
const lastOfLead = ({ cautionColumns, leadTo }: About): number =>
  leadTo ? columnNumber(leadTo) : Math.max(1, columnNumber(cautionColumns[0]) - 2);

/** The sentence, the line about the example and the legend, under the title. */
export const leadOf = (about: About, hasLinks: boolean) => {
  const { sentence, example = INVENTED, widths } = about;
  const lines = [sentence, ...(example ? [example, hasLinks ? LINKED : LEGEND] : [])];
  return stacked(lines, belowTitle(about), 1, lastOfLead(about), widths, "text");
};

const neededFormula = (needed: Sheet["needed"]): string => {
  const blank = ({ at, unless }: Sheet["needed"][number]): string => {
    const range = fixed(at);
    const empty = at.includes(":") ? `COUNTBLANK(${range})=ROWS(${range})` : `${range}=""`;
    return unless ? `AND(${empty},NOT(${unless}))` : empty;
  };
  const named = ({ at, words }: Sheet["needed"][number]): string => {
    const first = fixed(at).replace(/:.*/, "");
    // The cell is named by where it stands now, should rows have been put in.
    return `"${words} ("&ADDRESS(ROW(${first}),COLUMN(${first}),4)&")"`;
  };
  return `=IF(OR(${needed.map(blank).join(",")}),"Still needed: "&TEXTJOIN(", ",TRUE,${needed
    .map((one) => `IF(${blank(one)},${named(one)},"")`)
    .join(",")})&".","")`;
};

/** The line under the legend that names what is still needed, as tall as it is at its longest; blank once all is there. */
export const neededOf = (about: About, needed: Sheet["needed"], hasLinks: boolean) => {
  const { next: row } = leadOf(about, hasLinks);
  if (needed.length === 0) return { part: {}, next: row };
  const last = lastOfLead(about);
  const longest = `Still needed: ${needed.map(({ words }) => `${words} (A00)`).join(", ")}.`;
  const rows = linesOf(longest, characters(about.widths, 1, last));
  const range = addressOf({ top: row, left: 1, bottom: row + rows - 1, right: last });
  return {
    part: together(text(`A${row}`, neededFormula(needed), rows, last), {
      rules: [{ range, when: `=LEN($A$${row})>0`, look: "note" }],
    }),
    next: row + rows,
  };
};

/** The caution block at the top right. */
export const warnedOf = (about: About) => {
  const { cautions: keys, cautionColumns, widths } = about;
  const [first, last] = cautionColumns.map(columnNumber) as [number, number];
  const words = keys.map((key) => cautions[key]);
  const { part, next } = stacked(words, belowTitle(about), first, last, widths, "caution");
  const title = heading(`${cautionColumns[0]}1`, "Cautions", ...Array<null>(last - first).fill(null));
  return { part: together(title, part), next };
};

/**
 * A sheet from its parts: adds the title, the sentence, the line about the example, the legend, the caution block at
 * the top right and the sources at the foot.
 */
export const assemble = (about: About, ...parts: readonly Part[]): Sheet => {
  const { key, name, sentence, cautions: cautionKeys, sources: sourceKeys, widths, cautionColumns } = about;
  const own = together(...parts);
  const body = together(
    { blocks: [{ at: "A1", role: "title", rows: [[name]] }] },
    leadOf(about, own.links.length > 0).part,
    neededOf(about, own.needed, own.links.length > 0).part,
    warnedOf(about).part,
    own,
  );
  const footColumn = about.footColumn ?? "A";
  const footEnd = columnNumber(cautionColumns[1]);
  const footRow = lastRow(body, footEnd) + 2;
  const foot = stacked(
    [...sourceKeys.map(sourceLine), ...(about.foot ?? [])],
    footRow + 1,
    columnNumber(footColumn),
    footEnd,
    widths,
    "source",
  );
  return {
    key,
    name,
    sentence,
    cautions: cautionKeys,
    sources: sourceKeys,
    widths,
    system: "metric",
    freeze: { rows: belowTitle(about) - 1, columns: 0 },
    places: {},
    ...(about.years ? { years: about.years } : {}),
    ...(about.printTo ? { printTo: about.printTo } : {}),
    ...together(body, heading(`${footColumn}${footRow}`, "Sources"), foot.part),
  };
};
