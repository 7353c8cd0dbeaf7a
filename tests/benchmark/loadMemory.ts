import { readFileSync } from "node:fs";
import type { Workbook } from "../../taskpane/workbook";
import { openWorkbook } from "../preview/engine";
import { FILES } from "./load";
import type { Line, Table } from "./race";

const MEGABYTE = 1024 * 1024;

interface Memory {
  /** Bytes in use once it is open. */
  readonly held: number;
  /** The most that the process has held so far, in bytes. */
  readonly peak: number;
}

/** Opens a file and saves it again. */
const memoryOf = async (file: string): Promise<Memory> => {
  const bytes = readFileSync(file);
  globalThis.gc?.();
  const before = process.memoryUsage().heapUsed;
  const { workbook, close } = openWorkbook();
  try {
    await (workbook.open as NonNullable<Workbook["open"]>)("load.xlsx", bytes);
    globalThis.gc?.();
    const held = process.memoryUsage().heapUsed - before;
    await (workbook.save as NonNullable<Workbook["save"]>)();
    // The kernel counts it in kilobytes, over the life of the process.
    return { held, peak: process.resourceUsage().maxRSS * 1024 };
  } finally {
    close();
  }
};

/** A process that did not make the files: the small one first, because a peak never falls. */
export const tables = async (): Promise<Table[]> => {
  await memoryOf(FILES.one); // what the engine itself needs
  const small = await memoryOf(FILES.one);
  const large = await memoryOf(FILES.many);
  const line = (what: string, key: keyof Memory): Line => ({
    what,
    ratio: large[key] / small[key],
    against: "a workbook of one sheet",
    note: `${(large[key] / MEGABYTE).toFixed(0)} MB and ${(small[key] / MEGABYTE).toFixed(0)} MB`,
    told: { [key]: large[key] / MEGABYTE, [`${key}Times`]: large[key] / small[key] },
  });
  return [
    {
      title: "The same workbook: memory",
      lines: [
        line("held once it is open", "held"),
        line("the most that the process held until it was saved, the spreadsheet itself with it", "peak"),
      ],
    },
  ];
};
