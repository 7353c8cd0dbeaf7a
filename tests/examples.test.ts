import { evaluate } from "../addin/boundary/evaluate";
import { catalogue } from "../functions/catalogue";
import { serialOfIso } from "../functions/dates";
import type { Example, Value } from "../functions/define";
import { Problem } from "../functions/problem";

/** What the pane and the reference show as examples is what the functions answer. */
const rowsOf = ({ gives }: Example): readonly (readonly Value[])[] =>
  Array.isArray(gives) ? (gives as readonly (readonly Value[])[]) : [[gives as Value]];

test("there are functions", () => expect(catalogue.length).toBeGreaterThan(0));

describe.each(catalogue.map((definition) => [definition.name, definition] as const))("%s", (_, definition) => {
  test.each(definition.examples.map((example, i) => [i + 1, example] as const))("example %i", (_, example) => {
    const { cells, unit } = evaluate(definition, example.given);
    const expected = rowsOf(example);
    const problems = cells.flat().filter((cell): cell is Problem => cell instanceof Problem);
    expect(problems.map(({ message }) => message)).toEqual([]);
    expect([cells.length, cells[0]?.length]).toEqual([example.rows ?? expected.length, expected[0]?.length]);
    for (const [row, line] of expected.entries()) {
      for (const [column, value] of line.entries()) {
        const answer = cells[row]?.[column];
        const isDate = unit(row, column) === "date" || unit(row, column) === "date and time";
        const wanted = isDate && typeof value === "string" ? (serialOfIso(value) ?? value) : value;
        if (typeof wanted === "number" && example.within > 0) {
          expect(typeof answer).toBe("number");
          expect(Math.abs((answer as number) - wanted)).toBeLessThanOrEqual(example.within);
        } else {
          expect(answer).toBe(wanted);
        }
      }
    }
  });
});
