import fc from "fast-check";
import { FIRST_DAY, LAST_DAY } from "../../functions/dates";
import { outcomeWords } from "../../functions/feeding/shared/outcomes";
import {
  namesOf,
  type AnyDefinition,
  type CellParameter,
  type Parameter,
  type RangeParameter,
} from "../../functions/define";

/** What a sheet hands over as one argument: a cell, or a block of cells. */
export type Raw = unknown;

/** Days that a keeper plans with: twenty years, so that lists of dates come near one another. */
const someDay = fc.integer({ min: 40_000, max: 47_300 });

/** One cell of a parameter, inside its declared limits. */
export const cellWithin = (parameter: CellParameter): fc.Arbitrary<Raw> => {
  const { kind, words, limits } = parameter;
  const word = words ? [fc.constantFrom(...words)] : [];
  switch (kind) {
    case "quantity":
      return fc.oneof(
        fc.double({ min: limits?.least ?? -1e9, max: limits?.most ?? 1e9, noNaN: true }),
        fc.constantFrom(limits?.least ?? 0, limits?.most ?? 0),
        ...word,
      );
    case "count":
      return fc.integer({ min: Math.max(limits?.least ?? 0, -1e6), max: Math.min(limits?.most ?? 1e6, 1e6) });
    case "date":
      return fc.oneof(
        { weight: 4, arbitrary: someDay },
        { weight: 1, arbitrary: fc.constantFrom(FIRST_DAY, LAST_DAY, 59_000.5) },
      );
    case "choice":
    case "units":
      return fc.constantFrom(...(words ?? []));
    case "text":
      return fc.string({ minLength: 1 }).filter((text) => text.trim() !== "");
    case "anything":
      return fc.oneof(
        fc.boolean(),
        fc.integer(),
        fc.string({ minLength: 1 }),
        fc.constantFrom(...Object.values(outcomeWords).flat()),
      );
  }
};

/** A range of a parameter, inside its declared limits: a column, or rows. */
export const rangeWithin = (parameter: RangeParameter): fc.Arbitrary<Raw> => {
  const row = fc.tuple(...parameter.columns.map(([, cell]) => cellWithin(cell)));
  const [least, most] = parameter.length === undefined ? [1, 24] : [parameter.length, parameter.length];
  const rows = fc.array(row, { minLength: least, maxLength: most });
  if (parameter.kind === "plan") {
    // In order most of the time, as plans are; out of order now and then, as slips are.
    const sorted = fc
      .tuple(someDay, fc.array(fc.integer({ min: 0, max: 120 }), { minLength: 5, maxLength: 5 }))
      .map(([first, steps]) =>
        [0, ...steps].map((_, i) => [first + steps.slice(0, i).reduce((sum, step) => sum + step, 0)]),
      );
    return fc.oneof({ weight: 4, arbitrary: sorted }, { weight: 1, arbitrary: rows });
  }
  return rows;
};

export const parametersOf = (definition: AnyDefinition): readonly (readonly [string, Parameter])[] =>
  Object.entries(definition.parameters);

/** Whether a parameter is one of the two that make a long table of a function's lists. */
export const isOfLongTable = ({ forEach }: AnyDefinition, name: string): boolean =>
  forEach !== undefined && namesOf(forEach).includes(name);

/** Names of a long table, as a keeper's fingers spell them. */
const someName = fc.constantFrom("Ash", "ash ", "Birch", "BIRCH");

/** The two arguments of a long table: both or neither. A cell that becomes a column beside it cannot be filled here. */
const longTable = (definition: AnyDefinition): fc.Arbitrary<Raw[]> => {
  if (!definition.forEach) return fc.constant([]);
  const neither = fc.constant<Raw[]>([null, null]);
  if (parametersOf(definition).some(([, parameter]) => parameter.reads === "cell" && parameter.latest)) return neither;
  const names = fc.array(
    someName.map((name) => [name]),
    { minLength: 1, maxLength: 24 },
  );
  return fc.oneof(
    neither,
    names.chain((rows) => fc.tuple(fc.constant(rows), fc.constantFrom(...rows.map(([name]) => name)))),
  );
};

/** The arguments of one call, all inside their limits; optional ones are left out now and then. Lists of one call are of one length. */
export const argumentsWithin = (definition: AnyDefinition): fc.Arbitrary<Raw[]> =>
  fc
    .tuple(
      fc.integer({ min: 1, max: 24 }),
      longTable(definition),
      ...parametersOf(definition)
        .filter(([name]) => !isOfLongTable(definition, name))
        .map(([, parameter]) => {
          const one = parameter.reads === "cell" ? cellWithin(parameter) : rangeWithin(parameter);
          return parameter.optional ? fc.option(one, { nil: null }) : one;
        }),
    )
    .map(([length, pair, ...values]) => {
      const at = parametersOf(definition).findIndex(([name]) => isOfLongTable(definition, name));
      return values.toSpliced(at < 0 ? values.length : at, 0, ...pair).map((value, i) => {
        const parameter = parametersOf(definition)[i]?.[1];
        if (parameter?.reads !== "range" || parameter.length !== undefined || !Array.isArray(value)) return value;
        return Array.from({ length: length }, (_, row) => (value as unknown[])[row % value.length]);
      });
    });
