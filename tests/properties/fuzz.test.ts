import { SheetError } from "../../addin/boundary/cell";
import { evaluate } from "../../addin/boundary/evaluate";
import { catalogue } from "../../functions/catalogue";
import { Problem } from "../../functions/problem";
import { parametersOf } from "./arbitraries";
import { fuzz } from "./fuzz";

test("ten thousand hostile calls are answered in a form that a sheet can show", () => {
  const seed = Number(process.env.FUZZ_SEED ?? Date.now() % 2 ** 31);
  expect({ seed, ...fuzz(10_000, seed) }).toEqual({ seed, cases: expect.any(Number) as number });
}, 120_000);

test.each(catalogue.map((definition) => [definition.name, definition] as const))(
  "%s takes a column of 100 000 odd cells",
  (_, definition) => {
    const odd = [null, 1, "x", 46_000, new SheetError("#DIV/0!"), true, -0, 1e300, "", "2026-01-01"];
    const column = Array.from({ length: 100_000 }, (_, i) => [odd[i % odd.length]]);
    const args = parametersOf(definition).map(([, parameter], i) =>
      i === 0 ? column : parameter.kind === "units" ? null : 20,
    );
    const { cells } = evaluate(definition, args);
    for (const row of cells) {
      for (const cell of row) {
        if (cell instanceof Problem ? cell.message === "" : typeof cell === "number" && !Number.isFinite(cell)) {
          throw new Error(`answered ${String(cell)}`);
        }
      }
    }
    expect(cells[0]?.length).toBeGreaterThan(0);
  },
);
