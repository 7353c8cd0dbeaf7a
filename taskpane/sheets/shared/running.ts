import type { Content } from "../sheet";
import { beside, block } from "./address";
import { Cell } from "./names";
import { text, together } from "./part";
import { headingOver, type Region, type Rule } from "./region";

/** Running words over so many rows and columns, or the formula that finds them, under a title where there is one; `words.said` is their cell. */
export const words = (
  name: string,
  [rows, columns]: readonly [rows: number, columns: number],
  content: Content,
  { title, rules = [] }: { readonly title?: string; readonly rules?: readonly Rule[] } = {},
): Region & { readonly said: Cell } => {
  const said = new Cell(`${name}.said`);
  const top = title === undefined ? 0 : 1;
  return {
    said,
    region: {
      rows: top + rows,
      columns,
      places: (at) => ({ [`${name}.said`]: beside(at, top, 0) }),
      build: (at) =>
        together(
          title === undefined ? {} : headingOver(at, title, columns),
          text(beside(at, top, 0), content, rows, columns),
          {
            rules: rules.map(({ look, when, over = columns }) => ({
              range: block(beside(at, top, 0), rows, over),
              when: when(said, {}),
              look,
            })),
          },
        ),
    },
  };
};

/** A line of its own over what follows. */
export const title = (line: string, columns: number): Region => ({
  region: { rows: 1, columns, places: () => ({}), build: (at) => headingOver(at, line, columns) },
});
