import { column, defineFunction, list, optional, quantity } from "../define";
import { EntryProblem, type Problem, notAvailable, notUsable } from "../problem";
import { BODY_MASS } from "../shared/limits";

const LENGTH = [0.1, 20_000] as const;
/** Around 3, the exponent of bodies of one shape, with room for every group of animals that was measured well. */
const EXPONENT = [0.5, 8] as const;

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** ln of each value as a multiple of the first: values that are all the same are exactly 0, without rounding. */
const logs = (values: readonly number[]): readonly number[] =>
  values.map((value) => Math.log(value / (values[0] as number)));

/** Sum of the products of deviations from the means; the mean of y may stay, as the deviations of x sum to 0. */
const products = (x: readonly number[], y: readonly number[]): number => {
  const x0 = mean(x);
  return x.reduce((sum, value, i) => sum + (value - x0) * (y[i] as number), 0);
};

/**
 * Below so many animals the slope is a matter of chance (of three, from below 2.4 to above 4.5 where 3 is true, as the tests simulate it), and bodies of one shape
 * are taken instead.
 */
const ENOUGH_ANIMALS = 10;
const ONE_SHAPE = 3;

/** The slope of the standardised major axis of ln mass on ln length: the ratio of their standard deviations. */
const majorAxisSlope = (masses: readonly number[], lengths: readonly number[]): number | Problem => {
  if (masses.length < 3)
    return notAvailable(`masses holds ${masses.length} with a length: give three or more, or an exponent`);
  if (masses.length < ENOUGH_ANIMALS) return ONE_SHAPE;
  const [m, l] = [logs(masses), logs(lengths)];
  const slope = Math.sqrt(products(m, m) / products(l, l));
  const rises = products(m, l) > 0;
  return rises && slope >= EXPONENT[0] && slope <= EXPONENT[1]
    ? slope
    : notUsable(
        `masses holds ${masses.length} animals whose mass does not rise with length as bodies do: give animals of more different lengths, or an exponent`,
      );
};

/**
 * Each mass as it would be at the reference length: M · (reference / length)^exponent. Rows without mass and length
 * answer an empty cell; a row with only one of them says which is blank. Neither counts for the mean or the exponent.
 */
export const scaledMass = defineFunction({
  name: "SCALEDMASS",
  summary: "Scaled mass index: each animal's mass as it would be at one reference length, to compare condition.",
  parameters: {
    masses: column(quantity("gram", "Body mass of each animal", BODY_MASS), { blank: "keep" }),
    lengths: column(quantity("length", "Length of each, all measured in one way and one unit", LENGTH), {
      blank: "keep",
    }),
    reference: optional(quantity("length", "Length to which all are scaled", LENGTH), "the mean length"),
    exponent: optional(
      quantity("none", "Exponent of mass on length", EXPONENT),
      "3; from ten animals up, the standardised major axis slope of them",
    ),
  },
  result: list("gram", "Scaled mass of each animal", "masses"),
  sources: ["peigGreen"],
  cautions: ["narrowLengths", "noVet"],
  examples: [
    {
      given: [[[200], [250], [300]], [[800], [900], [1000]], 900, 3],
      gives: [[284.766], [250], [218.7]],
      within: 0.001,
    },
  ],
  calculate({ masses, lengths, reference, exponent }) {
    if (masses.length !== lengths.length) {
      return notUsable(`masses holds ${masses.length} cells and lengths ${lengths.length}: give as many of each`);
    }
    const measured = masses.flatMap((mass, i) => {
      const length = lengths[i];
      return mass === undefined || length === undefined ? [] : [{ mass, length }];
    });
    const known = measured.map(({ length }) => length);
    const slope =
      exponent ??
      majorAxisSlope(
        measured.map(({ mass }) => mass),
        known,
      );
    if (typeof slope !== "number") return slope;
    const common = reference ?? mean(known);
    return masses.map((mass, i) => {
      const length = lengths[i];
      if (mass === undefined && length === undefined) return "";
      if (mass === undefined) return new EntryProblem("#N/A", "masses", i, "is blank");
      if (length === undefined) return new EntryProblem("#N/A", "lengths", i, "is blank");
      return mass * (common / length) ** slope;
    });
  },
});
