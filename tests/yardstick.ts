import { mkdirSync, writeFileSync } from "node:fs";
import { basename, join, relative } from "node:path";
import type { AnyDefinition, Value } from "../functions/define";
import { isSimulated, sourceOf, type Yardstick } from "../functions/yardsticks";

/**
 * Holding a function against something outside the project: a published table, an open data set, another's library. A
 * yardstick is a test that compares and, once it has passed, enters what it compared in the register; so the register
 * cannot say more than the tests have done. `npm run generate` writes it into functions/yardsticks.json, from which the
 * reference takes its words and counts, and `npm run check` fails where the two differ.
 */

/** The answer, and what the source says: numbers within the tolerance, anything else exactly. */
export type Pair = readonly [answer: Value, outside: Value];

interface Held {
  /** The source in the words of the reference: author and year, or library and version, or data set and period. */
  readonly against: string;
  /** How far a number may be off. The reason stands beside it in the test. */
  readonly within: number;
  /** "share" where `within` is a share of the outside value; the unit's symbol otherwise, "" for a bare number. */
  readonly unit: string;
}

const ROOT = join(__dirname, "..");
const register: Yardstick[] = [];

/**
 * Each test file writes its own part, so that files may run apart and side by side. Every yardstick asks for it: the end that
 * the first of them asks for is the end of the block in which it stands, and what the blocks after it compare would be lost.
 */
const writeAtEnd = (): void => {
  const file = expect.getState().testPath ?? __filename;
  afterAll(() => {
    const folder = join(ROOT, "reports", "yardsticks");
    mkdirSync(folder, { recursive: true });
    const name = relative(join(ROOT, "tests"), file).replaceAll(/[\\/]/g, ".");
    writeFileSync(join(folder, `${basename(name, ".ts")}.json`), JSON.stringify(register, null, 1));
  });
};

/** Enters a comparison that has passed; one that names nobody would be counted as if it stood on something. */
const enter = (held: Yardstick): void => {
  if (!isSimulated(held) && sourceOf(held) === undefined)
    throw new Error(`"${held.against}" names no source of functions/yardsticks.ts: add it there`);
  register.push(held);
};

/** Two figures say enough of how far off a comparison was at its worst. */
const rounded = (figure: number): number => Number(figure.toPrecision(2));

/** Compares every answer with its outside value, as one test. */
export const yardstick = (
  { name }: AnyDefinition,
  { against, within, unit }: Held,
  pairs: readonly Pair[] | (() => readonly Pair[]),
): void => {
  writeAtEnd();
  test(`${name} against ${against}`, () => {
    const compared = typeof pairs === "function" ? pairs() : pairs;
    expect(compared.length).toBeGreaterThan(0);
    let worst = 0;
    for (const [answer, outside] of compared) {
      if (typeof outside !== "number") {
        expect(answer).toEqual(outside);
        continue;
      }
      if (typeof answer !== "number") throw new Error(`${name} answers ${String(answer)}, ${against} says ${outside}`);
      const off = Math.abs(answer - outside) / (unit === "share" ? Math.abs(outside) : 1);
      if (!(off <= within)) {
        throw new Error(`${name} answers ${answer}, ${against} says ${outside}: off by ${off} (${within} ${unit})`);
      }
      worst = Math.max(worst, off);
    }
    enter({ of: name, against, values: compared.length, within, unit, worst: rounded(worst) });
  });
};

/**
 * For a comparison that is not value by value, such as an RMSE or the share inside a band: `measure` answers the figure,
 * which must lie between the two limits; `figure` says in words what it is.
 */
export const yardstickOf = (
  { name }: AnyDefinition,
  held: {
    readonly against: string;
    readonly figure: string;
    readonly least: number;
    readonly most: number;
    readonly unit: string;
  },
  measure: () => { readonly figure: number; readonly values: number },
): void => {
  writeAtEnd();
  const { against, figure: words, least, most, unit } = held;
  test(`${name} against ${against}: ${words}`, () => {
    const { figure, values } = measure();
    expect(values).toBeGreaterThan(0);
    expect(figure).toBeGreaterThanOrEqual(least);
    expect(figure).toBeLessThanOrEqual(most);
    enter({ of: name, against, values, figure: words, least, most, unit, worst: rounded(figure) });
  });
};
