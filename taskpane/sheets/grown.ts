import { addressOf, areaOf, type Area } from "./shared/address";
import type { Block, Sheet } from "./sheet";

/** Where rows are put in: before the last row of a log, so that whatever reads the log reads them too. */
export interface Growth {
  /** The log by its name: "log" of "log.mass". */
  readonly log: string;
  readonly rows: number;
}

const ADDRESS = /^\$?[A-Z]{1,3}\$?[1-9]\d*(:\$?[A-Z]{1,3}\$?[1-9]\d*)?$/;
/** A cell in a formula; no part of a name, of a function or of another sheet's reference. */
const CELL = /(?<![\p{L}\p{N}_.$!'])(\$?[A-Z]{1,3}\$?)([1-9]\d*)(?![\p{L}\p{N}_.(!])/gu;
const TEXTS = /("(?:[^"]|"")*")/;

const rowMoved = (row: number, from: number, by: number): number => (row >= from ? row + by : row);

/** An address after so many rows were put in before row `from`; a range across that row grows. */
const moved = (address: string, from: number, by: number): string =>
  address.replace(
    /([A-Z]+\$?)(\d+)/g,
    (_, letters: string, row: string) => `${letters}${rowMoved(Number(row), from, by)}`,
  );

/** The parts of a formula that are no text, each changed. */
const outsideTexts = (formula: string, change: (part: string) => string): string =>
  formula
    .split(TEXTS)
    .map((part, i) => (i % 2 === 0 ? change(part) : part))
    .join("");

/** A formula after so many rows were put in before row `from`. */
export const formulaMoved = (formula: string, from: number, by: number): string =>
  outsideTexts(formula, (part) =>
    part.replace(CELL, (_, letters: string, row: string) => `${letters}${rowMoved(Number(row), from, by)}`),
  );

/** A formula filled down by so many rows: rows without a dollar sign go along. */
const filledDown = (formula: string, by: number): string =>
  outsideTexts(formula, (part) =>
    part.replace(
      CELL,
      (_, letters: string, row: string) => `${letters}${letters.endsWith("$") ? row : Number(row) + by}`,
    ),
  );

/** Everything in a value that is an address or a formula, moved. */
const everything = <T>(value: T, from: number, by: number): T => {
  if (typeof value === "string") {
    if (ADDRESS.test(value)) return moved(value, from, by) as T;
    return (value.startsWith("=") ? formulaMoved(value, from, by) : value) as T;
  }
  if (Array.isArray(value)) return value.map((one: unknown) => everything(one, from, by)) as T;
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, everything(one, from, by)])) as T;
};

/** The rows of a log and the columns that it fills. */
export const areaOfLog = (sheet: Sheet, log: string): Area => {
  const columns = Object.entries(sheet.places)
    .filter(([name, address]) => name.startsWith(`${log}.`) && address.includes(":"))
    .map(([, address]) => areaOf(address));
  const [first] = columns;
  if (!first) throw new Error(`${sheet.key} has no log ${log}`);
  return {
    ...first,
    left: Math.min(...columns.map(({ left }) => left)),
    right: Math.max(...columns.map(({ right }) => right), first.right),
  };
};

const heightOf = ({ rows }: Block): number => rows.length;

/** The blocks of a sheet that has grown before row `from`: those of the log have their formulas in the new rows too. */
const blocksGrown = (blocks: readonly Block[], log: Area, from: number, by: number): readonly Block[] =>
  blocks.flatMap((block): readonly Block[] => {
    const at = areaOf(block.at);
    const area = { ...at, bottom: at.top + heightOf(block) - 1 };
    const own = everything(block, from, by);
    const isInLog = at.left >= log.left && at.left <= log.right && area.top >= log.top && area.bottom <= log.bottom;
    const across = (size: readonly [number, number] | undefined): readonly [number, number] | undefined =>
      size && at.top < from && at.top + size[0] > from ? [size[0] + by, size[1]] : size;
    const [spills, room] = [across(block.spills), across(block.room)];
    const grown: Block = {
      ...own,
      ...(spills ? { spills } : {}),
      ...(room ? { room } : {}),
    };
    // A row of its own just above the new ones is repeated in each of them.
    if (isInLog && heightOf(block) === 1 && at.top === from - 1 && !(block.spills && block.spills[0] > 1)) {
      return [
        grown,
        ...Array.from({ length: by }, (_, i): Block => ({
          ...block,
          at: addressOf({ ...at, top: at.top + i + 1, bottom: at.top + i + 1 }),
          rows: own.rows.map((row) => row.map((content) => repeated(block, content, i + 1))),
        })),
      ];
    }
    if (area.top >= from || area.bottom < from) return [grown];
    const above = own.rows[from - 1 - at.top] ?? [];
    const more = Array.from({ length: by }, (_, i) => above.map((content) => repeated(block, content, i + 1)));
    const rows = [...own.rows.slice(0, from - at.top), ...more, ...own.rows.slice(from - at.top)];
    return [{ ...grown, rows }];
  });

/** What a new row holds of the row above it: its formulas filled down, and what is settled; an input starts blank. */
const repeated = ({ role }: Block, content: Block["rows"][number][number], down: number) => {
  if (typeof content === "string" && content.startsWith("=")) return filledDown(content, down);
  return role === "input" ? null : content;
};

/** A sheet whose log has so many rows more, put in before its last. */
export const grown = (sheet: Sheet, { log, rows }: Growth): Sheet => {
  if (rows === 0) return sheet;
  const area = areaOfLog(sheet, log);
  const from = area.bottom;
  const { blocks, merges, lines, ...rest } = sheet;
  const above = from - 1;
  const inRowAbove = merges.filter((merge) => {
    const { top, bottom, left } = areaOf(merge);
    return top === above && bottom === above && left >= area.left && left <= area.right;
  });
  const more = Array.from({ length: rows }, (_, i) => i + 1);
  return {
    ...everything(rest, from, rows),
    blocks: blocksGrown(blocks, area, from, rows),
    merges: [
      ...everything(merges, from, rows),
      ...more.flatMap((down) => inRowAbove.map((merge) => filledDown(merge, down))),
    ],
    lines: [
      ...lines.map((line) => ({ ...line, row: rowMoved(line.row, from, rows) })),
      ...more.flatMap((down) =>
        lines.filter(({ row }) => row === above).map((line) => ({ ...line, row: line.row + down })),
      ),
    ],
  };
};
