import fc from "fast-check";
import { evaluate, type Reply } from "../../addin/boundary/evaluate";
import { catalogue } from "../../functions/catalogue";
import type { CellParameter } from "../../functions/define";
import { Problem } from "../../functions/problem";
import { argumentsWithin, cellWithin, isOfLongTable, parametersOf } from "./arbitraries";

// As many as the suite has time for; npm run fuzz tries a million.
fc.configureGlobal({ numRuns: 30 });

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
        { numRuns: 10 },
      );
    });
  }

  // The one to answer for goes with its column of names: tests/boundary/longTable.test.ts.
  const spreadable = parametersOf(definition).flatMap(([name, parameter], i) =>
    parameter.reads === "cell" && parameter.kind !== "units" && !isOfLongTable(definition, name)
      ? [[parameter, i] as const]
      : [],
  );
  const { shape } = definition.result;
  if (spreadable.length > 0 && (shape === "cell" || shape === "columns")) {
    /** A block of cells for a parameter: most fit, some are blank, text, or far out of limits. */
    const block = (parameter: CellParameter, rows: number, columns: number): fc.Arbitrary<unknown[][]> => {
      const cell = fc.oneof(
        { weight: 6, arbitrary: cellWithin(parameter) },
        fc.constantFrom<unknown>(null, "", "x", true, 1e12),
      );
      const line = fc.array(cell, { minLength: columns, maxLength: columns });
      return fc.array(line, { minLength: rows, maxLength: rows });
    };

    /**
     * The arguments of one call, some of them blocks; and for every place of the answer, the same call cell by cell. A block
     * of one row or of one column stands for all of them.
     */
    const expectCellByCell = (args: readonly unknown[], blocks: ReadonlyMap<number, unknown[][]>) => {
      const at = (row: number, column: number): unknown[][] => {
        const one = args.map((argument, i) => {
          const cells = blocks.get(i);
          const line = cells?.[cells.length === 1 ? 0 : row];
          return line ? line[line.length === 1 ? 0 : column] : argument;
        });
        return plain(evaluate(definition, one));
      };
      const spread = plain(
        evaluate(
          definition,
          args.map((argument, i) => blocks.get(i) ?? argument),
        ),
      );
      const each = [...blocks.values()];
      const rows = Math.max(...each.map((cells) => cells.length));
      const columns = Math.max(...each.map((cells) => (cells[0] as unknown[]).length));
      // A range that cannot be read is one problem for the whole call.
      if (spread.length === 1 && spread[0]?.length === 1) {
        expect(at(0, 0).flat()).toContain(spread[0][0]);
        return;
      }
      if (shape === "cell") {
        expect(spread).toEqual(
          Array.from({ length: rows }, (_, row) =>
            Array.from({ length: columns }, (_, column) => at(row, column)[0]?.[0]),
          ),
        );
      } else if (columns === 1) {
        expect(spread).toEqual(Array.from({ length: rows }, (_, row) => wide(at(row, 0))));
      } else {
        const lines = Array.from({ length: columns }, (_, column) => wide(at(0, column)));
        expect(spread).toEqual(definition.result.columns.map((_, i) => lines.map((line) => line[i])));
      }
    };
    /** A problem that spoils a whole row stands alone in a call of single cells, and in each cell of a spread. */
    const wide = (answer: readonly (readonly unknown[])[]): unknown[] => {
      const width = definition.result.columns.length;
      const [line = []] = answer;
      return line.length === width ? [...line] : Array.from({ length: width }, () => line[0]);
    };

    type Size = readonly [rows: number, columns: number];
    const [first] = spreadable as [(typeof spreadable)[number]];
    const [, second] = spreadable;
    const isBlock = shape === "cell";
    const sizes: readonly { readonly over: string; readonly size: Size; readonly other?: Size }[] = [
      { over: "a column", size: [4, 1] },
      { over: "a row", size: [1, 4] },
      ...(isBlock ? [{ over: "a block", size: [3, 2] as const }] : []),
      ...(second
        ? [
            { over: "two columns", size: [3, 1] as const, other: [3, 1] as const },
            { over: "two rows", size: [1, 3] as const, other: [1, 3] as const },
          ]
        : []),
      ...(second && isBlock
        ? [
            { over: "a column and a row", size: [3, 1] as const, other: [1, 2] as const },
            { over: "a block and a row", size: [3, 2] as const, other: [1, 2] as const },
            { over: "two blocks", size: [2, 3] as const, other: [2, 3] as const },
          ]
        : []),
    ];
    test.each(sizes)("over $over it answers what it answers cell by cell", ({ size, other }) => {
      const one = block(first[0], ...size);
      const two = second && other ? block(second[0], ...other) : fc.constant(undefined);
      fc.assert(
        fc.property(inside, one, two, (args, cells, others) => {
          const blocks = new Map([[first[1], cells]]);
          if (second && others) blocks.set(second[1], others);
          expectCellByCell(args, blocks);
        }),
        { numRuns: 10 },
      );
    });
  }
});
