import fc from "fast-check";
import { evaluate } from "../../addin/boundary/evaluate";
import { excelWorkbook } from "../../addin/excel/workbook";
import { lapse } from "../../functions/climate/lapse";
import { massLoss } from "../../functions/winter/massLoss";
import type { AnyDefinition } from "../../functions/define";
import { Problem } from "../../functions/problem";
import { release } from "../../functions/sharing/release";
import { ramp } from "../../functions/winter/ramp";
import { freeze } from "../../taskpane/actions/freeze";
import { thaw } from "../../taskpane/actions/thaw";
import { workingCopy } from "../../taskpane/actions/workingCopy";
import type { CellContent, Workbook } from "../../taskpane/workbook";
import { FakeExcel, type Answer } from "../excel/fake";
import { openWorkbook } from "./engine";
import { filed, openedAgain, outcome, saved, standing } from "./hosts";

/**
 * Small sheets of cells of every kind. The stand-in is told what the functions answer by the boundary, and not by the
 * preview: what both have frozen is the same by two ways.
 */

const errorsAsTold = (definition: AnyDefinition, given: readonly unknown[]) =>
  evaluate(definition, given).cells.map((row) => row.map((cell) => (cell instanceof Problem ? cell.code : cell)));

/** Calls whose answers depend on no cell: the stand-in works nothing out, and is told them. */
const CALLS: Readonly<Record<string, readonly (readonly unknown[])[]>> = {
  "=VIV.LAPSE(24,300,1400)": errorsAsTold(lapse, [24, 300, 1400]),
  "=IF(1>0,VIV.MASSLOSS(200,190),0)": errorsAsTold(massLoss, [200, 190]),
  "=VIV.LAPSE(24,300,99999)": errorsAsTold(lapse, [24, 300, 99_999]),
  "=VIV.RELEASE()": errorsAsTold(release, []),
};
const SPILLS: typeof CALLS = {
  "=VIV.RAMP(46300,24,8,14,7)": errorsAsTold(ramp, [46_300, 24, 8, 14, 7]),
  "=VIV.RAMP(46300,24,8,3)": errorsAsTold(ramp, [46_300, 24, 8, 3]),
};
const NATIVE: Readonly<Record<string, string>> = { "=NA()": "#N/A", '=VALUE("?")': "#VALUE!" };
const answer: Answer = (formula) => {
  const told = CALLS[formula] ?? SPILLS[formula];
  return told ?? [[NATIVE[formula] ?? 0]];
};

const constant = fc.constantFrom<CellContent>(20, -4.5, 0, "in shed", "Juniper", null);
const formula = (calls: typeof CALLS): fc.Arbitrary<CellContent> =>
  fc.constantFrom(...Object.keys(calls)).map((text) => ({ formula: text }));
const which = fc.nat(9);
/** Cells that no answer fills: A1 to C4. */
const place = fc.tuple(fc.nat(3), fc.nat(2));

const event = fc.oneof(
  {
    weight: 5,
    arbitrary: fc.record({
      kind: fc.constant("write" as const),
      on: which,
      place,
      content: fc.oneof(constant, formula(CALLS)),
    }),
  },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant("follow" as const), on: which, of: which, place }) },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant("spill" as const),
      on: which,
      content: fc.oneof(fc.constant(null), formula(SPILLS)),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({ kind: fc.constant("add" as const), cells: fc.array(constant, { maxLength: 4 }) }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant("copy" as const), on: which }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant("remove" as const), on: which }) },
  { weight: 2, arbitrary: fc.constant({ kind: "freeze" as const }) },
  { weight: 2, arbitrary: fc.constant({ kind: "thaw" as const }) },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant("working" as const),
      on: fc.uniqueArray(which, { minLength: 1, maxLength: 2 }),
    }),
  },
);
type Event = typeof event extends fc.Arbitrary<infer One> ? One : never;

const MOST = 8; // sheets
const quoted = (name: string): string => `'${name.replaceAll("'", "''")}'`;

/** What the event does to a workbook; undefined where there is no place for it. */
const acting = (event: Event, names: readonly string[]): ((workbook: Workbook) => Promise<unknown>) | undefined => {
  const named = (i: number): string => names[i % names.length] as string;
  const write =
    (on: number, row: number, column: number, content: CellContent) =>
    (workbook: Workbook): Promise<unknown> =>
      workbook.write([{ sheet: named(on), row, column, cells: [[content]] }]);
  switch (event.kind) {
    case "write":
      return write(event.on, ...event.place, event.content);
    case "follow":
      return write(event.on, ...event.place, { formula: `=${quoted(named(event.of))}!E1` });
    case "spill":
      return write(event.on, 0, 4, event.content);
    case "add":
      return names.length >= MOST
        ? undefined
        : (workbook) =>
            workbook.add(
              "It's mine",
              event.cells.map((one) => [one]),
            );
    case "copy":
      return names.length >= MOST ? undefined : (workbook) => workbook.copy([named(event.on)]);
    case "remove":
      return names.length < 3 ? undefined : (workbook) => workbook.remove([named(event.on)]);
    case "freeze":
      return (workbook) => freeze.run(workbook, undefined);
    case "thaw":
      return (workbook) => thaw.run(workbook, undefined);
    case "working": {
      const chosen = [...new Set(event.on.map(named))];
      return names.length + chosen.length >= MOST ? undefined : (workbook) => workingCopy.run(workbook, chosen);
    }
  }
};

/** Plays one story; throws at the first step at which the hosts part. */
export const play = async (events: readonly Event[]): Promise<void> => {
  const { workbook: preview, close } = openWorkbook();
  const excel = new FakeExcel(answer);
  Object.assign(globalThis, excel.globals());
  try {
    // Both begin with the sheets of a story, and without the empty ones that a program opens with.
    const begin = async (workbook: Workbook): Promise<void> => {
      const before = await workbook.sheetNames();
      await workbook.add("Log", [[20], [10.5], [null]]);
      await workbook.add("Year plan", [[46_300]]);
      await workbook.remove(before);
    };
    await begin(preview);
    await begin(excelWorkbook);
    for (const event of events) {
      const act = acting(event, await preview.sheetNames());
      if (!act) continue;
      const [one, other] = [await outcome(act(preview)), await outcome(act(excelWorkbook))];
      expect([event.kind, other]).toEqual([event.kind, one]);
      expect(await standing(excelWorkbook)).toEqual(await standing(preview));
    }
    const names = await preview.sheetNames();
    expect(await filed(await excelWorkbook.toFile(names))).toEqual(await filed(await preview.toFile(names)));
    const stood = await standing(preview);
    await openedAgain(await saved(preview), async (again) => expect(await standing(again)).toEqual(stood));
  } finally {
    close();
  }
};

export const playPlain = (count: number, seed: number): Promise<void> =>
  fc.assert(fc.asyncProperty(fc.array(event, { minLength: 3, maxLength: 12 }), play), { numRuns: count, seed });
