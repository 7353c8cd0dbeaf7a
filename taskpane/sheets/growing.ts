import { areaOf } from "../actions/place";
import { areaOfLog, grown } from "./grown";
import type { Sheet } from "./sheet";

/** A log by its name, and behind it what is as long, stands further down and grows with it. */
export type GrowingLog = readonly [log: string, ...rest: string[]];

/** The logs and lists of each sheet that can be made longer, the one that a keeper fills most first. */
export const growing: Readonly<Record<string, readonly [GrowingLog, ...GrowingLog[]]>> = {
  animals: [["list"], ["fed"]],
  feedingLog: [["log"], ["who"]],
  weights: [["log", "picked"], ["side"]],
  stationShortlist: [["own", "ranked"]],
  winterLog: [["log"]],
  breedingSeason: [["pairings"], ["clutches"], ["animals", "lines"]],
  incubation: [["log"], ["clutches"]],
  hatchlings: [["log"]],
  preyStock: [["log"], ["eaters"], ["sizes"]],
  aboutThisWorkbook: [["stations"]],
};

/** A sheet of which one log is longer by so many rows, with what grows with it. */
export const longer = (sheet: Sheet, own: GrowingLog, rows: number): Sheet => grown(sheet, { logs: own, rows });

/** The words that a template has below its log, by which it is seen where they stand now; counted from 0. */
const wordsBelow = (template: Sheet, log: string) => {
  const { bottom } = areaOfLog(template, log);
  const words = template.blocks.flatMap(({ at, role, rows }) => {
    const text = rows[0]?.[0];
    const area = areaOf(at);
    // What is said under a log may be typed over.
    const isFixed =
      (role === "heading" || role === "label") && typeof text === "string" && text !== "" && !text.startsWith("=");
    return area && isFixed && area.row >= bottom ? [{ row: area.row, column: area.column, text }] : [];
  });
  return words.sort((one, other) => one.row - other.row)[0];
};

/** How many rows a log has more than in the template; 0 where that cannot be seen. */
const rowsMore = (
  template: Sheet,
  [log]: GrowingLog,
  at: (row: number, column: number) => unknown,
  rows: number,
): number => {
  const mark = wordsBelow(template, log);
  if (!mark) return 0;
  for (let row = mark.row; row < rows; row++) {
    if (at(row, mark.column) === mark.text) return row - mark.row;
  }
  return 0;
};

/** The template as it stands on a sheet of so many rows, whose logs may have been made longer. */
export const asItStands = (template: Sheet, at: (row: number, column: number) => unknown, rows: number): Sheet => {
  // From the top down: a log that is longer moves those below it.
  const topOf = ([log]: GrowingLog): number => areaOfLog(template, log).top;
  const downwards = [...(growing[template.key] ?? [])].sort((one, other) => topOf(one) - topOf(other));
  return downwards.reduce((sheet, own) => {
    const more = rowsMore(sheet, own, at, rows);
    return more === 0 ? sheet : longer(sheet, own, more);
  }, template);
};
