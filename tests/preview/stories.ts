import { Workbook as Book } from "@cj-tech-master/excelts";
import { AddCfCommand } from "@univerjs/sheets-conditional-formatting";
import fc from "fast-check";
import { storedFormula } from "../../addin/file/newFunctions";
import { PreviewWorkbook } from "../../addin/preview/workbook";
import { perform, type Action } from "../../taskpane/actions/action";
import { freeze } from "../../taskpane/actions/freeze";
import { thaw } from "../../taskpane/actions/thaw";
import { WORKED } from "../../taskpane/actions/worked";
import { areaOf } from "../../taskpane/sheets/shared/address";
import type { Sheet } from "../../taskpane/sheets/sheet";
import { WorkbookError, type CellContent } from "../../taskpane/workbook";
import { openWorkbook } from "./engine";
import { everythingIn } from "./everythingIn";
import { refuse } from "./refuse";

/**
 * Stories of what keepers do, played in the headless workbook and in a plain model beside it: after every step all cells,
 * the sheets' order and names are those of the model, and what comes back by undo, redo, or from a file is what was there,
 * to the letter.
 */

/** Every sheet of a story has the same places: inputs, a reference, sums, a spill, and what reads it. */
const INPUTS = ["A1", "A2", "A3", "A4"] as const;
const SPILL = ["E1", "E2", "E3", "E4"] as const;
const DROP = 6.5; // K from 500 m to 1500 m, at the usual 6.5 K per km
const LAPSE = "=VIV.LAPSE(A1:A4,500,1500)";
const FAR = "BZ300";

/** Where a cell shows one, "error" stands for all errors. */
type Plain = number | string | null;
/** What a cell of the model holds: a constant, a formula, or an answer that Freeze has left. */
type Held = { readonly is: Plain } | { readonly formula: string } | { readonly frozen: Plain };
interface ModelSheet {
  readonly name: string;
  readonly hidden: boolean;
  /** By address. Blank cells are not there. */
  readonly cells: Readonly<Record<string, Held>>;
}
interface Frozen {
  readonly sheet: string;
  readonly at: readonly string[];
  readonly formula: string;
  readonly left: readonly Plain[];
}
interface Model {
  readonly sheets: readonly ModelSheet[];
  /** The sheet of whose first cell "warm" is the name. */
  readonly warm?: string;
  readonly worked: readonly Frozen[];
}

const quoted = (name: string): string => `'${name.replaceAll("'", "''")}'`;
const sheetOf = (model: Model, name: string): ModelSheet | undefined => model.sheets.find((one) => one.name === name);

/** Whether the formula of the first cell finds its way free. */
const spills = ({ cells }: ModelSheet): boolean => {
  const [first, ...others] = SPILL;
  const held = cells[first];
  return held !== undefined && "formula" in held && !others.some((at) => at in cells);
};

/** What a cell shows, worked out by hand. */
const shownAt = (model: Model, sheet: ModelSheet, at: string): Plain => {
  const sum = (values: readonly Plain[]): number | "error" =>
    values.includes("error")
      ? "error"
      : values.reduce<number>((total, one) => total + (typeof one === "number" ? one : 0), 0);
  const plus = (value: Plain | undefined, change: (given: number) => number): number | "error" =>
    typeof value === "string" || value === undefined ? "error" : change(value ?? 0);
  const held = sheet.cells[at];
  const place = SPILL.indexOf(at as (typeof SPILL)[number]);
  if (place >= 0 && spills(sheet)) {
    const given = shownAt(model, sheet, INPUTS[place] as string);
    return typeof given === "number" ? given - DROP : "error";
  }
  if (held === undefined) return null;
  if ("is" in held) return held.is;
  if ("frozen" in held) return held.frozen;
  if (held.formula === LAPSE) return "error"; // no room
  if (held.formula === "=SUM(A1:A4)") return sum(INPUTS.map((one) => shownAt(model, sheet, one)));
  if (held.formula === "=SUM(E1:E4)") return sum(SPILL.map((one) => shownAt(model, sheet, one)));
  if (held.formula === "=warm+1") {
    const on = model.warm === undefined ? undefined : sheetOf(model, model.warm);
    return plus(on && shownAt(model, on, "A1"), (given) => given + 1);
  }
  const name = /^='(.*)'!A1\*2$/.exec(held.formula)?.[1]?.replaceAll("''", "'");
  const other = name === undefined ? undefined : sheetOf(model, name);
  return plus(other && shownAt(model, other, "A1"), (given) => given * 2);
};

/** All that a sheet shows and the formulas in it, by address. */
const tableOf = (model: Model, sheet: ModelSheet): Record<string, unknown> => {
  const filled = spills(sheet) ? SPILL : [];
  const table: Record<string, unknown> = {};
  for (const at of new Set([...Object.keys(sheet.cells), ...filled])) {
    const held = sheet.cells[at];
    const formula = held && "formula" in held ? held.formula : undefined;
    table[at] = { value: shownAt(model, sheet, at), ...(formula === undefined ? {} : { formula }) };
  }
  return table;
};

const changed = (model: Model, name: string, cells: Readonly<Record<string, Held | null>>): Model => ({
  ...model,
  sheets: model.sheets.map((sheet) =>
    sheet.name === name
      ? {
          ...sheet,
          cells: Object.fromEntries(
            Object.entries({ ...sheet.cells, ...cells }).filter((one): one is [string, Held] => one[1] !== null),
          ),
        }
      : sheet,
  ),
});

/** The same sheet as the inserted template, which has a rule, a note and validation beside its cells. */
const template: Sheet = {
  key: "story",
  name: "Everything",
  sentence: "For stories.",
  cautions: ["proxy"],
  sources: ["standardAtmosphere"],
  widths: [12, 12],
  blocks: [
    { at: "A1", role: "input", rows: [[20], [10.5], [-4], [0]] },
    { at: "E1", role: "computed", rows: [[LAPSE]], spills: [4, 1] },
    { at: "F1", role: "computed", rows: [["=SUM(E1:E4)"]] },
  ],
  formats: [],
  validation: [{ range: "A1:A4", kind: "number", least: -50, most: 60, message: "Give a number from -50 to 60." }],
  rules: [{ range: "A1:A4", when: "=$A1<10", look: "cold" }],
  notes: [{ at: "A1", text: "A monthly mean." }],
  system: "metric",
  quantities: [],
  places: {},
  links: [],
  needed: [],
  merges: [],
  lines: [],
  charts: [],
  freeze: { rows: 0, columns: 0 },
};
const templateCells: ModelSheet["cells"] = {
  A1: { is: 20 },
  A2: { is: 10.5 },
  A3: { is: -4 },
  A4: { is: 0 },
  E1: { formula: LAPSE },
  F1: { formula: "=SUM(E1:E4)" },
};

const NAMES = ["Log", "It's mine", "Old (2)", "2026", "Box 3", "Everything", "Sheet1", "Between", "Nachtkühle", "A1"];
/** Halves add up without a rest. */
const input = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: -80, max: 100 }).map((halves) => halves / 2) },
  { weight: 2, arbitrary: fc.constant(null) },
  { weight: 1, arbitrary: fc.constantFrom("warm", "=text") },
);

/** A workbook as a keeper's program has saved it. */
const given = fc
  .record({
    names: fc.shuffledSubarray(NAMES, { minLength: 1, maxLength: 8 }),
    seeds: fc.array(
      fc.record({
        inputs: fc.tuple(input, input, input, input),
        hidden: fc.boolean(),
        refers: fc.option(fc.nat(7), { nil: undefined }),
        sums: fc.boolean(),
        lapse: fc.boolean(),
        reads: fc.boolean(),
      }),
      { minLength: 8, maxLength: 8 },
    ),
    warm: fc.option(fc.nat(7), { nil: undefined }),
  })
  .map(({ names, seeds, warm }): Model => {
    const pick = (number: number): string => names[number % names.length] as string;
    const warmOn = warm === undefined ? undefined : pick(warm);
    const sheets = names.map((name, i): ModelSheet => {
      const { inputs, hidden, refers, sums, lapse, reads } = seeds[i] as (typeof seeds)[number];
      const cells: Record<string, Held> = {};
      inputs.forEach((is, row) => {
        if (is !== null) cells[INPUTS[row] as string] = { is };
      });
      if (refers !== undefined) cells.C1 = { formula: `=${quoted(pick(refers))}!A1*2` };
      if (sums) cells.C2 = { formula: "=SUM(A1:A4)" };
      if (sums && warmOn !== undefined) cells.C3 = { formula: "=warm+1" };
      if (lapse) cells.E1 = { formula: LAPSE };
      if (reads) cells.F1 = { formula: "=SUM(E1:E4)" };
      return { name, hidden: hidden && i > 0, cells };
    });
    return { sheets, worked: [], ...(warmOn === undefined ? {} : { warm: warmOn }) };
  });

const bytesOf = async ({ sheets, warm }: Model): Promise<Uint8Array> => {
  const book = new Book();
  for (const { name, hidden, cells } of sheets) {
    const sheet = book.addWorksheet(name, hidden ? { state: "hidden" } : {});
    for (const [at, held] of Object.entries(cells)) {
      if ("is" in held) sheet.getCell(at).value = held.is;
      else if ("formula" in held) sheet.getCell(at).value = { formula: storedFormula(held.formula) };
    }
    sheet.addConditionalFormatting({
      ref: "A1",
      rules: [{ type: "expression", priority: 1, formulae: ["A1>30"], style: {} }],
    });
  }
  // As a formula: in a place the library doubles apostrophes once too often.
  if (warm !== undefined) book.definedNames.addFormula("warm", `${quoted(warm)}!$A$1`);
  return new Uint8Array(await book.xlsx.writeBuffer());
};

const edit = fc.record({
  kind: fc.constant("edit" as const),
  sheet: fc.nat(9),
  put: fc.oneof(
    fc.tuple(fc.constantFrom(...INPUTS, "C2", "E1", "E3", FAR), input),
    fc.tuple(fc.constantFrom("C2", "C3", "E1", "F1"), fc.constant({ formula: "" })),
  ),
});
const FORMULAS: Readonly<Record<string, string>> = { C2: "=SUM(A1:A4)", C3: "=warm+1", E1: LAPSE, F1: "=SUM(E1:E4)" };

const event = fc.oneof(
  { weight: 5, arbitrary: edit },
  { weight: 3, arbitrary: given.map((model) => ({ kind: "open" as const, model })) },
  { weight: 1, arbitrary: given.map((model) => ({ kind: "fail" as const, model })) },
  { weight: 4, arbitrary: fc.constant({ kind: "undo" as const }) },
  { weight: 2, arbitrary: fc.constant({ kind: "redo" as const }) },
  { weight: 2, arbitrary: fc.constant({ kind: "save" as const }) },
  { weight: 2, arbitrary: fc.constant({ kind: "freeze" as const }) },
  { weight: 2, arbitrary: fc.constant({ kind: "thaw" as const }) },
  { weight: 1, arbitrary: fc.constant({ kind: "insert" as const }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant("show" as const), sheet: fc.nat(9) }) },
);
type Event = typeof event extends fc.Arbitrary<infer One> ? One : never;

/** A state of the workbook: what the model says, what was found to stand, and whether the sheet shown is part of it. */
interface State {
  readonly model: Model;
  readonly stood: string;
  /** The sheet that was shown when an Open took the place of this state. */
  shown?: string;
  /** The sheet that is shown when this state comes by an Open. */
  readonly opened?: string;
}

const frozenBy = (model: Model): Model | undefined => {
  const entries = model.sheets.flatMap((sheet): Frozen[] => {
    if (!spills(sheet)) return [];
    return [{ sheet: sheet.name, at: SPILL, formula: LAPSE, left: SPILL.map((at) => shownAt(model, sheet, at)) }];
  });
  if (entries.length === 0) return undefined;
  const cleared = entries.reduce(
    (now, { sheet, at, left }) =>
      changed(now, sheet, Object.fromEntries(at.map((one, i) => [one, { frozen: left[i] as Plain }]))),
    model,
  );
  const kept = model.worked.filter((old) => !entries.some(({ sheet }) => sheet === old.sheet));
  return { ...cleared, worked: [...kept, ...entries] };
};

const thawedBy = (model: Model): Model | undefined => {
  const isAsLeft = ({ sheet, at, left }: Frozen): boolean => {
    const on = sheetOf(model, sheet);
    return (
      on !== undefined &&
      at.every((one, i) => {
        const held = on.cells[one];
        // A figure typed over the same figure is the same.
        return held !== undefined && !("formula" in held) && shownAt(model, on, one) === left[i];
      })
    );
  };
  const back = model.worked.filter(isAsLeft);
  if (back.length === 0) return undefined;
  const put = back.reduce(
    (now, { sheet, at, formula }) =>
      changed(now, sheet, Object.fromEntries(at.map((one, i) => [one, i === 0 ? { formula } : null]))),
    model,
  );
  const worked = model.worked.filter((one) => !back.includes(one));
  return {
    ...put,
    worked,
    sheets: worked.length > 0 ? put.sheets : put.sheets.filter(({ name }) => name !== WORKED),
  };
};

/** Plays one story; throws at the first step at which the workbook and the model part. */
export const play = async (start: Model, events: readonly Event[]): Promise<void> => {
  const { engine, close } = openWorkbook();
  try {
    const workbook = new PreviewWorkbook(engine);
    const book = () => {
      const found = engine.api.getActiveWorkbook();
      if (!found) throw new Error("no workbook");
      return found;
    };
    const stands = (): Promise<string> => everythingIn(engine, workbook);
    const shown = (): string => book().getActiveSheet().getSheetName();
    const now = (): State => history[place] as State;
    const history: State[] = [];
    let place = -1;
    const step = async (model: Model, opened?: string): Promise<void> => {
      history.splice(place + 1);
      history.push({ model, stood: await stands(), ...(opened === undefined ? {} : { opened }) });
      place++;
    };
    const firstShown = ({ sheets }: Model): string => (sheets.find(({ hidden }) => !hidden) ?? sheets[0])?.name ?? "";

    /** Cell by cell against the model, but for the sheet of worked formulas, whose words are held by tests of its own. */
    const compare = async (): Promise<void> => {
      const { model } = now();
      const found = await workbook.read();
      expect(found.map(({ name, hidden }) => [name, hidden])).toEqual(
        model.sheets.map(({ name, hidden }) => [name, hidden]),
      );
      for (const sheet of model.sheets) {
        if (sheet.name === WORKED) continue;
        const table: Record<string, unknown> = {};
        const cells = found.find(({ name }) => name === sheet.name)?.cells ?? [];
        cells.forEach((line, row) =>
          line.forEach(({ value, formula }, column) => {
            if (value === null && formula === undefined) return;
            const at = `${column < 26 ? "" : String.fromCharCode(64 + Math.floor(column / 26))}${String.fromCharCode(65 + (column % 26))}${row + 1}`;
            const isError = typeof value === "object" && value !== null;
            const held = sheet.cells[at];
            // An error that Freeze has left is a native formula that gives it.
            const own = isError && held && "frozen" in held ? undefined : formula;
            table[at] = { value: isError ? "error" : value, ...(own === undefined ? {} : { formula: own }) };
          }),
        );
        expect([sheet.name, table]).toEqual([sheet.name, tableOf(model, sheet)]);
      }
    };
    const act = async (action: Action<readonly string[] | undefined>): Promise<boolean> => {
      const asked = await perform(action, workbook, undefined);
      if (asked.kind === "refused") return false;
      if (asked.kind !== "ask") throw new Error("it does not ask");
      expect((await perform(action, workbook, undefined, {}, asked.words)).kind).toBe("done");
      return true;
    };
    const opening = async (name: string, bytes: Uint8Array, model: Model): Promise<void> => {
      const before = now();
      before.shown = shown();
      const { left } = await workbook.open(name, bytes);
      expect(left).toEqual([]);
      const first = firstShown(model);
      expect(shown()).toBe(first);
      await step(model, first);
    };
    const refused = async (what: Promise<unknown>): Promise<void> => {
      const [before, tab] = [now().stood, shown()];
      await expect(what).rejects.toThrow(WorkbookError);
      expect(await stands()).toBe(before);
      expect(shown()).toBe(tab);
    };

    await step({ sheets: [{ name: "Sheet1", hidden: false, cells: {} }], worked: [] });
    await opening("start.xlsx", await bytesOf(start), start);
    await compare();
    for (const one of events) {
      const { model } = now();
      switch (one.kind) {
        case "open":
          await opening("another.xlsx", await bytesOf(one.model), one.model);
          break;
        case "fail": {
          const whole = await bytesOf(one.model);
          // The engine refuses the rule of the last sheet, when all sheets stand already.
          const refusing = refuse(engine, AddCfCommand.id, one.model.sheets.length);
          await refused(workbook.open("refused.xlsx", whole));
          expect(refusing.restore()).toBe(true);
          const told = jest.spyOn(console, "warn").mockImplementation(() => undefined);
          await refused(workbook.open("half.xlsx", whole.slice(0, whole.length / 2)));
          told.mockRestore();
          // What was taken back is no step, and what could be redone before cannot any more.
          history.splice(place + 1);
          break;
        }
        case "edit": {
          const sheet = model.sheets[one.sheet % model.sheets.length] as ModelSheet;
          if (sheet.name === WORKED) break;
          const [at] = one.put;
          const wanted = one.put[1];
          const content: CellContent =
            typeof wanted === "object" && wanted !== null ? { formula: FORMULAS[at] as string } : wanted;
          const { top, left } = areaOf(at);
          const writing = workbook.write([{ sheet: sheet.name, row: top - 1, column: left - 1, cells: [[content]] }]);
          const isSpilled = at !== SPILL[0] && SPILL.includes(at as "E2") && spills(sheet);
          if (isSpilled && content !== null) {
            await refused(writing);
            break;
          }
          await writing;
          const held: Held | null =
            content === null ? null : typeof content === "object" ? content : { is: content as Plain };
          await step(changed(model, sheet.name, { [at]: held }));
          break;
        }
        case "insert": {
          const [name = ""] = await workbook.insert([template]);
          expect(model.sheets.map((sheet) => sheet.name)).not.toContain(name);
          await step({ ...model, sheets: [...model.sheets, { name, hidden: false, cells: templateCells }] });
          break;
        }
        case "freeze": {
          const wanted = frozenBy(model);
          expect(await act(freeze)).toBe(wanted !== undefined);
          if (!wanted) break;
          const has = model.sheets.some(({ name }) => name === WORKED);
          await step({
            ...wanted,
            sheets: has ? wanted.sheets : [...wanted.sheets, { name: WORKED, hidden: false, cells: {} }],
          });
          break;
        }
        case "thaw": {
          const wanted = thawedBy(model);
          expect(await act(thaw)).toBe(wanted !== undefined);
          if (wanted) await step(wanted);
          break;
        }
        case "save": {
          const { stood } = now();
          const bytes = await workbook.save();
          const others = await workbook.toFile(await workbook.sheetNames());
          expect(others.length).toBeGreaterThan(0);
          expect(await stands()).toBe(stood);
          await opening(`${workbook.title() ?? "Vivarium Almanac"}.xlsx`, bytes, model);
          if (workbook.title() !== undefined && place > 1)
            expect(JSON.parse(now().stood)).toEqual({ ...(JSON.parse(stood) as object), title: workbook.title() });
          break;
        }
        case "show": {
          const visible = model.sheets.filter(({ hidden }) => !hidden);
          await workbook.show((visible[one.sheet % visible.length] as ModelSheet).name);
          break;
        }
        case "undo":
        case "redo": {
          const to = place + (one.kind === "undo" ? -1 : 1);
          if (to < 0 || to >= history.length) break;
          const from = now();
          if (one.kind === "undo") book().undo();
          else book().redo();
          place = to;
          expect(await stands()).toBe(now().stood);
          if (one.kind === "undo" && from.opened !== undefined) expect(shown()).toBe(now().shown);
          if (one.kind === "redo" && now().opened !== undefined) expect(shown()).toBe(now().opened);
        }
      }
      await compare();
    }
  } finally {
    close();
  }
};

/** Plays so many stories; a failure names its seed, and shrinks to the shortest story that still fails. */
export const playStories = (count: number, seed: number): Promise<void> =>
  fc.assert(fc.asyncProperty(given, fc.array(event, { minLength: 1, maxLength: 10 }), play), { numRuns: count, seed });
