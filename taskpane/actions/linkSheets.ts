import type { CellState, Workbook } from "../workbook";
import { counted, impossible, sheetsInWords, stopIfCancelled, type Action } from "./action";
import { joined } from "./joined";
import { choiceOf, isEqual, linkedCells, linking, tabsOf, type LinkedCell, type Tab } from "./links";
import { cellName, onSheet } from "./place";
import { shownOf } from "./worked";

/**
 * How a cell stands to the one that it repeats. A blank that could be filled is told from a figure that would go, and from
 * a cell that follows another sheet of the kind.
 */
export type Standing = "linked" | "equal" | "blank" | "elsewhere" | "different";

/** A line of the table: a cell, what stands in it and at its source, as a keeper reads it. */
export interface LinkLine {
  /** "'Winter log'!B8" */
  readonly place: string;
  readonly sheet: string;
  readonly words: string;
  readonly here: string;
  readonly source: string;
  readonly there: string;
  readonly standing: Standing;
}

/** The sheets that could be followed where there are several of one kind, and the one that is, or would be. */
export interface SourceChoice {
  readonly key: string;
  readonly sheet: string;
  /** What the sheets were made from: "Cooling plan". */
  readonly kind: string;
  readonly names: readonly string[];
  readonly source: string;
}

/** Which sheet is to be followed, by the key of a `SourceChoice`. */
export type Sources = ReadonlyMap<string, string>;

/** The places of the cells that are to follow their source, and the sources that were chosen. */
export interface LinkChoice {
  readonly ticked: readonly string[];
  readonly sources?: Sources;
}

const read = (state: CellState | undefined): string => {
  const shown = state ? shownOf(state) : null;
  return shown === null || shown === "" ? "blank" : String(shown);
};

const standingOf = (cell: LinkedCell): Standing =>
  cell.isLinked
    ? "linked"
    : cell.isElsewhere
      ? "elsewhere"
      : isEqual(cell)
        ? "equal"
        : read(cell.here) === "blank"
          ? "blank"
          : "different";

const placeOf = ({ tab, row, column }: LinkedCell): string => onSheet(tab.name, cellName(row, column));

/** What could be linked or is; left out are rows of animals that the other sheet does not have. */
const cellsOf = async (workbook: Workbook, sources?: Sources) => {
  const { tabs, moved } = tabsOf(await workbook.read());
  const cells = linkedCells(tabs, tabs, sources).filter(
    (cell) =>
      cell.isLinked || (cell.there !== undefined && !(cell.isByName && isEqual(cell) && read(cell.here) === "blank")),
  );
  return { tabs, cells, moved };
};

const choicesOf = (tabs: readonly Tab[], cells: readonly LinkedCell[]): readonly SourceChoice[] => {
  const choices = new Map<string, SourceChoice>();
  for (const { tab, source, nth } of cells) {
    const { key, name: kind } = source.template;
    const names = tabs
      .filter(({ template, name }) => template.key === key && name !== tab.name)
      .map(({ name }) => name);
    const choice = choiceOf(tab, key);
    // The first cell speaks for all: a sheet follows one of each kind.
    if (names.length < 2 || nth !== undefined || choices.has(choice)) continue;
    choices.set(choice, { key: choice, sheet: tab.name, kind, names, source: source.name });
  }
  return [...choices.values()];
};

/** The table of every linked cell of the workbook, and the sheets that cannot be looked at because cells were moved. */
export const linkLines = async (
  workbook: Workbook,
  sources?: Sources,
): Promise<{
  readonly lines: readonly LinkLine[];
  readonly moved: readonly string[];
  readonly choices: readonly SourceChoice[];
}> => {
  const { tabs, cells, moved } = await cellsOf(workbook, sources);
  return {
    moved,
    choices: choicesOf(tabs, cells),
    lines: cells.map((cell) => ({
      place: placeOf(cell),
      sheet: cell.tab.name,
      words: cell.words,
      here: read(cell.here),
      source: cell.source.name,
      there: read(cell.there),
      standing: standingOf(cell),
    })),
  };
};

const planOf = async (workbook: Workbook, { ticked, sources }: LinkChoice) => {
  const wanted = new Set(ticked);
  const open = (await cellsOf(workbook, sources)).cells.filter((cell) => !cell.isLinked && wanted.has(placeOf(cell)));
  return {
    cells: open.filter(({ tab }) => !tab.locked),
    left: open.filter(({ tab }) => tab.locked).map((cell) => `${placeOf(cell)}: the sheet is protected`),
  };
};

export const linkSheets: Action<LinkChoice> = {
  key: "link-sheets",
  label: "Link what is ticked",
  about:
    "A date, a limit or an animal's figure that several sheets hold stands once, and the others follow it. See which do, " +
    "which are typed, and where the two differ.",
  async describe(workbook, chosen) {
    const { cells, left } = await planOf(workbook, chosen);
    if (cells.length === 0) {
      return impossible(left.length > 0 ? "Nothing can be linked:" : "Tick what is to follow the other sheet.", left);
    }
    const gone = cells.filter((cell) => standingOf(cell) === "different");
    const sources = sheetsInWords([...new Set(cells.map(({ source }) => source.name))]);
    return {
      text:
        `${counted(cells.length, "cell")} will follow ${sources}.` +
        (gone.length > 0
          ? ` Take care: ${counted(gone.length, "figure")} that ${gone.length === 1 ? "is" : "are"} typed will go.`
          : " No figure changes that is typed now.") +
        (workbook.undoes ? "" : " This cannot be undone."),
      list: [
        ...left,
        ...gone.map((cell) => `${placeOf(cell)}, ${cell.words}: ${read(cell.here)} becomes ${read(cell.there)}`),
      ],
      possible: true,
      ask: true,
    };
  },
  async run(workbook, chosen, options) {
    const { cells, left } = await planOf(workbook, chosen);
    stopIfCancelled(options);
    if (cells.length === 0) return { text: "Nothing was linked, and nothing was changed.", left };
    await workbook.write(joined(cells.map(linking)), options);
    return {
      text: `${counted(cells.length, "cell")} ${cells.length === 1 ? "follows" : "follow"} another sheet now.${left.length > 0 ? " Left as they were:" : ""}`,
      left,
    };
  },
};
