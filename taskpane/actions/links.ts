import { sheets as templates } from "../sheets/catalogue";
import { fromMetric, toMetric, type System, type Unit } from "../../functions/units";
import { areaOf as cornersOf, fixed, inside } from "../sheets/shared/address";
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

/** A figure of one system in the other, as part of a formula: words and blanks stay what they are. */
const turnedText = (figure: string, unit: Unit, to: System): string => {
  const other: System = "imperial";
  const [offset, one] = [fromMetric(0, unit, other), fromMetric(1, unit, other)];
  const factor = one - offset;
  // An ounce is so many grams exactly, but not a gram so many ounces; of degrees it is the other way round.
  const [times, by] = factor > 1 && factor < 2 ? ["*", "/"] : ["/", "*"];
  const exact = Number((times === "*" ? factor : 1 / factor).toPrecision(12));
  const there =
    to === "imperial"
      ? `${figure}${times}${exact}${offset === 0 ? "" : `+${offset}`}`
      : `${offset === 0 ? figure : `(${figure}-${offset})`}${by}${exact}`;
  return `IF(ISNUMBER(${figure}),${there},${figure})`;
};
const turned = (state: CellState | undefined, unit: Unit, from: System, to: System): CellState | undefined =>
  typeof state?.value === "number"
    ? { ...state, value: fromMetric(toMetric(state.value, unit, from), unit, to) }
    : state;

/** The unit of a cell's figure, where it has one. */
const unitAt = ({ quantities }: Sheet, row: number, column: number): Unit | undefined => {
  const at = cornersOf(cellName(row, column));
  return quantities.find(({ range }) => inside(at, cornersOf(range)))?.unit;
};

/** A formula without what hosts spell in their own way. */
const plain = (formula: string): string => formula.replace(/[\s$]/g, "").toLowerCase();

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
        const { system } = tab.template;
        const ofItsOwn = sources.filter(({ template }) => template.system === system);
        const last = (ofItsOwn.at(-1) ?? sources.at(-1)) as Tab;
        const source = own ?? followed.get(origin.key) ?? last;
        const unit = source.template.system === system ? undefined : unitAt(tab.template, row, area.column);
        const inOwn = (figure: string): string => (unit ? turnedText(figure, unit, system) : figure);
        const seen = (state: CellState | undefined): CellState | undefined =>
          unit ? turned(state, unit, source.template.system, system) : state;
        const words = `${area.rows > 1 ? `${link.words}, line ${i + 1}` : link.words}${unit ? " (converted)" : ""}`;
        const found = (formula: string, there: CellState | undefined): LinkedCell => ({
          tab,
          source,
          row,
          column: area.column,
          words,
          formula,
          here,
          there: seen(there),
          // One that takes the other system's figure for its own follows nothing.
          isLinked: own !== undefined && (!unit || plain(here.formula ?? "") === plain(formula)),
          isByName: link.by !== undefined,
        });
        if (link.by === undefined || origin.among === undefined) {
          const from = place(at);
          const there = `${quoted(source.name)}!${fixed(at)}`;
          return found(`=IF(${there}="","",${inOwn(there)})`, cellAt(source, from.row, from.column));
        }
        const key = place(link.by);
        const keyRow = key.rows > 1 ? key.row + i : key.row;
        const who = fixed(cellName(keyRow, key.column));
        const theirs = `INDEX(${quoted(source.name)}!${fixed(at)},MATCH(${who},${quoted(source.name)}!${fixed(origin.among)},0))`;
        return found(
          `=IF(OR(${who}=""),"",IFNA(IF(${theirs}="","",${inOwn(theirs)}),""))`,
          rowFor(source, at, origin.among, cellAt(tab, keyRow, key.column)),
        );
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
