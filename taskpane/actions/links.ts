import { sheets as templates } from "../sheets/catalogue";
import { fromMetric, toMetric, type System, type Unit } from "../../functions/units";
import { areaOf as cornersOf, fixed, inside } from "../sheets/shared/address";
import { cellOf } from "../sheets/shared/page";
import type { Link, Sheet } from "../sheets/sheet";
import type { CellContent, CellState, Change, SheetContents } from "../workbook";
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
  /** What makes it follow: a formula, or the source's name, which no formula finds. */
  readonly follows: CellContent;
  readonly here: CellState;
  /** What stands at the source; undefined where the source has no row for this animal. */
  readonly there: CellState | undefined;
  readonly isLinked: boolean;
  /** Whether it follows another sheet of the source's kind. */
  readonly isElsewhere: boolean;
  /** Whether it is found by an animal's name. */
  readonly isByName: boolean;
  /** Of which of several sheets of one kind it is: of the first, the second. */
  readonly nth?: number;
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

/** The cell or column of another sheet that a link repeats, by its name there; where there is none, it is the sheet's name. */
const originOf = ({ from }: Link): { readonly key: string; readonly name?: string } => {
  const [key = "", ...name] = from.split(".");
  return name.length === 0 ? { key } : { key, name: name.join(".") };
};

/** Where that stands on a source, whose logs may be longer than in the template; and the column in which an animal is looked for. */
const placeOn = (source: Tab, name: string): { readonly at: string; readonly among: string | undefined } => {
  const label = `${name.split(".").slice(0, -1).join(".")}.label`;
  const { template } = source;
  return { at: cellOf(template, name), among: label in template.places ? cellOf(template, label) : undefined };
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

/** A formula without what hosts spell in their own way: Excel quotes a sheet's name only where it must. */
const plain = (formula: string): string => formula.replace(/[\s$']/g, "").toLowerCase();

const namesPlace = ({ formula }: CellState, source: Tab, at: string): boolean =>
  formula !== undefined && placesIn(formula).has(`${source.name}!${at}`.toLowerCase());

/** The same value, figures to what a spreadsheet keeps of them. */
const alike = (one: CellState["value"], other: CellState["value"]): boolean =>
  typeof one === "number" && typeof other === "number"
    ? Math.abs(one - other) <= 1e-9 * Math.max(1, Math.abs(one), Math.abs(other))
    : one === other || (isBlank({ value: one }) && isBlank({ value: other }));

/** Whether a cell shows what its source does: nothing, where the source has no row for its animal. */
export const isEqual = ({ here, there }: LinkedCell): boolean => alike(here.value, there?.value ?? null);

/** A cell that repeats another, and which one that is on a source: none where it is the source's name that is repeated. */
interface Repeating {
  readonly i: number;
  readonly row: number;
  readonly here: CellState;
  readonly on: (source: Tab) => string | undefined;
}

interface Linkable {
  readonly link: Link;
  readonly origin: ReturnType<typeof originOf>;
  readonly sources: readonly Tab[];
  readonly area: Area;
  readonly cells: readonly Repeating[];
}

const readsFrom = ({ here, on }: Repeating, source: Tab): boolean => {
  const at = on(source);
  return at !== undefined && namesPlace(here, source, at);
};

/** Which of several sources each numbered part of a tab follows, by "key 2"; a part that there is no source for is not in it. */
const sourcesByNumber = (links: readonly Linkable[]): ReadonlyMap<string, Tab> => {
  const parts = new Map<string, { sources: readonly Tab[]; cells: (Repeating & { isName: boolean })[] }>();
  for (const { link, origin, sources, cells } of links) {
    if (link.nth === undefined) continue;
    const part = parts.get(numbered(origin.key, link.nth)) ?? { sources, cells: [] };
    part.cells.push(...cells.map((cell) => ({ ...cell, isName: origin.name === undefined })));
    parts.set(numbered(origin.key, link.nth), part);
  }
  const taken = new Map<string, Tab>();
  /** Gives each part that has none yet the first source that is left and that fits it. */
  const give = (fits: (cells: readonly (Repeating & { isName: boolean })[], source: Tab) => boolean): void => {
    for (const [part, { sources, cells }] of parts) {
      if (taken.has(part)) continue;
      const source = sources.find((one) => ![...taken.values()].includes(one) && fits(cells, one));
      if (source) taken.set(part, source);
    }
  };
  give((cells, source) => cells.some((cell) => readsFrom(cell, source)));
  give((cells, { name }) => cells.some(({ here, isName }) => isName && lettersOf(here) === name.toLowerCase()));
  // What has a name of its own stays what it is.
  give((cells) => cells.every(({ here, isName }) => !isName || isBlank(here)));
  return taken;
};
const numbered = (key: string, nth: number): string => `${key} ${nth}`;

/**
 * The linked cells of some tabs, with their sources among all. Where several tabs could be the source, it is the one that
 * another cell of the same tab follows already, and else the last one; `chosen` says which it is to be instead, by
 * `choiceOf`. Numbered parts of a tab have a source each.
 */
export const linkedCells = (
  wanted: readonly Tab[],
  all: readonly Tab[],
  chosen: ReadonlyMap<string, string> = new Map(),
): readonly LinkedCell[] =>
  wanted.flatMap((tab) => {
    const links = tab.template.links.flatMap((link): Linkable[] => {
      const origin = originOf(link);
      const sources = all.filter((one) => one.template.key === origin.key && one.name !== tab.name);
      if (sources.length === 0) return [];
      const area = place(link.at);
      const { name } = origin;
      const places = new Map(name === undefined ? [] : sources.map((one) => [one, placeOn(one, name).at]));
      const isRowByRow = link.by === undefined && area.rows > 1;
      const cells = Array.from({ length: area.rows }, (_, i) => ({
        i,
        row: area.row + i,
        here: cellAt(tab, area.row + i, area.column),
        on: (source: Tab): string | undefined => {
          const at = places.get(source);
          return at === undefined || !isRowByRow ? at : rowOf(at, i);
        },
      }));
      return [{ link, origin, sources, area, cells }];
    });
    const followed = new Map<string, Tab>();
    for (const { origin, sources, cells } of links)
      for (const cell of cells)
        for (const source of sources) if (readsFrom(cell, source)) followed.set(origin.key, source);
    const byNumber = sourcesByNumber(links);
    const sourceOf = ({ link, origin, sources }: Linkable, own: Tab | undefined): Tab | undefined =>
      link.nth === undefined
        ? (sources.find(({ name }) => name === chosen.get(choiceOf(tab, origin.key))) ??
          own ??
          followed.get(origin.key) ??
          sources.findLast(({ template }) => template.system === tab.template.system) ??
          sources.at(-1))
        : byNumber.get(numbered(origin.key, link.nth));

    return links.flatMap((one) =>
      one.cells.flatMap((cell): LinkedCell[] => {
        const { i, row, here } = cell;
        const { link, origin, sources, area } = one;
        const own = sources.find((other) => readsFrom(cell, other));
        const source = sourceOf(one, own);
        if (!source) return [];
        const { system } = tab.template;
        const unit = source.template.system === system ? undefined : unitAt(tab.template, row, area.column);
        const inOwn = (figure: string): string => (unit ? turnedText(figure, unit, system) : figure);
        const seen = (state: CellState | undefined): CellState | undefined =>
          unit ? turned(state, unit, source.template.system, system) : state;
        const words = [
          area.rows > 1 ? `${link.words}, line ${i + 1}` : link.words,
          ...(link.nth && link.nth > 1 ? [`(${link.nth})`] : []),
          ...(unit ? ["(converted)"] : []),
        ].join(" ");
        const common = {
          tab,
          source,
          row,
          column: area.column,
          words,
          here,
          isElsewhere: own !== undefined && own !== source,
          isByName: link.by !== undefined,
          ...(link.nth === undefined ? {} : { nth: link.nth }),
        };
        if (origin.name === undefined) {
          const isLinked = lettersOf(here) === source.name.toLowerCase();
          return [{ ...common, follows: source.name, there: { value: source.name }, isLinked }];
        }
        const at = cell.on(source);
        // A sheet that repeats a log row by row may have more rows than that.
        if (at === undefined) return [];
        const found = (formula: string, there: CellState | undefined): LinkedCell[] => [
          {
            ...common,
            follows: { formula },
            there: seen(there),
            // One that takes the other system's figure for its own follows nothing.
            isLinked: own === source && (!unit || plain(here.formula ?? "") === plain(formula)),
          },
        ];
        const { among } = placeOn(source, origin.name);
        if (link.by === undefined || among === undefined) {
          const from = place(at);
          const there = `${quoted(source.name)}!${fixed(at)}`;
          return found(`=IF(${there}="","",${inOwn(there)})`, cellAt(source, from.row, from.column));
        }
        const key = place(link.by);
        const keyRow = key.rows > 1 ? key.row + i : key.row;
        const who = fixed(cellName(keyRow, key.column));
        const theirs = `INDEX(${quoted(source.name)}!${fixed(at)},MATCH(${who},${quoted(source.name)}!${fixed(among)},0))`;
        return found(
          `=IF(OR(${who}=""),"",IFNA(IF(${theirs}="","",${inOwn(theirs)}),""))`,
          rowFor(source, at, among, cellAt(tab, keyRow, key.column)),
        );
      }),
    );
  });

/** What a choice of source is kept by: whose, and made from which template. */
export const choiceOf = ({ name }: Pick<Tab, "name">, key: string): string => `${key} ${name}`;

/** The cell so many rows down a column; none below its last. */
const rowOf = (at: string, down: number): string | undefined => {
  const { row, column, rows } = place(at);
  return down < rows ? cellName(row + down, column) : undefined;
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

/** Whether a cell shows nothing, whatever stands in it. */
export const isEmpty = ({ here }: Pick<LinkedCell, "here">): boolean => isBlank(here);

/** The change that makes a cell follow its source. */
export const linking = ({ tab, row, column, follows }: LinkedCell): Change => ({
  sheet: tab.name,
  row,
  column,
  cells: [[follows]],
});
