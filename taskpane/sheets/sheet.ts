import type { CautionKey } from "../../functions/cautions";
import type { SourceKey } from "../../functions/sources";
import type { System, Unit } from "../../functions/units";

/**
 * A templated sheet as data. Every host draws the same data; a host that needs a special case means that a field is
 * missing here. Addresses are A1-style and of the sheet itself, so that a sheet can be inserted any number of times
 * under any name. Rows and columns of a block follow from its `at`.
 */
export interface Sheet {
  /** Stable for ever: it names the sheet in code, in the pane and in the picture gallery. */
  readonly key: string;
  /** The system in which its figures stand and its words speak; `inSystem` (shared/systems.ts) answers it in the other. */
  readonly system: System;
  /** The cells whose figures have a unit, metric and imperial. */
  readonly quantities: readonly { readonly range: string; readonly unit: Unit }[];
  /** The tab's name, at most 31 characters; the host appends " (2)" and so on where it is taken. */
  readonly name: string;
  /** What a keeper does there, one sentence. */
  readonly sentence: string;
  /** Shown on the sheet at the top right and in the pane before it is inserted. */
  readonly cautions: readonly [CautionKey, ...CautionKey[]];
  /** Shown at the sheet's foot. */
  readonly sources: readonly [SourceKey, ...SourceKey[]];
  /** Widths of the columns from A, in characters of the default font. */
  readonly widths: readonly number[];
  readonly blocks: readonly Block[];
  readonly formats: readonly { readonly range: string; readonly format: Format }[];
  readonly validation: readonly Validation[];
  readonly rules: readonly ColourRule[];
  readonly notes: readonly { readonly at: string; readonly text: string }[];
  /** Where its named cells and columns stand, as addresses: tests and other sheets ask for them by name. */
  readonly places: Readonly<Record<string, string>>;
  /** Cells that repeat another sheet's, by that sheet's key and the name there: "coolingPlan.dates.firstMeal". */
  readonly links: readonly Link[];
  /**
   * Cells, and columns of which one cell, that have to be filled before the sheet has anything to say, and their names;
   * where the condition `unless` holds they may stay blank.
   */
  readonly needed: readonly { readonly at: string; readonly words: string; readonly unless?: string }[];
  /** Areas that are one cell to the eye; only for running text, never across the frozen edge. */
  readonly merges: readonly string[];
  /** Heights of rows that hold more than one line, in lines of text; rows count from 1. */
  readonly lines: readonly { readonly row: number; readonly lines: number }[];
  readonly charts: readonly Chart[];
  /** The first that has figures is pictured by itself; the others may stand beside it. */
  readonly years?: readonly Year[];
  /** The last column that is printed, where those behind it are of use on the screen alone. */
  readonly printTo?: string;
  /** Rows and columns that stay in view. */
  readonly freeze: { readonly rows: number; readonly columns: number };
}

/** A cell, or a column of cells, that another sheet's is repeated in. */
export interface Link {
  readonly at: string;
  /** "coolingPlan.dates.firstMeal": the sheet's key and the name there. */
  readonly from: string;
  /**
   * Where `from` is a column of a list with a row an animal: the cells that say which animal, one for all or one a row.
   * It is looked for in the column "label" of that list.
   */
  readonly by?: string;
  /**
   * Where the sheet follows several that were made from one template: the number of this one among them. The cells of one
   * number follow one sheet, each number its own; a cell whose `from` is the key alone holds that sheet's name.
   */
  readonly nth?: number;
  /** What the cell is called on its own sheet. */
  readonly words: string;
}

/**
 * What a block is for. "title" one line in A1; "heading" over a column or a part; "guide" a table's headings once more,
 * where they stay in view; "hint" under a log how it is made longer; "label" before a cell; "input" what
 * the keeper fills, cleared with the example; "setting" what the keeper may change but a cleared sheet keeps;
 * "computed" formulas; "text" running words; "caution" and "source" the two standing parts.
 */
export type Role =
  "title" | "heading" | "guide" | "hint" | "label" | "input" | "setting" | "computed" | "text" | "caution" | "source";

/** A cell's content: text that starts with "=" is a formula (comma-separated, English names); null is blank. */
export type Content = string | number | boolean | null;

export interface Block {
  /** The top left cell. */
  readonly at: string;
  readonly role: Role;
  readonly rows: readonly (readonly Content[])[];
  /** How many rows and columns the answer of a formula fills, for a block of one formula that spills. */
  readonly spills?: readonly [rows: number, columns: number];
  /** How many rows and columns an input keeps free for pasting, its own included; cleared with the example. */
  readonly room?: readonly [rows: number, columns: number];
}

/** Number formats, as English codes. A date always shows as ISO 8601, the one form that no club member misreads. */
export const formats = {
  date: "yyyy-mm-dd",
  moment: "yyyy-mm-dd hh:mm",
  whole: "0",
  tenth: "0.0",
  hundredth: "0.00",
  thousandth: "0.000",
  percent: "0.0%",
  text: "@",
} as const;
export type Format = keyof typeof formats;

/** What an input takes; a blank is always taken. `message` is what the keeper reads when it does not fit. */
export type Validation = { readonly range: string; readonly message: string } & (
  | { readonly kind: "number" | "whole"; readonly least: number; readonly most: number; readonly unit?: string }
  | { readonly kind: "date"; readonly least: string; readonly most: string }
  | { readonly kind: "list"; readonly words: readonly string[] }
  /** What stands in cells of the same sheet: "$E$46:$H$46", a row or a column. */
  | { readonly kind: "cells"; readonly cells: string }
);

/** How a coloured cell looks; the same everywhere, each with words or a sign beside it on the sheet. */
export type Look = "stop" | "care" | "note" | "good" | "cold" | "linked";

/** Colours cells of `range` where `when`, a native formula for its top left cell, is true. No VIV function in it. */
export interface ColourRule {
  readonly range: string;
  readonly when: string;
  readonly look: Look;
}

/** What a caption says of figures, where they are drawn: cells of words, and a caution. */
export interface Told {
  /** How they were come by: from which stations, and how corrected. */
  readonly from?: string;
  /** Whose records they are, on which terms. */
  readonly credit?: string;
  readonly caution?: CautionKey;
}

/**
 * One row or column of figures in a chart. A band fills between `low` and `high`, about a line that is `likely` where
 * it has one; ticks mark the rows where `at` is true or above 0. `nameFrom` is a cell whose words name it; `name` stands where that is blank, or cannot be followed.
 */
export type Series = Told & { readonly name: string; readonly nameFrom?: string } & (
    | { readonly draw: "line" | "bar"; readonly values: string }
    | { readonly draw: "band"; readonly low: string; readonly high: string; readonly likely?: string }
    | { readonly draw: "ticks"; readonly values: string }
    | { readonly draw: "stages"; readonly values: string }
    | { readonly draw: "threshold"; readonly values: string }
  );

export interface Chart {
  readonly title: string;
  /** Where it stands: the cells that it covers. */
  readonly area: string;
  /** The cells of the horizontal axis: dates, or words such as months. */
  readonly along: string;
  readonly axis: string;
  readonly series: readonly Series[];
  /** A cell whose formula says in words what the chart shows, for a screen reader and for the picture's caption. */
  readonly summary: string;
  /** What a reader of the picture alone has to know; the sheet's first caution where nothing is said. */
  readonly cautions?: readonly CautionKey[];
}

/**
 * A whole year that a sheet holds, for pictures of it: a strip, a ring, or one of two side by side. Ranges are of twelve
 * months, or of the days that stand `along`.
 */
export interface Year extends Told {
  /** What it is called, and the cell whose words name the place instead. */
  readonly title: string;
  readonly nameFrom?: string;
  /** A cell of words under the title. */
  readonly subtitle?: string;
  readonly along?: string;
  /** The warmer line first. */
  readonly lines: readonly {
    readonly name: string;
    readonly likely: string;
    readonly least?: string;
    readonly most?: string;
  }[];
  /** The cell of what is called cold, and which days are counted below it. */
  readonly cold?: string;
  readonly counted?: string;
  /** mm in each of twelve months; how it was come by stands apart where it differs. */
  readonly rain?: string;
  readonly rainFrom?: string;
  /** The six dates of the winter plan. */
  readonly plan?: string;
  readonly cautions?: readonly CautionKey[];
}
