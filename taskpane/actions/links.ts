import { sheets as templates } from "../sheets/catalogue";
import { fixed } from "../sheets/shared/address";
import { cellOf } from "../sheets/shared/page";
import type { Link, Sheet } from "../sheets/sheet";
import type { CellState, Change, SheetContents } from "../workbook";
import { hasFunction, sheetReferences } from "./formulas";
import { areaOf, cellName, type Area } from "./place";
import { recognise } from "./template";

/** A sheet of the workbook that was made from a template and is where the template has it. */
export interface Tab extends Pick<SheetContents, "name" | "cells" | "locked"> {
  readonly template: Sheet;
}

/** A linked cell of a tab, and the formula that makes it follow its source. */
export interface LinkedCell {
  readonly tab: Tab;
  readonly source: Tab;
  readonly row: number;
  readonly column: number;
  /** What the cell is called on its sheet. */
  readonly words: string;
  readonly formula: string;
  readonly here: CellState;
  /** What stands at the source; undefined where the source has no row for this animal. */
  readonly there: CellState | undefined;
  readonly isLinked: boolean;
  /** Whether it is found by an animal's name. */
  readonly isByName: boolean;
}

const NOTHING: CellState = { value: null };
const isBlank = ({ value }: CellState): boolean => value === null || value === "";

/** A copy whose functions were frozen is a record: nothing follows it, and it follows nothing. */
const isFrozen = ({ blocks }: Sheet, cells: SheetContents["cells"]): boolean =>
  blocks.some(({ rows }) =>
    rows.flat().some((one) => typeof one === "string" && one.startsWith("=") && hasFunction(one)),
  ) && !cells.some((line) => line.some(({ formula }) => formula !== undefined && hasFunction(formula)));

/** The tabs made from templates, in the workbook's order, and the names of those on which cells have been moved. */
export const tabsOf = (
  all: readonly SheetContents[],
): { readonly tabs: readonly Tab[]; readonly moved: readonly string[] } => {
  const tabs: Tab[] = [];
  const moved: string[] = [];
  for (const { name, cells, locked } of all) {
    const known = recognise({ cells }, templates);
    if (!known || isFrozen(known.template, cells)) continue;
    if (known.inPlace) tabs.push({ name, cells, locked, template: known.template });
    else moved.push(name);
  }
  return { tabs, moved };
};

const quoted = (name: string): string => `'${name.replaceAll("'", "''")}'`;
const cellAt = ({ cells }: Tab, row: number, column: number): CellState => cells[row]?.[column] ?? NOTHING;
const place = (address: string): Area => {
  const area = areaOf(address);
  if (!area) throw new Error(`${address} is no place`);
  return area;
};

/** "cooling plan!e12" of each place on another sheet that a formula names. */
const placesIn = (formula: string): ReadonlySet<string> =>
  new Set(sheetReferences(formula).map(({ sheet, address }) => `${sheet}!${address}`.toLowerCase()));

interface Origin {
  readonly key: string;
  /** The cell or column on the source's sheet. */
  readonly at: string;
  /** The column in which the animal is looked for. */
  readonly among?: string;
}

const originOf = ({ from, by }: Link): Origin | undefined => {
  const [key = "", ...name] = from.split(".");
  const template = templates.find((one) => one.key === key);
  if (!template) return undefined;
  const region = name.slice(0, -1).join(".");
  return {
    key,
    at: cellOf(template, name.join(".")),
    ...(by ? { among: cellOf(template, `${region}.label`) } : {}),
  };
};

const namesPlace = ({ formula }: CellState, source: Tab, at: string): boolean =>
  formula !== undefined && placesIn(formula).has(`${source.name}!${at}`.toLowerCase());

/** The same value, figures to what a spreadsheet keeps of them. */
const alike = (one: CellState["value"], other: CellState["value"]): boolean =>
  typeof one === "number" && typeof other === "number"
    ? Math.abs(one - other) <= 1e-9 * Math.max(1, Math.abs(one), Math.abs(other))
    : one === other || (isBlank({ value: one }) && isBlank({ value: other }));

/** Whether a cell shows what its source does: nothing, where the source has no row for its animal. */
export const isEqual = ({ here, there }: LinkedCell): boolean => alike(here.value, there?.value ?? null);

/**
 * The linked cells of some tabs, with their sources among all. Where several tabs could be the source, it is the one that
 * another cell of the same tab follows already, and else the last one.
 */
export const linkedCells = (wanted: readonly Tab[], all: readonly Tab[]): readonly LinkedCell[] =>
  wanted.flatMap((tab) => {
    const links = tab.template.links.flatMap((link) => {
      const origin = originOf(link);
      const sources = origin ? all.filter((one) => one.template.key === origin.key && one.name !== tab.name) : [];
      if (!origin || sources.length === 0) return [];
      const area = place(link.at);
      const cells = Array.from({ length: area.rows }, (_, i) => ({
        i,
        row: area.row + i,
        here: cellAt(tab, area.row + i, area.column),
        at: link.by === undefined && area.rows > 1 ? rowOf(origin.at, i) : origin.at,
      }));
      return [{ link, origin, sources, area, cells }];
    });
    const followed = new Map<string, Tab>();
    for (const { origin, sources, cells } of links)
      for (const { here, at } of cells)
        for (const source of sources) if (namesPlace(here, source, at)) followed.set(origin.key, source);

    return links.flatMap(({ link, origin, sources, area, cells }) =>
      cells.map(({ i, row, here, at }): LinkedCell => {
        const own = sources.find((one) => namesPlace(here, one, at));
        const last = sources.at(-1) as Tab;
        const source = own ?? followed.get(origin.key) ?? last;
        const common = {
          tab,
          source,
          row,
          column: area.column,
          here,
          isLinked: own !== undefined,
          isByName: link.by !== undefined,
        };
        const words = area.rows > 1 ? `${link.words}, line ${i + 1}` : link.words;
        if (link.by === undefined || origin.among === undefined) {
          const from = place(at);
          const there = `${quoted(source.name)}!${fixed(at)}`;
          return {
            ...common,
            words,
            formula: `=IF(${there}="","",${there})`,
            there: cellAt(source, from.row, from.column),
          };
        }
        const key = place(link.by);
        const keyRow = key.rows > 1 ? key.row + i : key.row;
        const who = fixed(cellName(keyRow, key.column));
        const found = `INDEX(${quoted(source.name)}!${fixed(at)},MATCH(${who},${quoted(source.name)}!${fixed(origin.among)},0))`;
        return {
          ...common,
          words,
          formula: `=IF(OR(${who}=""),"",IFNA(IF(${found}="","",${found}),""))`,
          there: rowFor(source, at, origin.among, cellAt(tab, keyRow, key.column)),
        };
      }),
    );
  });

/** The cell so many rows down a column. */
const rowOf = (at: string, down: number): string => {
  const { row, column } = place(at);
  return cellName(row + down, column);
};

/** What a cell shows, in small letters; nothing where it shows an error. */
const lettersOf = ({ value }: CellState): string =>
  value === null || typeof value === "object" ? "" : String(value).toLowerCase();

/** The cell of a list's column in the row whose label is the one wanted, in capitals or not, as MATCH finds it. */
const rowFor = (source: Tab, at: string, among: string, wanted: CellState): CellState | undefined => {
  if (isBlank(wanted)) return NOTHING;
  const [list, names] = [place(at), place(among)];
  const label = lettersOf(wanted);
  for (let i = 0; i < names.rows; i++) {
    const name = cellAt(source, names.row + i, names.column);
    if (!isBlank(name) && lettersOf(name) === label) return cellAt(source, list.row + i, list.column);
  }
  return undefined;
};

/** The change that makes a cell follow its source. */
export const linking = ({ tab, row, column, formula }: LinkedCell): Change => ({
  sheet: tab.name,
  row,
  column,
  cells: [[{ formula }]],
});
