import { evaluate } from "../../addin/boundary/evaluate";
import { timeOutside } from "../../functions/readings/timeOutside";
import { cells, YEAR, type Cells } from "./logs";
import { agree, race, type Table } from "./race";

const [LOW, HIGH] = [17, 27];
const answer = ({ times, temperatures }: Cells): unknown[][] =>
  evaluate(timeOutside, [times, temperatures, LOW, HIGH]).cells;

/** The same figures in one pass; it checks nothing, trusts order and spacing, and cuts a line where it crosses a limit. */
const loop = ({ times, temperatures }: Cells): number[] => {
  let below = 0;
  let above = 0;
  let spell = 0;
  let longest = 0;
  let degrees = 0;
  let lowest = Infinity;
  let highest = -Infinity;
  for (let i = 1; i < times.length; i++) {
    const length = (times[i] as readonly [number])[0] - (times[i - 1] as readonly [number])[0];
    const from = (temperatures[i - 1] as readonly [number])[0];
    const to = (temperatures[i] as readonly [number])[0];
    const least = from < to ? from : to;
    const most = from < to ? to : from;
    if (least < lowest) lowest = least;
    if (most > highest) highest = most;
    if (least < LOW) below += most <= LOW ? length : (length * (LOW - least)) / (most - least);
    if (most > HIGH) {
      const part = least >= HIGH ? length : (length * (most - HIGH)) / (most - least);
      above += part;
      degrees += (least >= HIGH ? (least + most) / 2 - HIGH : (most - HIGH) / 2) * part;
      spell = (from > HIGH ? spell : 0) + part;
      if (spell > longest) longest = spell;
    }
    if (to <= HIGH) spell = 0;
  }
  return [below * 24, above * 24, longest * 24, lowest, highest, degrees * 24];
};

export const tables = async (): Promise<Table[]> => {
  const year = cells(YEAR);
  for (const [i, figure] of loop(year).entries())
    agree(`TIMEOUTSIDE, column ${i + 1}`, answer(year)[0]?.[i] as number, figure, 1e-6);
  const bareLoop = "bare one-pass loop over the same arrays";
  return [
    {
      title: "TIMEOUTSIDE, a year of minutes (525 600 readings)",
      lines: await race([
        { what: bareLoop, run: () => loop(year), note: "no checks; trusts order and spacing" },
        { what: "TIMEOUTSIDE", run: () => answer(year), against: bareLoop, allowed: 4 },
      ]),
    },
  ];
};
