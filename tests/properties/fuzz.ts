import fc from "fast-check";
import { SheetError } from "../../addin/boundary/cell";
import { evaluate } from "../../addin/boundary/evaluate";
import { catalogue } from "../../functions/catalogue";
import { argumentsWithin, parametersOf } from "./arbitraries";
import { wrongWith } from "./wrong";

/** What no keeper types, and some host some day hands over. */
const hostileCell = fc.oneof(
  fc.constantFrom<unknown>(
    0,
    -0,
    1e308,
    -1e308,
    5e-324,
    NaN,
    Infinity,
    -Infinity,
    60,
    60.999,
    61,
    2_958_465,
    2_958_466,
    2 ** 53,
    1e21,
    null,
    undefined,
    "",
    " ",
    "\u00a0",
    "\t",
    "0",
    "-0",
    "1e400",
    "0x10",
    "1,5",
    "1 000",
    "٣",
    "１２",
    "½",
    "=1+1",
    "+1",
    "@x",
    "#N/A",
    "2026-02-29",
    "2026-02-28",
    "9999-12-31",
    "0000-01-01",
    "1900-02-28",
    "2026-13-01",
    "12/11/2026",
    true,
    false,
    {},
    [],
    [[]],
    [1],
    { basicValue: 3 },
    { basicValue: null },
    { basicValue: "x" },
    { basicValue: {} },
    "metric",
    "IMPERIAL",
    "standard",
    "toString",
    "__proto__",
    "constructor",
  ),
  fc.constantFrom("#N/A", "#DIV/0!", "#SPILL!", "#NAME?").map((code) => new SheetError(code)),
  fc.double(),
  fc.integer(),
  fc.string({ unit: "binary", maxLength: 30 }),
  fc.string({ unit: "grapheme", maxLength: 12 }),
);

const hostileBlock = fc.oneof(
  fc.array(hostileCell, { maxLength: 14 }).map((cells) => cells.map((cell) => [cell])),
  fc.array(hostileCell, { maxLength: 14 }).map((cells) => [cells]),
  fc.array(fc.array(hostileCell, { minLength: 2, maxLength: 2 }), { minLength: 6, maxLength: 6 }),
  fc.array(fc.array(hostileCell, { maxLength: 5 }), { maxLength: 5 }), // ragged
);

const hostile: fc.Arbitrary<unknown> = fc.oneof(
  { weight: 3, arbitrary: hostileCell },
  { weight: 2, arbitrary: hostileBlock },
);

/**
 * Hostile cells through every function: an argument or several of an otherwise fitting call are replaced.
 * Answers the number of calls tried and the first thing wrong, shrunk; the seed repeats a run.
 */
export const fuzz = (cases: number, seed: number): { readonly tried: number; readonly wrong?: string } => {
  const each = Math.ceil(cases / catalogue.length);
  for (const [i, definition] of catalogue.entries()) {
    const count = parametersOf(definition).length;
    const args = fc
      .tuple(
        argumentsWithin(definition),
        fc.array(fc.tuple(fc.nat(Math.max(0, count)), hostile), { minLength: 1, maxLength: 3 }),
      )
      .map(([fitting, replaced]) =>
        replaced.reduce<unknown[]>((all, [at, value]) => (at < all.length ? all.with(at, value) : all), fitting),
      );
    const outcome = fc.check(
      fc.property(args, (given) => {
        const wrong = wrongWith(given, definition.name, evaluate(definition, given).cells);
        if (wrong !== undefined) throw new Error(wrong);
      }),
      { numRuns: each, seed: seed + i, endOnFailure: false },
    );
    if (outcome.failed) {
      const error = outcome.errorInstance;
      return {
        tried: i * each + outcome.numRuns,
        wrong: `${definition.name}: ${error instanceof Error ? error.message : String(error)}; ${fc.stringify(outcome.counterexample)}`,
      };
    }
  }
  return { tried: each * catalogue.length };
};
