import { areaOf } from "../actions/place";
import { areaOfLog, grown } from "./grown";
import type { Sheet } from "./sheet";

/** The log that a keeper fills on each sheet, by its name, and behind it what is as long and grows with it. */
export const growing: Readonly<Record<string, readonly [log: string, ...rest: string[]]>> = {
  animals: ["fed"],
  feedingLog: ["log"],
  weights: ["log", "picked"],
  winterLog: ["log"],
  breedingSeason: ["pairings"],
  incubation: ["log"],
  hatchlings: ["log"],
  preyStock: ["log"],
};

/** A sheet whose log is longer by so many rows. */
export const longer = (sheet: Sheet, rows: number): Sheet =>
  (growing[sheet.key] ?? []).reduce((one, log) => grown(one, { log, rows }), sheet);

/** The words that a template has below its log, by which it is seen where they stand now; counted from 0. */
const wordsBelow = (template: Sheet, log: string) => {
  const { bottom } = areaOfLog(template, log);
  const words = template.blocks.flatMap(({ at, role, rows }) => {
    const text = rows[0]?.[0];
    const area = areaOf(at);
    const isFixed = role !== "input" && typeof text === "string" && text !== "" && !text.startsWith("=");
    return area && isFixed && area.row >= bottom ? [{ row: area.row, column: area.column, text }] : [];
  });
  return words.sort((one, other) => one.row - other.row)[0];
};

/** The template as it stands on a sheet of so many rows, whose log may have been made longer. */
export const asItStands = (template: Sheet, at: (row: number, column: number) => unknown, rows: number): Sheet => {
  const [log] = growing[template.key] ?? [];
  const mark = log === undefined ? undefined : wordsBelow(template, log);
  if (!mark || at(mark.row, mark.column) === mark.text) return template;
  for (let row = mark.row + 1; row < rows; row++) {
    if (at(row, mark.column) === mark.text) return longer(template, row - mark.row);
  }
  return template;
};
