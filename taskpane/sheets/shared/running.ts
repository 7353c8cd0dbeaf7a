import type { Content } from "../sheet";
import { block } from "./address";
import { Cell } from "./names";
import { text, together } from "./part";
import { headingOver, type Region, type Rule } from "./region";

/** Running words over so many rows and columns, or the formula that finds them; `words.said` is their cell. */
export const words = (
  name: string,
  [rows, columns]: readonly [rows: number, columns: number],
  content: Content,
  rules: readonly Rule[] = [],
): Region & { readonly said: Cell } => {
  const said = new Cell(`${name}.said`);
  return {
    said,
    region: {
      rows,
      columns,
      places: (at) => ({ [`${name}.said`]: at }),
      build: (at) =>
        together(text(at, content, rows, columns), {
          rules: rules.map(({ look, when, over = columns }) => ({
            range: block(at, rows, over),
            when: when(said, {}),
            look,
          })),
        }),
    },
  };
};

/** A line of its own over what follows. */
export const title = (line: string, columns: number): Region => ({
  region: { rows: 1, columns, places: () => ({}), build: (at) => headingOver(at, line, columns) },
});
