import { beside } from "./address";
import { f } from "./formula";
import { log } from "./log";
import { Cell, type Column } from "./names";
import { cell, together } from "./part";
import type { Region } from "./region";
import { says } from "./rules";
import { oneOf } from "./takes";

interface CheckListOptions {
  /** What the list is of. */
  readonly title: string;
  /** Columns of the marks and of the words; the words' cells are joined where that is asked for. */
  readonly wide: readonly [done: number, words: number];
  readonly joined?: boolean;
}

/** Things to be done with a mark before each, and under them how many are. */
export const checkList = (
  name: string,
  checks: readonly (readonly [done: "yes" | "no", words: string])[],
  { title, wide: [doneWide, wordsWide], joined = false }: CheckListOptions,
): Region & { readonly done: Column; readonly count: Cell } => {
  const list = log(name, checks.length, {
    done: {
      title: "Done",
      wide: doneWide,
      input: checks.map(([done]) => done),
      takes: oneOf("yes", "no"),
      rules: [says("no", "care", 1), says("yes", "good", 1)],
    },
    what: { title, wide: wordsWide, joined, label: checks.map(([, words]) => words) },
  });
  const { rows, columns, places, build } = list.region;
  const countAt = (at: string): string => beside(at, rows, doneWide);
  const count = f`IF(COUNTA(${list.done})=0,"",COUNTIF(${list.done},"yes")&" of ${checks.length} done")`;
  return {
    done: list.done,
    count: new Cell(`${name}.count`),
    region: {
      rows: rows + 1,
      columns,
      places: (at) => ({ ...places(at), [`${name}.count`]: countAt(at) }),
      build: (at) => together(build(at), cell(countAt(at), "computed", count)),
    },
  };
};
