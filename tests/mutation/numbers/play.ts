import { createRequire } from "node:module";
import { join } from "node:path";
import { expect } from "expect";
import fc from "fast-check";
import { ROOT } from "./bundle";

/** What tests are made of, as far as ours use it: a file is opened anew for each number, which jest would need a second for. */

type Body = () => unknown;
interface Test {
  readonly name: string;
  readonly body: Body;
}

// Always the same cases, and none looked for that fail more simply.
fc.configureGlobal({ seed: 20_261_126, endOnFailure: true });

const rowsOf = (rows: readonly unknown[]): readonly (readonly unknown[])[] =>
  rows.map((row) => (Array.isArray(row) ? (row as unknown[]) : [row]));

const registered = (tests: Test[]) => {
  let within = "";
  const test = (name: string, body: Body): void => void tests.push({ name: `${within}${name}`, body });
  const describe = (name: string, body: () => void): void => {
    const outside = within;
    within = `${outside}${name} > `;
    body();
    within = outside;
  };
  const each =
    (one: (name: string, body: () => void) => void) =>
    (rows: readonly unknown[]) =>
    (name: string, body: (...row: unknown[]) => void): void => {
      for (const [i, row] of rowsOf(rows).entries()) one(`${name} [${i}]`, () => body(...row));
    };
  return {
    test: Object.assign(test, { each: each(test) }),
    describe: Object.assign(describe, { each: each(describe) }),
  };
};

/** Opens a file's tests. `which`: the number that is another, 0 for none. */
export const open = (code: string, which: number, met: (id: number) => void = () => undefined): readonly Test[] => {
  const tests: Test[] = [];
  const { test, describe } = registered(tests);
  const nothing = (): void => undefined;
  const names = {
    require: createRequire(join(ROOT, "tests/package.json")),
    module: { exports: {} },
    exports: {},
    jest: { setTimeout: nothing },
    expect,
    test,
    it: test,
    describe,
    beforeAll: nothing,
    afterAll: nothing,
    which_: which,
    met_: met,
  };
  // eslint-disable-next-line @typescript-eslint/no-implied-eval -- our own tests, bundled
  const run = new Function(...Object.keys(names), code) as (...values: unknown[]) => void;
  run(...Object.values(names));
  return tests;
};
