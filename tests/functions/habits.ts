import fc from "fast-check";
import { unitAt, type AnyDefinition, type Argument, type CellParameter, type Parameter } from "../../functions/define";
import type { Unit } from "../../functions/units";
import { call, callCell, down } from "../call";

/**
 * What every function owes a sheet, made from its own definition and its examples: rows and columns, blanks, limits,
 * text that is no number, and the imperial system. The conversions are written out here again, apart from the
 * project's own, from the exact definitions of the foot (0.3048 m), the mile (1609.344 m), the pound (453.59237 g) and the Fahrenheit scale.
 */
const IMPERIAL: Partial<Record<Unit, readonly [out: (metric: number) => number, into: (imperial: number) => number]>> =
  {
    celsius: [(c) => c * 1.8 + 32, (f) => (f - 32) / 1.8],
    kelvin: [(k) => k * 1.8, (f) => f / 1.8],
    kelvinPerKilometre: [(r) => r * 1.8 * 0.3048, (r) => r / 1.8 / 0.3048],
    metre: [(m) => m / 0.3048, (ft) => ft * 0.3048],
    millimetre: [(mm) => mm / 25.4, (inch) => inch * 25.4],
    gram: [(g) => (g / 453.59237) * 16, (oz) => (oz / 16) * 453.59237],
    kilometre: [(km) => km / 1.609344, (mi) => mi * 1.609344],
    gramPerPeriod: [(g) => (g / 453.59237) * 16, (oz) => (oz / 16) * 453.59237],
    degreeDay: [(d) => d * 1.8, (d) => d / 1.8],
    degreeHour: [(d) => d * 1.8, (d) => d / 1.8],
  };
const out = (value: unknown, unit: Unit): unknown =>
  typeof value === "number" ? (IMPERIAL[unit]?.[0] ?? Number)(value) : value;

const isBlock = (argument: unknown): argument is readonly (readonly unknown[])[] => Array.isArray(argument);

const imperialArgument = (argument: Argument | undefined, parameter: Parameter): unknown => {
  if (argument === undefined || argument === null) return argument;
  if (!isBlock(argument)) return out(argument, parameter.unit);
  if (parameter.reads === "range" && parameter.kind === "rows") {
    return argument.map((row) => row.map((value, j) => out(value, parameter.columns[j]?.[1].unit ?? "none")));
  }
  return argument.map((row) => row.map((value) => out(value, parameter.unit)));
};

/** A value as near outside the limits as a keeper could mean. */
const outside = ({ limits, kind }: CellParameter): readonly number[] => {
  if (!limits) return [];
  const step = kind === "count" || kind === "date" ? 1 : Math.max(1e-6, 1e-6 * (limits.most - limits.least));
  return [limits.least - step, limits.most + step];
};

/** Whatever the parameter takes: a number within its limits, whole where it must be, or one of its words. */
const anyOf = ({ kind, limits, words, optional }: CellParameter): fc.Arbitrary<unknown> => {
  const numbers = limits
    ? kind === "quantity"
      ? fc.double({ min: limits.least, max: limits.most, noNaN: true })
      : fc.integer({ min: Math.ceil(limits.least), max: Math.floor(limits.most) })
    : undefined;
  return fc.oneof(
    ...(numbers ? [numbers] : []),
    ...(words ? [fc.constantFrom(...words)] : []),
    ...(optional ? [fc.constant(null)] : []),
  );
};

/** What no cell may show, whatever was given within the limits. */
const UNFIT = /NaN|Infinity|undefined|\[object|not made for|no finite number/;

/** Two answers are the same but for the last digits of their numbers. */
const expectClose = (answer: unknown, wanted: unknown): void => {
  if (typeof wanted !== "number") {
    expect(answer).toEqual(wanted);
    return;
  }
  expect(typeof answer).toBe("number");
  expect(Math.abs((answer as number) - wanted)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(wanted)));
};

export const habits = (definition: AnyDefinition): void => {
  const parameters = Object.entries(definition.parameters);
  const { result } = definition;
  /** Examples may show a spread; here each cell parameter starts from one cell. */
  const examples = definition.examples.map((example) => ({
    given: example.given.map((argument, i) =>
      parameters[i]?.[1].reads === "cell" && isBlock(argument) ? argument[0]?.[0] : argument,
    ),
  }));
  const first = examples[0]?.given ?? [];
  const required = parameters.filter(([, parameter]) => !parameter.optional);
  /** The arguments of an example, with some of them replaced. */
  const given = (changes: Record<number, unknown>, from: readonly unknown[] = first): unknown[] =>
    parameters.map((_, i) => (i in changes ? changes[i] : from[i]));
  const units = parameters.findIndex(([, parameter]) => parameter.reads === "cell" && parameter.kind === "units");
  const inImperial = (from: readonly (Argument | undefined)[]): unknown[] =>
    parameters.map(([, parameter], i) => (i === units ? "imperial" : imperialArgument(from[i], parameter)));
  /** What lies just beyond a figure's limits and what lies at them, in each system that a sheet may be in. */
  const bounds = (cell: CellParameter, from: readonly (Argument | undefined)[] = first) => {
    const at = cell.limits ? [cell.limits.least, cell.limits.most] : [];
    const metric = {
      others: from as readonly unknown[],
      refused: outside(cell) as readonly unknown[],
      taken: at as readonly unknown[],
    };
    if (units < 0 || !IMPERIAL[cell.unit]) return [metric];
    const imperial = (values: readonly number[]): readonly unknown[] => values.map((value) => out(value, cell.unit));
    return [metric, { others: inImperial(from), refused: imperial(outside(cell)), taken: imperial(at) }];
  };
  /** Whatever a message asks for has to be taken. */
  const asked = (message: unknown): readonly number[] =>
    (/: give a (?:whole )?number from (-?[\d.]+) to (-?[\d.]+)/.exec(String(message))?.slice(1) ?? []).map(Number);

  describe("owes a sheet", () => {
    for (const [i, [name, parameter]] of parameters.entries()) {
      const example = examples.find((one) => one.given[i] !== undefined && one.given[i] !== null);

      if (parameter.reads === "cell" && parameter.kind !== "units" && example) {
        const value = example.given[i];
        const single = call(definition, ...example.given);
        if (result.shape === "cell") {
          const answer = single[0]?.[0];
          test(`a row and a column of ${name}`, () => {
            expect(call(definition, ...given({ [i]: [[value, value]] }, example.given))).toEqual([[answer, answer]]);
            expect(call(definition, ...given({ [i]: down([value, value]) }, example.given))).toEqual([
              [answer],
              [answer],
            ]);
          });
        } else if (result.shape === "columns") {
          test(`a row and a column of ${name}`, () => {
            const line = single[0] as unknown[];
            expect(call(definition, ...given({ [i]: [[value, value]] }, example.given))).toEqual(
              line.map((answer) => [answer, answer]),
            );
            expect(call(definition, ...given({ [i]: down([value, value]) }, example.given))).toEqual([line, line]);
          });
        } else {
          test(`one cell only for ${name}`, () => {
            expect(callCell(definition, ...given({ [i]: down([value, value]) }, example.given))).toBe(
              `#VALUE! ${name} holds 2 by 1 cells: give one cell`,
            );
          });
        }
      }

      if (!parameter.optional && required.length > 1) {
        test(`a word on a blank ${name}, never 0`, () => {
          for (const blank of [null, undefined, ""]) {
            const answers = call(definition, ...given({ [i]: blank })).flat();
            expect(new Set(answers)).toEqual(new Set([`#N/A ${name} is blank`]));
          }
        });
      }

      if (parameter.reads === "range" && parameter.blank === "refuse" && example) {
        test(`a word on a blank in ${name}`, () => {
          const block = (example.given[i] as readonly (readonly unknown[])[]).map((row) => [...row]);
          const last = (
            block.length === 1 || parameter.kind === "plan" ? block.at(-1) : block[block.length - 1]
          ) as unknown[];
          last[last.length - 1] = null;
          const answers = call(definition, ...given({ [i]: block }, example.given)).flat();
          for (const answer of answers)
            expect(answer).toMatch(new RegExp(`^#N/A (month|row) \\d+ of ${name} is blank$`));
        });
      }

      if (parameter.reads === "cell" && parameter.limits) {
        test(`the limits of ${name}`, () => {
          const refusal = new RegExp(`^#VALUE! ${name} holds .*: give .* from `);
          for (const { refused, taken, others } of bounds(parameter)) {
            const answers = (value: unknown): unknown[] => call(definition, ...given({ [i]: value }, others)).flat();
            const messages = refused.flatMap(answers);
            for (const message of messages) expect(message).toMatch(refusal);
            for (const answer of [...taken, ...asked(messages[0])].flatMap(answers)) {
              expect(String(answer)).not.toMatch(refusal);
              expect(answer === null || Number.isNaN(answer)).toBe(false);
            }
          }
        });
        test(`a word on text for ${name}`, () => {
          for (const answer of call(definition, ...given({ [i]: "24C" })).flat()) {
            expect(answer).toMatch(new RegExp(`^#VALUE! ${name} holds '24C': give `));
          }
        });
      }

      if (parameter.reads === "range" && parameter.unreadable === "refuse" && example) {
        for (const [j, [, column]] of parameter.columns.entries()) {
          if (!column.limits) continue;
          test(`the limits in column ${j + 1} of ${name}`, () => {
            const refusal = new RegExp(`^#VALUE! .* of ${name} holds .*: give .* from `);
            for (const { refused, taken, others } of bounds(column, example.given)) {
              const answers = (value: unknown): unknown[] => {
                const block = (others[i] as readonly (readonly unknown[])[]).map((row) => [...row]);
                const row = block[0] as unknown[];
                row[parameter.kind === "plan" ? row.length - 1 : j] = value;
                return call(definition, ...given({ [i]: block }, others)).flat();
              };
              const messages = refused.flatMap(answers);
              for (const message of messages) expect(message).toMatch(refusal);
              for (const answer of [...taken, ...asked(messages[0])].flatMap(answers))
                expect(String(answer)).not.toMatch(refusal);
            }
          });
        }
      }
    }

    if (required.length > 0) {
      test("an empty-looking answer where all is blank", () => {
        expect(new Set(call(definition, ...parameters.map(() => null)).flat())).toEqual(new Set([""]));
      });
    }

    const spread = parameters.flatMap(([, parameter], i) =>
      parameter.reads === "cell" && (parameter.limits ?? parameter.words) ? [[i, anyOf(parameter)] as const] : [],
    );
    if (spread.length > 0) {
      test("an answer, or a word on why not, for anything within the limits", () =>
        fc.assert(
          fc.property(fc.tuple(...spread.map(([, value]) => value)), (values) => {
            const changes = Object.fromEntries(spread.map(([i], k) => [i, values[k]]));
            const odd = call(definition, ...given(changes))
              .flat()
              .filter(
                (answer) => !["number", "string", "boolean"].includes(typeof answer) || UNFIT.test(String(answer)),
              );
            expect(odd).toEqual([]);
          }),
          { numRuns: 50 },
        ));
    }

    if (units >= 0) {
      test.each(examples.map((example, i) => [i + 1, example] as const))(
        "the imperial answer of example %i",
        (_, example) => {
          const metric = call(definition, ...given({ [units]: "metric" }, example.given));
          const imperial = call(definition, ...inImperial(example.given));
          expect(imperial.length).toBe(metric.length);
          for (const [i, row] of metric.entries()) {
            for (const [j, answer] of row.entries()) {
              const unit = unitAt(result.columns, i, result.shape === "list" ? 0 : j);
              // Words may name figures, each in its own system.
              if (typeof answer === "string") expect(typeof imperial[i]?.[j]).toBe("string");
              else expectClose(imperial[i]?.[j], out(answer, unit));
            }
          }
        },
      );
    }
  });
};
