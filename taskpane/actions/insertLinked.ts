import type { Sheet } from "../sheets/sheet";
import type { Options, Workbook } from "../workbook";
import { takeBack } from "./takeBack";
import { joined } from "./joined";
import { isEmpty, linkedCells, linking, tabsOf, type LinkedCell } from "./links";

/** What came of inserting sheets: their names, their cells that follow another sheet, and cells of other sheets that could follow them. */
export interface Inserted {
  readonly names: readonly string[];
  readonly linked: readonly LinkedCell[];
  /** Cells of other sheets that keep a list of such sheets, and have entered the new ones in it. */
  readonly entered: readonly LinkedCell[];
  readonly couldFollow: readonly LinkedCell[];
  /** What the program refused to draw on them, in words. */
  readonly left: readonly string[];
}

/**
 * Inserts sheets, and lets each cell of theirs that repeats another sheet's follow it where that sheet stands in the
 * workbook or comes with them. What stood there before stays as it is; a free place in a list of such sheets takes them.
 * Whole or not at all.
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
    const others = linkedCells(
      tabs.filter((tab) => !isNew(tab)),
      tabs,
    ).filter(({ isLinked, there, source }) => !isLinked && there !== undefined && isNew(source));
    const entered = others.filter(
      ({ tab, nth }) =>
        nth !== undefined && !tab.locked && others.every((one) => one.tab !== tab || one.nth !== nth || isEmpty(one)),
    );
    const changes = [...linked, ...entered];
    if (changes.length > 0) await workbook.write(joined(changes.map(linking)), options);
    const couldFollow = others.filter((cell) => !entered.includes(cell) && cell.here.value !== null);
    return { names, linked, entered, couldFollow, left };
  } catch (failure) {
    return takeBack(() => workbook.remove(names), failure, "Delete the new sheets by hand.");
  }
};

/** Leads over to the list of what is missing. */
export const undrawn = ({ program }: Workbook, left: readonly string[]): string =>
  left.length > 0 ? ` All figures and formulas are there, but ${program} would not draw everything:` : "";
