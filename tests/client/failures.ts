import { isPlotted } from "../../taskpane/pictures/plotted";
import type { FakeExcel } from "../excel/fake";
import type { Host } from "./host";
import { last, upTo, type Step } from "./steps";

/** Where Excel fails within an action: after which share of what it is asked, and whether it does nothing more from there on. */
export interface Place {
  readonly share: number;
  readonly forGood?: boolean;
}

/** What an action did where nothing failed. */
export interface Undisturbed {
  /** How much was asked of Excel. */
  readonly calls: number;
  readonly said: string;
  readonly workbook: string;
  readonly withoutOrnaments: string;
}

interface Snapshot {
  readonly active: string;
  readonly tabs: readonly {
    readonly id: string;
    readonly name: string;
    readonly told: unknown;
    readonly looks: unknown;
    readonly charts: unknown;
    readonly cells: readonly (readonly [at: string, cell: { readonly formula: unknown }])[];
  }[];
}
export const held = (excel: FakeExcel): string => JSON.stringify(excel.snapshot());
/** Less what an Excel may refuse to draw on a sheet, the looks of cells among it, and without ids, which charts have too. Its figures and formulas are all there. */
export const heldBare = (excel: FakeExcel): string => {
  const { active, tabs } = excel.snapshot() as Snapshot;
  return JSON.stringify({
    active: tabs.find(({ id }) => id === active)?.name,
    tabs: tabs.map(({ id: _, told: __, looks: ___, charts: ____, cells, ...tab }) => ({
      ...tab,
      cells: cells.filter(([, { formula }]) => !isPlotted(String(formula))),
    })),
  });
};

/** Words for what could not be taken back. */
const LEFT = /yourself|by hand|before you go on|all the same/;
const UNDRAWN = /would not draw everything|does not look like your table/;

/**
 * Does a step in an Excel that fails, and answers what is wrong with what came of it: the workbook has to be as it was, or as
 * the step leaves it, and the pane has to say which. Undefined where all is well; `failed` counts where the step was not done.
 */
export const failing = async (
  host: Host,
  step: Step,
  { share, forGood = false }: Place,
  { calls, said: done, workbook, withoutOrnaments }: Undisturbed,
): Promise<{ readonly failed: boolean; readonly fault?: string }> => {
  const { page, excel } = host;
  await upTo(step, page, excel);
  const before = held(excel);
  const saved = host.saved;
  excel.stuck = forGood;
  excel.failAt = excel.calls + Math.max(1, Math.round(share * calls));
  const said = await last(step, page);
  excel.failAt = undefined;
  excel.stuck = false;

  const failed = said.startsWith("×");
  const now = held(excel);
  const at = `${step.does}, failing ${forGood ? "for good " : ""}at ${share}, says "${said}"`;
  const fault = (words: string) => ({ failed, fault: `${at}: ${words}` });
  if (failed) {
    if (now !== before && !(forGood && LEFT.test(said))) return fault("the workbook is not as it was");
    if (now !== before && said.includes("Nothing was changed")) return fault("something was");
    if (host.saved > saved) return fault("a file was saved");
    return { failed };
  }
  if (!said.includes(done)) return fault(`neither failed nor "${done}"`);
  if (now === workbook) return { failed };
  if (!UNDRAWN.test(said)) return fault("the workbook is not what it says");
  return heldBare(excel) === withoutOrnaments ? { failed } : fault("more is missing than it says");
};
