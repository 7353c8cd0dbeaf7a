import type { Sheet } from "../sheets/sheet";
import type { Options, Workbook } from "../workbook";
import { takeBack } from "./takeBack";
import { joined } from "./joined";
import { linkedCells, linking, tabsOf, type LinkedCell } from "./links";

/** What came of inserting sheets: their names, their cells that follow another sheet, and cells of other sheets that could follow them. */
export interface Inserted {
  readonly names: readonly string[];
  readonly linked: readonly LinkedCell[];
  readonly couldFollow: readonly LinkedCell[];
  /** What the program refused to draw on them, in words. */
  readonly left: readonly string[];
}

/**
 * Inserts sheets, and lets each cell of theirs that repeats another sheet's follow it where that sheet stands in the
 * workbook or comes with them. What stood there before stays as it is. Whole or not at all.
 */
export const insertLinked = async (
  workbook: Workbook,
  sheets: readonly Sheet[],
  options?: Options,
): Promise<Inserted> => {
  const left: string[] = [];
  const names = await workbook.insert(sheets, { ...options, missing: (words) => left.push(words) });
  try {
    const { tabs } = tabsOf(await workbook.read());
    const isNew = ({ name }: { readonly name: string }): boolean => names.includes(name);
    // An animal that the other sheet does not know keeps its figure.
    const linked = linkedCells(tabs.filter(isNew), tabs).filter(({ there }) => there !== undefined);
    if (linked.length > 0) await workbook.write(joined(linked.map(linking)), options);
    const couldFollow = linkedCells(
      tabs.filter((tab) => !isNew(tab)),
      tabs,
    ).filter(
      ({ isLinked, there, source, here }) => !isLinked && there !== undefined && isNew(source) && here.value !== null,
    );
    return { names, linked, couldFollow, left };
  } catch (failure) {
    return takeBack(() => workbook.remove(names), failure, "Delete the new sheets by hand.");
  }
};

/** Leads over to the list of what is missing. */
export const undrawn = ({ program }: Workbook, left: readonly string[]): string =>
  left.length > 0 ? ` All figures and formulas are there, but ${program} would not draw everything:` : "";
