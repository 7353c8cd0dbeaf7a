import fc from "fast-check";
import { evaluate, type Reply } from "../../addin/boundary/evaluate";
import { catalogue } from "../../functions/catalogue";
import type { CellParameter } from "../../functions/define";
import { Problem } from "../../functions/problem";
import { argumentsWithin, cellWithin, parametersOf } from "./arbitraries";

/** What the boundary says when `calculate` threw: a bug, wherever it is seen. */
const BUG = /was not made for/;

const expectPresentable = ({ cells }: Reply) => {
  expect(cells.length).toBeGreaterThan(0);
  const width = cells[0]?.length ?? 0;
  expect(width).toBeGreaterThan(0);
  for (const row of cells) {
    expect(row.length).toBe(width);
    for (const cell of row) {
      if (cell instanceof Problem) {
        expect(["#N/A", "#VALUE!"]).toContain(cell.code);
        expect(cell.message.length).toBeGreaterThan(3);
        expect(cell.message).not.toMatch(BUG);
        expect(cell.message).not.toMatch(/NaN|Infinity|undefined|null|\[object/);
      } else if (typeof cell === "number") expect(Number.isFinite(cell)).toBe(true);
      else expect(["string", "boolean"]).toContain(typeof cell);
    }
  }
};

const plain = ({ cells }: Reply) =>
  cells.map((row) => row.map((cell) => (cell instanceof Problem ? `${cell.code} ${cell.message}` : cell)));

describe.each(catalogue.map((definition) => [definition.name, definition] as const))("%s", (_, definition) => {
  const inside = argumentsWithin(definition);

  test("inside its limits answers values or a documented problem, the same each time, and changes no input", () => {
    fc.assert(
      fc.property(inside, (args) => {
        const before = structuredClone(args);
        const first = evaluate(definition, args);
        expectPresentable(first);
        expect(args).toEqual(before);
        expect(plain(evaluate(definition, args))).toEqual(plain(first));
      }),
    );
  });

  const limited = parametersOf(definition).flatMap(([name, parameter], i) =>
    parameter.reads === "cell" && parameter.limits ? [[name, parameter.limits, parameter.kind, i] as const] : [],
  );
  if (limited.length > 0) {
    test.each(limited)("%s outside its limits is a problem that names it", (name, limits, kind, i) => {
      const step = kind === "quantity" ? Math.max(1e-6, Math.abs(limits.most) * 1e-9) : 1;
      const outside = fc.constantFrom(
        limits.least - step,
        limits.most + step,
        limits.least - 1000,
        limits.most * 2 + 1000,
      );
      fc.assert(
        fc.property(inside, outside, (args, value) => {
          const metric = args.map((argument, j) =>
            parametersOf(definition)[j]?.[1].kind === "units" ? "metric" : argument,
          );
          const [cell] = evaluate(definition, metric.with(i, value)).cells.flat();
          expect(cell).toBeInstanceOf(Problem);
          const { code, message } = cell as Problem;
          expect(code).toBe("#VALUE!");
          expect(message.startsWith(`${name} holds `)).toBe(true);
        }),
        { numRuns: 20 },
      );
    });
  }

  const spreadable = parametersOf(definition).flatMap(([, parameter], i) =>
    parameter.reads === "cell" && parameter.kind !== "units" ? [[parameter, i] as const] : [],
  );
  if (spreadable.length > 0 && ["cell", "columns"].includes(definition.result.shape)) {
    test("over a column it answers what it answers cell by cell", () => {
      const [parameter, i] = spreadable[0] as readonly [CellParameter, number];
      const cells = fc.array(
        fc.oneof({ weight: 6, arbitrary: cellWithin(parameter) }, fc.constantFrom(null, "", "x", true, 1e12)),
        {
          minLength: 2,
          maxLength: 6,
        },
      );
      fc.assert(
        fc.property(inside, cells, (args, values) => {
          const spread = plain(
            evaluate(
              definition,
              args.with(
                i,
                values.map((value) => [value]),
              ),
            ),
          );
          // A range that cannot be read is one problem for the whole call.
          if (spread.length === 1) return;
          const single = values.map((value) => plain(evaluate(definition, args.with(i, value)))[0]);
          expect(spread).toEqual(single);
        }),
        { numRuns: 40 },
      );
    });
  }
});
