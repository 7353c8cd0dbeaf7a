import { Cell, Column } from "./names";

/**
 * A formula as it is read; cells and columns in it are named. Three ways to write one, by what a blank does to it. A
 * blank is never 0: old builds hand a function 0 for a blank cell, and every formula has to say what it makes of one.
 */

const asWritten = (strings: TemplateStringsArray, values: readonly unknown[]): string =>
  strings.reduce((text, part, i) => text + String(values[i - 1]) + part);

const guard = (tests: readonly string[], formula: string): string =>
  tests.length === 0 ? `=${formula}` : `=IF(OR(${tests.join(",")}),"",${formula})`;

const uniqueTokens = (values: readonly unknown[], kind: typeof Cell | typeof Column): readonly string[] => [
  ...new Set(values.filter((one) => one instanceof kind).map(String)),
];

/** As it is written; what a blank does is part of the words. */
export const f = (strings: TemplateStringsArray, ...values: readonly unknown[]): string =>
  `=${asWritten(strings, values)}`;

/**
 * Empty while a cell that the formula names by itself, or the first of a column that it names, is blank or shows nothing.
 * Errors of the cells pass through. OR stands around a single cell too: it makes one answer of it, where some engines
 * would make a column.
 */
export const once = (strings: TemplateStringsArray, ...values: readonly unknown[]): string =>
  guard(
    uniqueTokens(
      values.map((one) => (one instanceof Column ? one.at(1) : one)),
      Cell,
    ).map((cell) => `${cell}=""`),
    asWritten(strings, values),
  );

/**
 * One formula for a whole column, line by line: empty while a named cell or all of a named column is blank, and in the
 * lines where the cell of a named column is.
 */
export const eachLine = (strings: TemplateStringsArray, ...values: readonly unknown[]): string => {
  const columns = uniqueTokens(values, Column);
  const blank = columns.map((column) => `${column}=""`);
  const lines = blank.length === 1 ? blank[0] : blank.map((test) => `(${test})`).join("+");
  return guard(
    [...columns.map((column) => `COUNTA(${column})=0`), ...uniqueTokens(values, Cell).map((cell) => `${cell}=""`)],
    `IF(${lines},"",${asWritten(strings, values)})`,
  );
};
