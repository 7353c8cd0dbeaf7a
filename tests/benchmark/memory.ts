import { evaluate } from "../../addin/boundary/evaluate";
import { dayTable } from "../../functions/readings/dayTable";
import { cells, YEAR } from "./logs";
import { kept, type Table } from "./race";

const MEGABYTE = 1024 * 1024;

/** A process of its own: the peak of resident memory over what stood there with the readings, before the call. */
export const tables = (): Promise<Table[]> => {
  const year = cells(YEAR);
  globalThis.gc?.();
  const before = process.memoryUsage.rss();
  const start = performance.now();
  kept.push(evaluate(dayTable, [year.times, year.temperatures]).cells);
  const milliseconds = performance.now() - start;
  // The kernel counts the peak in kilobytes over the life of the process; building the readings needs less than both.
  const peak = process.resourceUsage().maxRSS * 1024;
  return Promise.resolve([
    {
      title: "DAYTABLE, first call of a new process (525 600 readings)",
      lines: [
        {
          what: "time and peak memory",
          milliseconds,
          note: `${(before / MEGABYTE).toFixed(0)} MB with the readings, ${(peak / MEGABYTE).toFixed(0)} MB at the peak`,
        },
      ],
    },
  ]);
};
