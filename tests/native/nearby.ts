import fc from "fast-check";
import { serialOfIso } from "../../functions/dates";
import type { AnyDefinition, CellParameter, Parameter } from "../../functions/define";
import { cellWithin, parametersOf, rangeWithin, type Raw } from "../properties/arbitraries";

/**
 * Calls near a function's own examples: the figures of an animal and of its box, and dates that have to do with one another.
 * Figures from anywhere inside the limits are mostly refused together, or lie on one side of every limit.
 */

const isBlock = (raw: unknown): raw is readonly (readonly unknown[])[] => Array.isArray(raw);
const serialIn = (value: unknown): unknown => (typeof value === "string" ? (serialOfIso(value) ?? value) : value);

const held = ({ limits, kind }: CellParameter, value: number): number => {
  const whole = kind === "count" ? Math.round(value) : value;
  return limits ? Math.min(Math.max(whole, limits.least), limits.most) : whole;
};

/** A cell of an example, or one near it. */
const cellNear = (parameter: CellParameter, value: unknown): fc.Arbitrary<Raw> => {
  const { kind } = parameter;
  const own = serialIn(value);
  if (typeof own !== "number") return fc.oneof(fc.constant(own), cellWithin(parameter));
  const by = (least: number, most: number): fc.Arbitrary<Raw> =>
    fc.integer({ min: least, max: most }).map((step) => held(parameter, own + step));
  if (kind === "date") return fc.oneof(by(-8, 8), by(-40, 40));
  if (kind === "count") return by(-4, 4);
  // In hundredths, as a keeper types them, and near 1 as often as a rule of shares has its limit there.
  const near = fc.integer({ min: 50, max: 200 }).map((share) => held(parameter, (own * share) / 100));
  return fc.oneof(fc.constant(own), near, by(-3, 3));
};

const rangeNear = (parameter: Parameter, block: readonly (readonly unknown[])[]): fc.Arbitrary<Raw> => {
  const cells = block.map((row) => row.map(serialIn));
  if (parameter.reads === "cell") return fc.constant(cells);
  const [, first] = parameter.columns[0] as readonly [string, CellParameter];
  // A plan, or a list, moves as a whole: its order and its rows stay.
  const isDates = first.kind === "date" || parameter.kind === "plan";
  return fc
    .oneof(fc.integer({ min: -8, max: 8 }), fc.integer({ min: -40, max: 40 }))
    .map((step) =>
      cells.map((row) =>
        row.map((cell) => (typeof cell === "number" ? (isDates ? cell + step : held(first, cell + step / 10)) : cell)),
      ),
    );
};

const near = (parameter: Parameter, given: unknown): fc.Arbitrary<Raw> => {
  const isGiven = given !== undefined && given !== null;
  const anything = parameter.reads === "cell" ? cellWithin(parameter) : rangeWithin(parameter);
  const one = !isGiven
    ? anything
    : parameter.reads === "cell"
      ? cellNear(parameter, isBlock(given) ? given[0]?.[0] : given)
      : rangeNear(parameter, given as readonly (readonly unknown[])[]);
  return parameter.optional ? fc.option(one, { nil: null, freq: 2 }) : one;
};

/** The arguments of a call near one of the examples; of the optional ones some are left out, whether the example has them or not. */
export const argumentsNear = (definition: AnyDefinition): fc.Arbitrary<Raw[]> => {
  const { examples } = definition;
  const elsewhere = (i: number): unknown => examples.find(({ given }) => (given[i] ?? null) !== null)?.given[i];
  return fc.oneof(
    ...examples.map(({ given }) =>
      fc.tuple(...parametersOf(definition).map(([, parameter], i) => near(parameter, given[i] ?? elsewhere(i)))),
    ),
  );
};
