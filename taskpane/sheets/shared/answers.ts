import type { Content, Format } from "../sheet";
import { beside, block } from "./address";
import { Cell } from "./names";
import { labels, spilled, together } from "./part";
import { headingOver, measured, type Region, type Rule } from "./region";

interface Answer {
  readonly label: string;
  /** The unit of the figure, where its label does not name it. */
  readonly measures?: string;
  readonly format?: Format;
  readonly rules?: readonly Rule[];
}

interface AnswersOptions {
  /** Columns from label to figure. */
  readonly across?: number;
  /** Of all figures but those that have their own. */
  readonly format?: Format;
  /** Stands on the heading. */
  readonly note?: string;
}

/** Labelled figures, one under the other, that one formula answers; each by its name. */
export const answers = <K extends string>(
  name: string,
  title: string | readonly Content[],
  formula: string,
  lines: Readonly<Record<K, string | Answer>>,
  { across = 1, format, note }: AnswersOptions = {},
): Region & Readonly<Record<K, Cell>> => {
  const list = Object.entries<string | Answer>(lines).map(
    ([key, line]) => [key, typeof line === "string" ? { label: line } : line] as const,
  );
  const own = Object.fromEntries(list.map(([key]) => [key, new Cell(`${name}.${key}`)])) as Record<K, Cell>;
  return Object.assign(own, {
    region: {
      rows: list.length + 1,
      columns: across + 1,
      places: (at: string) => Object.fromEntries(list.map(([key], i) => [`${name}.${key}`, beside(at, i + 1, across)])),
      build: (at: string) =>
        together(
          headingOver(at, title, across + 1),
          note ? { notes: [{ at, text: note }] } : {},
          labels(
            beside(at, 1, 0),
            list.map(([, { label }]) => label),
            across,
          ),
          spilled(beside(at, 1, across), formula, [list.length, 1], format),
          ...list.map(([, line], i) => measured(beside(at, i + 1, across), 1, line.label, line)),
          ...list.map(([key, line], i) => ({
            formats: line.format ? [{ range: beside(at, i + 1, across), format: line.format }] : [],
            rules: (line.rules ?? []).map(({ look, when, over = across + 1 }) => ({
              range: block(beside(at, i + 1, 0), 1, over),
              when: when(own[key as K], own),
              look,
            })),
          })),
        ),
    },
  });
};
