import type { Content } from "../sheet";
import { beside, block } from "./address";
import { Cell } from "./names";
import { cell, labels, together, type Part } from "./part";
import { asked, headingOver, linked, measured, trimmingsOf, type Region, type Told } from "./region";

export interface Field<K extends string = string> extends Told<K> {
  /** What stands before the cell. A field without one stands in the line of the field before it. */
  readonly label?: string;
  /** What stands in the cell, or its formula, which may name the form's own cells; nothing where the label is all. */
  readonly value?: Content | ((own: Readonly<Record<K, Cell>>) => string);
  /** "computed" for a formula and "input" for all else where nothing is said. */
  readonly role?: "input" | "setting" | "computed";
  /** A condition under which the cell may stay blank though the sheet needs it elsewhere. */
  readonly unless?: (own: Readonly<Record<K, Cell>>) => string;
  /** How many columns the cell takes. */
  readonly wide?: number;
  /** Columns from the label, or from the end of the cell before it, to this cell. */
  readonly across?: number;
}

interface FormOptions {
  /** Columns from label to cell. */
  readonly across?: number;
  /** Stands on the heading. */
  readonly note?: string;
}

interface Placed {
  readonly key: string;
  readonly field: Field;
  readonly row: number;
  readonly column: number;
}

/** Where each field stands, rows and columns counted from the first label. */
const placed = (fields: Readonly<Record<string, Field>>, across: number): readonly Placed[] => {
  const list: Placed[] = [];
  for (const [key, field] of Object.entries(fields)) {
    const last = list.at(-1);
    const begins = field.label !== undefined || !last;
    list.push({
      key,
      field,
      row: begins ? (last?.row ?? -1) + 1 : last.row,
      column: begins ? (field.across ?? across) : last.column + (last.field.wide ?? 1) + (field.across ?? 1) - 1,
    });
  }
  return list;
};

const labelOf = ({ label = "", unit }: Field): string => (unit ? `${label}, ${unit}` : label);

/**
 * Labels with their cells, one a line, under a heading where there is one: `form.mass` names a cell, "animal.mass" to
 * those who ask from outside for the mass of the form "animal".
 */
export const form = <K extends string>(
  name: string,
  title: string | readonly Content[] | null,
  fields: Readonly<Record<K, Field<NoInfer<K>>>>,
  { across = 1, note }: FormOptions = {},
): Region & Readonly<Record<K, Cell>> => {
  const list = placed(fields, across);
  const top = title === null ? 0 : 1;
  const titles = Array.isArray(title) ? title.length : 1;
  const columns = Math.max(titles, ...list.map(({ field, column }) => column + (field.wide ?? 1)));
  const own = Object.fromEntries(list.map(({ key }) => [key, new Cell(`${name}.${key}`)])) as Record<K, Cell>;
  const starts = list.filter(({ field }, i) => field.label !== undefined || i === 0);

  const built = (at: string, { key, field, row, column }: Placed): Part => {
    if (field.value === undefined) return {};
    const here = beside(at, top + row, column);
    // A field of its own line is coloured from its label on, one that follows another for itself.
    const corner = field.label === undefined ? here : beside(at, top + row, 0);
    const content = typeof field.value === "function" ? field.value(own) : field.value;
    const isFormula = typeof content === "string" && content.startsWith("=");
    const role = field.role ?? (isFormula ? "computed" : "input");
    const end =
      field.label === undefined
        ? (field.wide ?? 1)
        : Math.max(...list.filter((one) => one.row === row).map((one) => one.column + (one.field.wide ?? 1)));
    return together(
      cell(here, role, content, { ...trimmingsOf(field), wide: field.wide ?? 1 }),
      {
        rules: (field.rules ?? []).map(({ look, when, over = end }) => ({
          range: block(corner, 1, over),
          when: when(own[key as K], own),
          look,
        })),
      },
      measured(here, 1, labelOf(field), field),
      linked(here, [1, field.wide ?? 1], labelOf(list.find((one) => one.row === row)?.field ?? field), field),
      asked(here, 1, list.find((one) => one.row === row)?.field.label ?? key, field, field.unless?.(own)),
    );
  };

  return Object.assign(own, {
    region: {
      rows: top + (list.at(-1)?.row ?? -1) + 1,
      columns,
      places: (at: string) =>
        Object.fromEntries(list.map(({ key, row, column }) => [`${name}.${key}`, beside(at, top + row, column)])),
      build: (at: string) =>
        together(
          title === null ? {} : headingOver(at, title, columns),
          note ? { notes: [{ at, text: note }] } : {},
          labels(
            beside(at, top, 0),
            starts.map(({ field }) => labelOf(field)),
          ),
          {
            merges: starts.flatMap(({ field, row, column }) =>
              field.label !== undefined && column > 1 ? [block(beside(at, top + row, 0), 1, column)] : [],
            ),
          },
          ...list.map((one) => built(at, one)),
        ),
    },
  });
};
