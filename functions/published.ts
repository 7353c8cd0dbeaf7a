import type { AnyDefinition } from "./define";

/** A function as the workbooks of keepers hold it: its name and the order of its arguments and columns never change. */
export interface Published {
  readonly name: string;
  /** The version of the add-in in which it first stood. */
  readonly since: string;
  readonly arguments: readonly string[];
  readonly columns: readonly string[];
}

const begins = (longer: readonly string[], shorter: readonly string[]): boolean =>
  shorter.every((word, i) => longer[i] === word);

/**
 * The published list with what the catalogue has come to hold since: a function, or an argument or a column behind the
 * others. Throws where something published is gone, renamed or in another place.
 */
export const appended = (
  published: readonly Published[],
  catalogue: readonly AnyDefinition[],
  version: string,
): readonly Published[] => {
  const now = catalogue.map((definition) => ({
    name: definition.name,
    since: published.find(({ name }) => name === definition.name)?.since ?? version,
    arguments: Object.keys(definition.parameters as object),
    columns: definition.result.columns.map(({ name }) => name),
  }));
  for (const before of published) {
    const after = now.find(({ name }) => name === before.name);
    if (!after) throw new Error(`${before.name} is published: workbooks hold it, so it stays`);
    for (const what of ["arguments", "columns"] as const) {
      if (!begins(after[what], before[what])) {
        throw new Error(
          `${before.name} is published with the ${what} ${before[what].join(", ")}: only append, not ${after[what].join(", ")}`,
        );
      }
    }
  }
  return now;
};
