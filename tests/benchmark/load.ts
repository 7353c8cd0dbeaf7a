import { mkdirSync, writeFileSync } from "node:fs";
import { coolingPlan } from "../../taskpane/sheets/coolingPlan";
import { feedingLog } from "../../taskpane/sheets/feedingLog";
import { weights } from "../../taskpane/sheets/weights";
import { winterLog } from "../../taskpane/sheets/winterLog";
import { yearPlan } from "../../taskpane/sheets/yearPlan";
import type { Sheet } from "../../taskpane/sheets/sheet";
import type { Workbook } from "../../taskpane/workbook";
import { openWorkbook } from "../preview/engine";
import { changesOf } from "../sheets/fill";
import { median, processorTime, type Line, type Table } from "./race";

/** A collection's workbook: eight animals with five sheets each, and a long log; beside a workbook of one sheet. */
const OF_AN_ANIMAL = [coolingPlan, weights, feedingLog, winterLog, yearPlan] as const;
const ANIMALS = 8;
const ROWS = 100_000;
const RUNS = 5;

/** The two, as `loadMemory` opens them in a process of its own. */
const FOLDER = "tests/node_modules/.cache/benchmark";
export const FILES = { one: `${FOLDER}/one.xlsx`, many: `${FOLDER}/many.xlsx` } as const;

const rows = (): (number | string)[][] => [
  ["Time", "Temperature"],
  ...Array.from({ length: ROWS }, (_, i) => [46_000 + i / 144, Math.round(80 + 20 * Math.sin(i / 23)) / 10]),
];

/** Times are of the processor: what else the machine does lengthens them hardly. */
interface Times {
  readonly open: number;
  /** The first date that is changed: which cells each formula names is found out then. */
  readonly first: number;
  /** One that is changed after it. */
  readonly change: number;
  readonly save: number;
  readonly cells: number;
}

/** A file of those sheets, and of a long log where it is asked for. */
const fileOf = async (sheets: readonly Sheet[], withLog: boolean): Promise<Uint8Array> => {
  const { workbook, close } = openWorkbook();
  try {
    await workbook.insert(sheets);
    if (withLog) await workbook.add("Log", rows());
    return await (workbook.save as NonNullable<Workbook["save"]>)();
  } finally {
    close();
  }
};

/** Opens the file, turns a date of the first plan, and saves. */
const timesOf = async (bytes: Uint8Array): Promise<Times> => {
  globalThis.gc?.();
  const { workbook, close } = openWorkbook();
  try {
    const begun = processorTime();
    const { sheets } = await (workbook.open as NonNullable<Workbook["open"]>)("load.xlsx", bytes);
    const open = processorTime() - begun;
    globalThis.gc?.(); // what opening has left is no cost of the first change
    const [sheet] = sheets as [string];
    const changed = async (days: number): Promise<number> => {
      const from = processorTime();
      await workbook.write(changesOf(sheet, coolingPlan, { "plan.cold": days }));
      const read = await workbook.read([sheet]);
      if (read.length !== 1) throw new Error("the plan is missing");
      return processorTime() - from;
    };
    const first = await changed(91);
    const changes: number[] = [];
    for (const days of [84, 80, 88]) changes.push(await changed(days));
    const change = median(changes);
    const saving = processorTime();
    await (workbook.save as NonNullable<Workbook["save"]>)();
    const save = processorTime() - saving;
    const all = await workbook.read();
    if (all.length !== sheets.length) throw new Error("a sheet is missing");
    const cells = all.reduce((sum, sheet) => sum + sheet.cells.reduce((own, line) => own + line.length, 0), 0);
    return { open, first, change, save, cells };
  } finally {
    close();
  }
};

export const tables = async (): Promise<Table[]> => {
  const one = await fileOf([coolingPlan], false);
  const many = await fileOf(Array.from({ length: ANIMALS }, () => OF_AN_ANIMAL).flat(), true);
  mkdirSync(FOLDER, { recursive: true });
  writeFileSync(FILES.one, one);
  writeFileSync(FILES.many, many);
  await timesOf(one); // the engine compiles
  // What takes a few hundredths of a second differs from time to time: the middle one of several.
  const runs: Times[] = [];
  for (let i = 0; i < RUNS; i++) runs.push(await timesOf(one));
  const small = (key: keyof Times): number => median(runs.map((run) => run[key]));
  const large = await timesOf(many);
  const sizes = { sheets: ANIMALS * OF_AN_ANIMAL.length, rows: ROWS };
  const line = (what: string, key: "open" | "first" | "change" | "save", allowed: number): Line => ({
    what,
    milliseconds: large[key],
    ratio: large[key] / small(key),
    against: "a workbook of one sheet",
    allowed,
    note: `${small(key).toFixed(0)} ms for one sheet`,
    told: { ...sizes, [key]: large[key] / small(key), [`${key}Seconds`]: large[key] / 1000 },
  });
  return [
    {
      title: `A workbook of ${sizes.sheets} sheets and a log of ${ROWS} rows (${large.cells} cells), in the preview without a page`,
      lines: [
        line("open", "open", 40),
        line("change the first date, until all is worked out", "first", 30),
        line("change another", "change", 30),
        line("save", "save", 40),
      ],
    },
  ];
};
