import type { Sheet } from "../sheets/sheet";
import type { Change, Options, Workbook } from "../workbook";
import { sheetsInWords } from "./action";
import { showAgain, shownNow } from "./shown";
import { takeBack } from "./takeBack";
import { joined } from "./joined";
import { isEmpty, linkedCells, linking, tabsOf, type LinkedCell, type Tab } from "./links";

interface Unlisted {
  readonly source: string;
  readonly on: string;
}

/** What came of inserting sheets: their names, their cells that follow another sheet, and cells of other sheets that could follow them. */
export interface Inserted {
  readonly names: readonly string[];
  readonly linked: readonly LinkedCell[];
  /** Cells of other sheets that keep a list of such sheets, and have entered the new ones in it. */
  readonly entered: readonly LinkedCell[];
  readonly couldFollow: readonly LinkedCell[];
  /** Sheets that found no place in the list of such sheets on another: what is on that one cannot go by them. */
  readonly unlisted: readonly Unlisted[];
  /** What the program refused to draw on them, in words. */
  readonly left: readonly string[];
}

/**
 * Inserts sheets, and lets each cell of theirs that repeats another sheet's follow it where that sheet stands in the
 * workbook or comes with them. What stood there before stays as it is; a free place in a list of such sheets takes them.
 * `also` is written with that, once the sheets have their names. Whole or not at all.
 */
export const insertLinked = async (
  workbook: Workbook,
  sheets: readonly Sheet[],
  options?: Options,
  also: (names: readonly string[]) => readonly Change[] = () => [],
): Promise<Inserted> => {
  const left: string[] = [];
  const shown = await shownNow(workbook);
  const names = await workbook.insert(sheets, { ...options, missing: (words) => left.push(words) });
  try {
    const { tabs } = tabsOf(await workbook.read());
    const isNew = ({ name }: { readonly name: string }): boolean => names.includes(name);
    // An animal that the other sheet does not know keeps its figure.
    const all = linkedCells(tabs, tabs);
    const linked = all.filter(({ tab, there }) => isNew(tab) && there !== undefined);
    const others = all
      .filter(({ tab }) => !isNew(tab))
      .filter(({ isLinked, there, source }) => !isLinked && there !== undefined && isNew(source));
    const entered = others.filter(
      ({ tab, nth }) =>
        nth !== undefined && !tab.locked && others.every((one) => one.tab !== tab || one.nth !== nth || isEmpty(one)),
    );
    const changes = [...[...linked, ...entered].map(linking), ...also(names)];
    if (changes.length > 0) await workbook.write(joined(changes), options);
    const couldFollow = others.filter((cell) => !entered.includes(cell) && cell.here.value !== null);
    const unlisted = withoutPlace(tabs, all).filter(({ source, on }) =>
      [source, on].some((name) => names.includes(name)),
    );
    return { names, linked, entered, couldFollow, unlisted, left };
  } catch (failure) {
    return takeBack(
      async () => {
        await workbook.remove(names);
        if (shown) await showAgain(workbook, shown);
      },
      failure,
      "Delete the new sheets by hand.",
    );
  }
};

/** Sheets for which a list of such sheets on another one has no place left. */
const withoutPlace = (tabs: readonly Tab[], cells: readonly LinkedCell[]): readonly Unlisted[] =>
  tabs.flatMap((tab) => {
    const keys = new Set(tab.template.links.flatMap(({ from, nth }) => (nth === undefined ? [] : [keyOf(from)])));
    return tabs
      .filter((source) => keys.has(source.template.key))
      .filter((source) => !cells.some((one) => one.nth !== undefined && one.tab === tab && one.source === source))
      .map((source) => ({ source: source.name, on: tab.name }));
  });
const keyOf = (from: string): string => from.split(".")[0] as string;

/** Says so of sheets that found no place in a list of such sheets. */
export const unlistedWords = (unlisted: readonly Unlisted[]): string => {
  if (unlisted.length === 0) return "";
  const [sources, lists] = [unlisted.map(({ source }) => source), unlisted.map(({ on }) => on)].map((all) =>
    sheetsInWords([...new Set(all)]),
  );
  return ` There is no place left for ${sources} on ${lists}: no animal there can follow it. Empty there the column of a plan that is over, then see "Link sheets".`;
};

/** Leads over to the list of what is missing. */
export const undrawn = ({ program }: Workbook, left: readonly string[]): string =>
  left.length > 0 ? ` All figures and formulas are there, but ${program} would not draw everything:` : "";
