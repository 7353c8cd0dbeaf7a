import { addressOf, areaOf, type Area } from "./shared/address";
import type { Block, Content, Sheet } from "./sheet";

/** Rows are put in before the last row of a log, so that whatever reads the log reads them too. */
export interface Growth {
  /** The logs by their names, "log" of "log.mass"; several that are as long and read one another row by row. */
  readonly logs: readonly string[];
  readonly rows: number;
}

const ADDRESS = /^\$?[A-Z]{1,3}\$?[1-9]\d*(:\$?[A-Z]{1,3}\$?[1-9]\d*)?$/;
/** A cell in a formula; no part of a name, of a function or of another sheet's reference, nor where that ends. */
const CELL = /(?<![\p{L}\p{N}_.$!'])(?<!!\$?[A-Z]{1,3}\$?\d+:)(\$?[A-Z]{1,3}\$?)([1-9]\d*)(?![\p{L}\p{N}_.(!])/gu;
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

/** A sheet with so many blank rows more before row `from`. */
const opened = (sheet: Sheet, from: number, by: number): Sheet => {
  const { blocks, lines, ...rest } = sheet;
  return {
    ...everything(rest, from, by),
    blocks: blocks.map((block): Block => {
      const own = everything(block, from, by);
      const { top } = areaOf(block.at);
      const across = (size: readonly [number, number] | undefined): readonly [number, number] | undefined =>
        size && top < from && top + size[0] > from ? [size[0] + by, size[1]] : size;
      const [spills, room] = [across(block.spills), across(block.room)];
      const above = top < from && top + heightOf(block) > from ? own.rows[from - 1 - top] : undefined;
      const news = above ? Array.from({ length: by }, () => above.map(() => null)) : [];
      return {
        ...own,
        rows: above ? [...own.rows.slice(0, from - top), ...news, ...own.rows.slice(from - top)] : own.rows,
        ...(spills ? { spills } : {}),
        ...(room ? { room } : {}),
      };
    }),
    lines: lines.map((line) => ({ ...line, row: rowMoved(line.row, from, by) })),
  };
};

/** What a new row holds of the row above it: its formulas filled down, and what is settled; an input starts blank. */
const repeated = ({ role }: Block, content: Content, down: number): Content => {
  if (typeof content === "string" && content.startsWith("=")) return filledDown(content, down);
  return role === "input" ? null : content;
};

/** From top to bottom, the same whichever log was made longer first. */
const downwards = (addresses: readonly string[]): readonly string[] =>
  [...addresses].sort((one, other) => {
    const [a, b] = [areaOf(one), areaOf(other)];
    return a.top - b.top || a.left - b.left;
  });

/** A sheet whose log repeats row `above` in so many rows below it. */
const repeating = (sheet: Sheet, log: Area, above: number, by: number): Sheet => {
  const downs = Array.from({ length: by }, (_, i) => i + 1);
  const isInLog = ({ top, left, bottom }: Area): boolean =>
    left >= log.left && left <= log.right && top >= log.top && bottom <= log.bottom;
  return {
    ...sheet,
    blocks: sheet.blocks.flatMap((block): readonly Block[] => {
      const at = areaOf(block.at);
      if (!isInLog({ ...at, bottom: at.top + heightOf(block) - 1 })) return [block];
      const row = block.rows[above - at.top];
      if (!row) return [block];
      const repeatedBy = (down: number) => row.map((content) => repeated(block, content, down));
      if (heightOf(block) > 1) {
        const rows = block.rows.map((one, i) =>
          i > above - at.top && i <= above - at.top + by ? repeatedBy(i - above + at.top) : one,
        );
        return [{ ...block, rows }];
      }
      // A row of its own is repeated as such; one formula for the whole column has grown.
      if (block.spills && block.spills[0] > 1) return [block];
      return [
        block,
        ...downs.map((down): Block => ({
          ...block,
          at: addressOf({ ...at, top: at.top + down, bottom: at.top + down }),
          rows: [repeatedBy(down)],
        })),
      ];
    }),
    merges: downwards([
      ...sheet.merges,
      ...downs.flatMap((down) =>
        sheet.merges
          .filter((merge) => {
            const area = areaOf(merge);
            return area.top === above && area.bottom === above && isInLog(area);
          })
          .map((merge) => filledDown(merge, down)),
      ),
    ]),
    lines: [
      ...sheet.lines,
      ...downs.flatMap((down) =>
        sheet.lines.filter(({ row }) => row === above).map((line) => ({ ...line, row: line.row + down })),
      ),
    ],
  };
};

/** A sheet whose logs have so many rows more, put in before their last. */
export const grown = (sheet: Sheet, { logs, rows }: Growth): Sheet => {
  if (rows === 0) return sheet;
  // All are opened before any is filled: what reads another row by row finds its rows in their places.
  const open = logs.reduce((one, log) => opened(one, areaOfLog(one, log).bottom, rows), sheet);
  return logs.reduce((one, log) => {
    const area = areaOfLog(one, log);
    return repeating(one, area, area.bottom - rows - 1, rows);
  }, open);
};
