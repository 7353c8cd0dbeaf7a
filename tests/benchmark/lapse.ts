import * as formulajs from "@formulajs/formulajs";
import { evaluate } from "../../addin/boundary/evaluate";
import { lapse } from "../../functions/climate/lapse";
import { agree, race, type Table } from "./race";

const ROWS = 100_000;
const column: number[][] = Array.from({ length: ROWS }, (_, i) => [10 + ((i * 37) % 200) / 10]);
const cellsOf = (): unknown[][] => evaluate(lapse, [column, 300, 1400]).cells;

const loop = (): number[][] => {
  const answers = new Array<number[]>(column.length);
  for (let i = 0; i < column.length; i++) {
    answers[i] = [((column[i] as number[])[0] as number) - (6.5 * (1400 - 300)) / 1000];
  }
  return answers;
};

const calls = (run: (temperature: number) => unknown) => (): unknown => {
  let last: unknown;
  for (const [temperature] of column) last = run(temperature as number);
  return last;
};

export const tables = async (): Promise<Table[]> => {
  agree("LAPSE", cellsOf()[ROWS - 1]?.[0] as number, loop()[ROWS - 1]?.[0] as number, 1e-9);
  const single = "100 000 calls, a cell each";
  const lines = await race(
    [
      { what: single, run: calls((temperature) => evaluate(lapse, [[[temperature]], [[300]], [[1400]]])) },
      {
        what: "@formulajs/formulajs CONVERT, 100 000 calls",
        run: calls((temperature) => formulajs.CONVERT(temperature, "C", "F")),
        note: "its nearest: a checked straight-line formula; it has no LAPSE, and takes no columns",
      },
    ],
    7,
    2,
  );
  const cost = (lines[0]?.milliseconds ?? NaN) / (ROWS / 1000);
  return [
    {
      title: "LAPSE, 100 000 rows",
      lines: await race(
        [
          { what: "bare loop over the same arrays", run: loop },
          { what: "one call over the column", run: cellsOf, against: "bare loop over the same arrays", allowed: 6 },
        ],
        25,
        10,
      ),
    },
    {
      title: "LAPSE, cell by cell",
      lines: lines.map((line) => (line.what === single ? { ...line, note: `${cost.toFixed(2)} µs a call` } : line)),
    },
  ];
};
