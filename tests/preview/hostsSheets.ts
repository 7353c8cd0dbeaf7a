import { IUndoRedoService } from "@univerjs/core";
import fc from "fast-check";
import { excelWorkbook } from "../../addin/excel/workbook";
import { serialOfIso } from "../../functions/dates";
import { systems } from "../../functions/units";
import { perform, type Action } from "../../taskpane/actions/action";
import { addColumn, type ColumnChoice } from "../../taskpane/actions/addColumn";
import { addRows } from "../../taskpane/actions/addRows";
import { clearAll } from "../../taskpane/actions/clearAll";
import { clearExample } from "../../taskpane/actions/clearExample";
import { freeze } from "../../taskpane/actions/freeze";
import { insertSheet } from "../../taskpane/actions/insertSheet";
import { tabsOf } from "../../taskpane/actions/links";
import { linkLines, linkSheets } from "../../taskpane/actions/linkSheets";
import { sharedCopy } from "../../taskpane/actions/sharedCopy";
import { blankYear, startYear, YEAR } from "../../taskpane/actions/startYear";
import { thaw } from "../../taskpane/actions/thaw";
import { workingCopy, workingFile } from "../../taskpane/actions/workingCopy";
import { guesses } from "../../taskpane/columns/guess";
import { tableAt } from "../../taskpane/columns/table";
import { wishes } from "../../taskpane/columns/wishes";
import { sheets as templates } from "../../taskpane/sheets/catalogue";
import { areaOfLog } from "../../taskpane/sheets/grown";
import { growing } from "../../taskpane/sheets/growing";
import { areaOf, inside } from "../../taskpane/sheets/shared/address";
import { inSystem } from "../../taskpane/sheets/shared/systems";
import { formats, type Sheet } from "../../taskpane/sheets/sheet";
import { WorkbookError, type CellContent, type SheetContents, type Workbook } from "../../taskpane/workbook";
import { FakeExcel } from "../excel/fake";
import { openWorkbook } from "./engine";
import { filed, formatsOf, held, openedAgain, saved, shownIn } from "./hosts";
import { SameAnswers } from "./hostsAnswers";

/** How long stories are, of which sheets, and how tall a keeper's own tables are. */
export interface Size {
  readonly keys: readonly string[];
  readonly most: number;
  readonly tall: readonly number[];
}

const which = fc.nat(19);
const units = fc.constantFrom("metric" as const, ...systems);
const label = fc.constantFrom("Juniper", "Rowan", "Sorrel");
const typed = fc.oneof(
  fc.integer({ min: 0, max: 400 }),
  fc.integer({ min: 46_000, max: 46_500 }),
  fc.constantFrom<CellContent>(20.5, -3, 0, "yes", "no", "taken", "in shed", null),
  label,
);

const someOf = ({ keys }: Size) => fc.subarray([...keys], { minLength: 1, maxLength: Math.min(3, keys.length) });
const eventOf = (size: Size) => {
  const some = someOf(size);
  const one = <T>(weight: number, arbitrary: fc.Arbitrary<T>) => ({ weight, arbitrary });
  const kind = <K extends string, M extends object>(name: K, model: { [P in keyof M]: fc.Arbitrary<M[P]> }) =>
    fc.record({ kind: fc.constant(name), ...model }) as unknown as fc.Arbitrary<{ readonly kind: K } & M>;
  return fc.oneof(
    one(5, kind("insert", { some, units })),
    one(
      2,
      kind("year", {
        some,
        units,
        label,
        age: fc.constantFrom("adult" as const, "young" as const),
        way: fc.constantFrom("forwards" as const, "backwards" as const),
        when: fc.constantFrom("", "2026-09-21", "2027-03-29"),
        mass: fc.constantFrom("", "310"),
      }),
    ),
    one(5, kind("type", { on: which, at: fc.nat(400), typed })),
    one(4, kind("rows", { on: which, log: fc.nat(3), count: fc.constantFrom(1, 2, 30) })),
    one(3, kind("link", { from: which, step: fc.integer({ min: 1, max: 3 }) })),
    one(2, kind("table", { rows: fc.constantFrom(...size.tall) })),
    one(3, kind("column", { on: which, wish: which })),
    one(1, kind("copy", { on: which })),
    one(1, kind("remove", { on: which })),
    one(1, kind("clear", { on: which })),
    one(1, kind("clearAll", {})),
    one(2, kind("freeze", { on: fc.option(which, { nil: undefined }) })),
    one(3, kind("thaw", {})),
    one(1, kind("shared", { on: fc.uniqueArray(which, { minLength: 1, maxLength: 2 }) })),
    one(2, kind("working", { on: fc.uniqueArray(which, { minLength: 1, maxLength: 3 }) })),
    one(3, kind("undo", {})),
  );
};
type Event = ReturnType<typeof eventOf> extends fc.Arbitrary<infer One> ? One : never;
interface Story {
  /** The sheets that stand there at its beginning. */
  readonly first: readonly string[];
  readonly events: readonly Event[];
}
export const storyOf = (size: Size): fc.Arbitrary<Story> =>
  fc.record({ first: someOf(size), events: fc.array(eventOf(size), { minLength: 3, maxLength: size.most }) });

const MOST = 12; // sheets
const OWN = "My log";
const MASSES = [140, 310, 143, 305.5];
/** A keeper's own table, invented: two animals, fed and weighed every third day. */
const ownTable = (rows: number): readonly (readonly CellContent[])[] => [
  ["Date", "Animal", "Mass, g", "Mouse, g"],
  ...Array.from({ length: rows }, (_, i) => [
    (serialOfIso("2025-01-02") as number) + 3 * Math.floor(i / 2),
    i % 2 === 0 ? "Juniper" : "Rowan",
    i % 7 === 6 ? null : (MASSES[i % MASSES.length] as number) + i / 8,
    i % 5 === 4 ? null : 12,
  ]),
];

/** The cells of a sheet that its keeper fills, from 0: of joined cells the first. */
const inputsOf = ({ blocks, merges }: Sheet): readonly (readonly [row: number, column: number])[] => {
  const joined = merges.map(areaOf);
  const isCovered = (row: number, column: number): boolean =>
    joined.some(
      (area) =>
        inside({ top: row, left: column, bottom: row, right: column }, area) && (row > area.top || column > area.left),
    );
  return blocks
    .filter(({ role }) => role === "input" || role === "setting")
    .flatMap(({ at, rows }) => {
      const { top, left } = areaOf(at);
      return rows.flatMap((line, i) =>
        line.flatMap((_, j) => (isCovered(top + i, left + j) ? [] : [[top - 1 + i, left - 1 + j] as const])),
      );
    });
};

/** Wishes that a keeper's own table can fulfil by itself. */
const fulfilled = wishes.filter(({ wants }) => wants.every(({ from }) => from === "column"));

/** The column of a wish, where the keeper takes what the pane has guessed. */
const columnOf = (own: SheetContents, wish: (typeof wishes)[number]): ColumnChoice | undefined => {
  const table = tableAt(own, { row: 1, column: 0 });
  if (typeof table === "string") return undefined;
  const wanted = new Map(wish.wants.map(({ name, concept }) => [name, concept]));
  const columns = new Map([...guesses(table.columns, wanted)].map(([name, { column }]) => [name, column]));
  return { wish, at: { sheet: own.name, row: 1, column: 0 }, columns, once: new Map() };
};

interface Told {
  readonly kind: "done" | "refused";
  readonly words: string;
  readonly left: readonly string[];
}

/** As the pane does it: described, agreed to, done as one step. */
const done = async <Choice>(action: Action<Choice>, workbook: Workbook, choice: Choice): Promise<Told> => {
  const asked = await perform(action, workbook, choice);
  const now = asked.kind === "ask" ? await perform(action, workbook, choice, {}, asked.words) : asked;
  if (now.kind === "ask") throw new Error(`${action.key} asks twice`);
  return now.kind === "done"
    ? { kind: "done", words: now.done.text, left: now.done.left ?? [] }
    : { kind: "refused", words: now.words.text, left: now.words.list ?? [] };
};
const plainly = async (doing: Promise<unknown>): Promise<Told> => {
  await doing;
  return { kind: "done", words: "", left: [] };
};

const sheetsOf = (keys: readonly string[]): readonly Sheet[] => templates.filter(({ key }) => keys.includes(key));

type Doing = (workbook: Workbook) => Promise<Told>;

/** What the event does to a workbook that stands so; undefined where there is no place for it. */
const doing = async (event: Event, all: readonly SheetContents[]): Promise<Doing | undefined> => {
  const named = (i: number): string => (all[i % all.length] as SheetContents).name;
  const room = MOST - all.length;
  const chosen = (on: readonly number[]): readonly string[] => [...new Set(on.map(named))];
  const act =
    <Choice>(action: Action<Choice>, choice: Choice): Doing =>
    (workbook) =>
      done(action, workbook, choice);
  switch (event.kind) {
    case "insert":
      if (event.some.length > room) return undefined;
      return act(
        insertSheet,
        sheetsOf(event.some).map((sheet) => inSystem(sheet, event.units)),
      );
    case "year": {
      const own = event.some.filter((key) => YEAR.some((one) => one === key));
      if (own.length === 0 || own.length > room) return undefined;
      return act(startYear, { ...blankYear, ...event, sheets: own });
    }
    case "type": {
      const { tabs } = tabsOf(all);
      const tab = tabs[event.on % tabs.length];
      const inputs = tab ? inputsOf(tab.template) : [];
      const at = inputs[event.at % inputs.length];
      if (!tab || !at) return undefined;
      const change = { sheet: tab.name, row: at[0], column: at[1], cells: [[event.typed]] };
      return (workbook) => plainly(workbook.write([change]));
    }
    case "rows": {
      const tabs = tabsOf(all).tabs.filter(({ template }) => template.key in growing);
      const tab = tabs[event.on % tabs.length];
      if (!tab) return undefined;
      const logs = growing[tab.template.key] ?? [];
      const [log = ""] = logs[event.log % logs.length] ?? [];
      const { top, left } = areaOfLog(tab.template, log);
      return async (workbook) => {
        await workbook.show(tab.name, top - 1, left - 1);
        const told = await done(addRows, workbook, event.count);
        const { sheet, row, column } = await workbook.selection();
        return { ...told, left: [...told.left, `${sheet} ${row} ${column} is shown`] };
      };
    }
    case "link": {
      const { choices } = await linkLines(reads(all));
      const sources = new Map(choices.map(({ key, names }) => [key, names[event.from % names.length] as string]));
      const { lines } = await linkLines(reads(all), sources);
      const open = lines.filter(({ standing }) => standing !== "linked").map(({ place }) => place);
      return act(linkSheets, { ticked: open.filter((_, i) => i % event.step === 0), sources });
    }
    case "table":
      if (room < 1) return undefined;
      return (workbook) =>
        workbook.asOne(async () => {
          const cells = ownTable(event.rows);
          const sheet = await workbook.add(OWN, cells);
          const dates = cells.slice(1).map(([date = null]) => [date]);
          return plainly(workbook.write([{ sheet, row: 1, column: 0, cells: dates, format: formats.date }]));
        });
    case "column": {
      const tables = all.filter(({ name }) => name.startsWith(OWN));
      const own = tables[event.on % tables.length];
      const choice = own && columnOf(own, fulfilled[event.wish % fulfilled.length] as (typeof wishes)[number]);
      return choice && act(addColumn, choice);
    }
    case "copy":
      return room < 1 ? undefined : (workbook) => plainly(workbook.copy([named(event.on)]));
    case "remove":
      return all.length < 2 ? undefined : (workbook) => plainly(workbook.remove([named(event.on)]));
    case "clear":
      return async (workbook) => {
        await workbook.show(named(event.on), 0, 0);
        return done(clearExample, workbook, undefined);
      };
    case "clearAll":
      return act(clearAll, undefined);
    case "freeze":
      return act(freeze, event.on === undefined ? undefined : [named(event.on)]);
    case "thaw":
      return act(thaw, undefined);
    case "shared":
    case "working":
      if (chosen(event.on).length >= room) return undefined;
      return act(event.kind === "shared" ? sharedCopy : workingCopy, chosen(event.on));
    case "undo":
      return undefined;
  }
};

/** A workbook that has been read already. */
const reads = (all: readonly SheetContents[]): Workbook =>
  ({ read: () => Promise.resolve(all) }) as unknown as Workbook;

/** What both hosts hold alike: sheets, formulas, figures, number formats, and what Link sheets says of them. */
const standing = async (all: readonly SheetContents[]): Promise<unknown> => ({
  sheets: all.map(({ name, hidden, cells }) => ({ name, hidden, cells: held(cells), formats: formatsOf(cells) })),
  links: await linkLines(reads(all)),
});
const shown = (all: readonly SheetContents[]): unknown => all.map(({ name, cells }) => [name, shownIn(cells)]);

/** A refusal of the port's says why in each program's own words. */
const outcome = (doing: Promise<Told>): Promise<Told> =>
  doing.catch((failure: unknown) => {
    if (!(failure instanceof WorkbookError)) throw failure;
    return { kind: "refused", words: "", left: [] };
  });

/** A file of a working copy, as a member of a club gets it. */
const workingFileOf = async (workbook: Workbook, names: readonly string[]): Promise<Uint8Array> => {
  let bytes = new Uint8Array();
  await workingFile.run(workbook, {
    names,
    save: (file) => {
      if (typeof file.bytes !== "string") bytes = new Uint8Array(file.bytes);
    },
  });
  return bytes;
};

/** Plays one story; throws at the first step at which the hosts part. */
export const play = async ({ first, events }: Story): Promise<void> => {
  const { engine, workbook, close } = openWorkbook();
  const answers = new SameAnswers();
  const held = new FakeExcel(answers.answer);
  Object.assign(globalThis, held.globals());
  const preview = answers.asked(workbook);
  const excel = answers.answering(excelWorkbook, held);
  const history = engine.univer.__getInjector().get(IUndoRedoService);
  /** What stood before and after the last step that undo knows. */
  let step: { readonly before: unknown; readonly after: unknown } | undefined;
  const both = async <T>(ask: (host: Workbook) => Promise<T>): Promise<readonly [T, T]> => {
    const one = await ask(preview);
    const other = await ask(excel);
    expect(answers.rest()).toBe(0);
    return [one, other];
  };
  try {
    // Both begin with sheets of ours alone, and without the empty ones that a program opens with.
    await both(async (host) => {
      const empty = await host.sheetNames();
      await insertSheet.run(host, sheetsOf(first));
      await host.remove(empty);
    });
    for (const event of events) {
      const all = await workbook.read();
      if (event.kind === "undo") {
        if (!step) continue;
        await engine.api.undo();
        await engine.settle();
        expect(await standing(await workbook.read())).toEqual(step.before);
        await engine.api.redo();
        await engine.settle();
        expect(await standing(await workbook.read())).toEqual(step.after);
        continue;
      }
      const does = await doing(event, all);
      if (!does) continue;
      const top = history.pitchTopUndoElement();
      const one = await outcome(does(preview));
      const isStep = history.pitchTopUndoElement() !== top;
      const other = await outcome(does(excel));
      if (one.kind === "done") expect(answers.rest()).toBe(0);
      else answers.rest();
      expect([event.kind, other]).toEqual([event.kind, one]);
      const [ours, theirs] = await both((host) => host.read());
      const now = await standing(ours);
      expect(await standing(theirs)).toEqual(now);
      if (isStep) step = { before: await standing(all), after: now };
    }
    const names = await workbook.sheetNames();
    const [own, others] = await both(async (host) => filed(await host.toFile(names)));
    expect(others).toEqual(own);
    const [working, worked] = await both(async (host) => filed(await workingFileOf(host, names)));
    expect(worked).toEqual(working);
    const all = await workbook.read();
    await openedAgain(await saved(workbook), async (again) => {
      const opened = await again.read();
      expect(await standing(opened)).toEqual(await standing(all));
      expect(shown(opened)).toEqual(shown(all));
    });
  } finally {
    close();
  }
};

export const playSheets = (count: number, seed: number, size: Size, seconds: number): Promise<void> =>
  fc.assert(fc.asyncProperty(storyOf(size), play), {
    numRuns: count,
    seed,
    // A story that has failed is made shorter only so long: what is known of it by then is told.
    interruptAfterTimeLimit: seconds * 1000,
    markInterruptAsFailure: true,
  });
