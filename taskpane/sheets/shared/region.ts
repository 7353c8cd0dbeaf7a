import type { Content, Look } from "../sheet";
import { beside, block } from "./address";
import type { Cell, Places } from "./names";
import { heading, type Part, type Trimmings } from "./part";
import { unitNamedIn } from "./quantities";
import type { Takes } from "./takes";

/** A part of a sheet that takes room; the page tells it where. */
export interface Region {
  readonly region: {
    readonly rows: number;
    readonly columns: number;
    /** Where its named cells and columns stand, from its top left cell. */
    readonly places: (at: string) => Places;
    readonly build: (at: string) => Part;
    /** What its columns are called, each by its place from the first. */
    readonly headings?: readonly { readonly left: number; readonly words: string }[];
  };
}

/** Rows that stay free. */
export interface Gap {
  readonly gap: number;
}
export const gap = (rows: number): Gap => ({ gap: rows });

/** Colours a field's line or a column where `when` is true; `when` may name the cell itself and those beside it. */
export interface Rule<K extends string = string> {
  readonly look: Look;
  readonly when: (own: Cell, beside: Readonly<Record<K, Cell>>) => string;
  /** How many columns are coloured from its own on; its own width where nothing is said. */
  readonly over?: number;
}

/** What may be said of a cell, and of a column of cells. */
export interface Told<K extends string = string> extends Omit<Trimmings, "takes"> {
  /** Follows the label or the title, and what an input says that it takes. */
  readonly unit?: string;
  /** The unit of its figures, "°C", where neither unit nor title names it; of each row, where they differ. */
  readonly measures?: string | readonly string[];
  readonly takes?: Takes;
  readonly rules?: readonly Rule<K>[];
  /** The cell or column of another sheet, by that sheet's key and its name there, which this one repeats. */
  readonly from?: string;
  /** Says that the sheet has nothing to say without it: the words by which the sheet asks for it, or its own. */
  readonly needed?: boolean | string;
  /** Where `from` has a row an animal: the name, on this sheet, of the cell or column that says which. */
  readonly by?: string;
  /** Where the sheet follows several of one kind, such as winter plans: the number of this one. */
  readonly nth?: number;
}

/** The trimmings, with the unit in what an input takes where it names none itself. */
export const trimmingsOf = ({ format, note, takes, unit }: Told): Trimmings => ({
  ...(format ? { format } : {}),
  ...(note ? { note } : {}),
  ...(takes ? { takes: "least" in takes && takes.kind !== "date" && unit ? { unit, ...takes } : takes } : {}),
});

/** A heading over so many columns, from words that stand in the first ones. */
export const headingOver = (at: string, words: Content | readonly Content[], columns: number): Part => {
  const list = Array.isArray(words) ? (words as readonly Content[]) : [words as Content];
  return heading(at, ...Array.from({ length: columns }, (_, i) => list[i] ?? null));
};

/**
 * The link of a cell or a column to the sheet that it belongs to. It is lilac while a formula stands in it, so that the
 * look says what is so, whoever put the formula there.
 */
export const linked = (
  at: string,
  [rows, columns]: readonly [number, number],
  words: string,
  { from, by, nth }: Told,
): Part =>
  from
    ? {
        links: [{ at: block(at, rows), from, words, ...(by ? { by } : {}), ...(nth ? { nth } : {}) }],
        rules: [
          { range: block(at, rows, columns), when: `=ISFORMULA(${at.replace(/^[A-Z]+/, "$$$&")})`, look: "linked" },
        ],
      }
    : {};

/** What the figures of a cell or a column are measured in, as its own words say. */
export const measured = (at: string, rows: number, words: string, told: Pick<Told, "measures" | "takes">): Part => {
  const { takes } = told;
  const measures =
    told.measures ?? (unitNamedIn(words) || !takes || !("unit" in takes) ? words : (takes.unit ?? words));
  const of = (range: string, named: string): NonNullable<Part["quantities"]> => {
    const unit = unitNamedIn(named);
    return unit ? [{ range, unit }] : [];
  };
  return {
    quantities:
      typeof measures === "string"
        ? of(block(at, rows), measures)
        : measures.flatMap((one, i) => of(beside(at, i, 0), one)),
  };
};

/** What the sheet asks for while it is blank, unless a condition holds. */
export const asked = (
  at: string,
  rows: number,
  words: string,
  { needed }: Pick<Told, "needed">,
  unless?: string,
): Part =>
  needed
    ? { needed: [{ at: block(at, rows), words: needed === true ? words : needed, ...(unless ? { unless } : {}) }] }
    : {};
