import type { AnyDefinition, Column, Parameter } from "./define";

/** What a definition says for its reader alone: nothing is calculated with it, and no message is made of it. */
export interface ReadersWords extends Pick<AnyDefinition, "summary" | "examples"> {
  readonly parameters: readonly Pick<Parameter, "about" | "without">[];
  readonly columns: readonly Column["about"][];
}

/** Where they stand in a definition: its own fields, those of its parts, and the arguments of what makes a parameter. */
export const places = {
  ofDefinition: ["summary", "examples"],
  ofParts: ["about", "without"],
  ofMakers: {
    quantity: 1,
    count: 1,
    date: 0,
    moment: 0,
    choice: 0,
    text: 0,
    anything: 0,
    optional: 1,
    months: 1,
    monthlyValues: 0,
    rows: 0,
    plan: 0,
    cell: 1,
    list: 1,
  },
} as const satisfies {
  readonly ofDefinition: readonly (keyof AnyDefinition)[];
  readonly ofParts: readonly (keyof Parameter)[];
  readonly ofMakers: Readonly<Record<string, number>>;
};

export const wordsOf = ({ summary, examples, parameters, result }: AnyDefinition): ReadersWords => ({
  summary,
  examples,
  parameters: Object.values(parameters).map(({ about, without }) => ({
    about,
    ...(without === undefined ? {} : { without }),
  })),
  columns: result.columns.map(({ about }) => about),
});

/** A definition with its words put back. */
export const withWords = (definition: AnyDefinition, { parameters, columns, ...own }: ReadersWords): AnyDefinition => {
  const { result } = definition;
  return {
    ...definition,
    ...own,
    parameters: Object.fromEntries(
      Object.entries(definition.parameters).map(([name, parameter], i) => [name, { ...parameter, ...parameters[i] }]),
    ),
    result: { ...result, columns: result.columns.map((column, i) => ({ ...column, about: columns[i] ?? "" })) },
  } as AnyDefinition;
};
