import { limitIn, symbol, systems, type System, type Unit } from "../../../functions/units";
import type { Block, Content, Sheet } from "../sheet";
import { areaOf, inside } from "./address";
import { callsIn } from "./calls";
import { decimalsIn, exampleIn, figureIn, formatIn, unitNamedIn, wordsIn, type Decimals } from "./quantities";
import { validationOf } from "./takes";

/**
 * A sheet is written once, in metric, and drawn in the system that its keeper works in: its figures, limits, defaults,
 * formats, words, charts, and the units that its formulas tell the functions. What formulas hold of figures is marked
 * while it is written, by `figure`, `metric` and `either`; all else is found.
 */

const unitOf = (words: string): Unit => {
  const unit = unitNamedIn(words);
  if (!unit) throw new Error(`${words} is no unit that sheets know`);
  return unit;
};

/** A figure inside a formula: `figure(15, "°C")` is 15, or 59. */
export const figure = (value: number, unit: string): string => `⟪#${value} ${unit}⟫`;

/** How many decimals a figure is rounded to, inside a formula. */
export const decimalsOf = (decimals: Decimals, unit: string): string => `⟪%${decimals} ${unit}⟫`;

/** A part of a formula in metric, for arithmetic that holds in no other system; nothing of it may be blank. */
export const metric = (formula: string, unit: string): string => `⟪(${unit}⟫${formula}⟪)${unit}⟫`;

/** Words that are one thing in metric and another in imperial. */
export const either = (ours: string, theirs: string): string => `⟪=${ours}¦${theirs}⟫`;

const settled = (mark: string, system: System): string => {
  const [kind, rest] = [mark.charAt(0), mark.slice(1)];
  if (kind === "=") return rest.split("¦")[system === "metric" ? 0 : 1] ?? "";
  if (kind === "#" || kind === "%") {
    const [value = "", ...words] = rest.split(" ");
    const unit = unitOf(words.join(" "));
    return String(
      kind === "#" ? figureIn(Number(value), unit, system) : decimalsIn(Number(value) as Decimals, unit, system),
    );
  }
  if (system === "metric") return "";
  const unit = unitOf(rest);
  const offset = figureIn(0, unit, system);
  const factor = (figureIn(1e6, unit, system) - offset) / 1e6;
  if (kind === "(") return offset === 0 ? "(" : "((";
  return `${offset === 0 ? "" : `-${offset})`}/${factor})`;
};

const MARK = /⟪([^⟫]+)⟫/g;
const TEXTS = /"(?:[^"]|"")*"/g;

const textIn = (text: string, system: System): string => {
  const said = text.includes("⟪") ? text.replace(MARK, (_, mark: string) => settled(mark, system)) : text;
  if (system === "metric") return said;
  if (!said.startsWith("=")) return text === said ? wordsIn(said, system) : said;
  return callsIn(
    said.replace(TEXTS, (words) => wordsIn(words, system)),
    system,
  );
};

/** The unit of the cells of a range, all of which have one and the same. */
const unitIn =
  ({ quantities }: Pick<Sheet, "quantities">) =>
  (range: string): Unit | undefined => {
    const area = areaOf(range);
    return quantities.find((one) => inside(area, areaOf(one.range)))?.unit;
  };

/** How each sheet of the catalogue is drawn in a system. */
const drawings = new WeakMap<Sheet, (system: System) => Sheet>();

/** A sheet as it is written, with its marks, in one system. */
const draw = (draft: Sheet, system: System): Sheet => {
  const text = (one: string): string => textIn(one, system);
  const unit = unitIn(draft);
  const contentIn = ({ at, role }: Block, row: number, column: number, content: Content): Content => {
    if (typeof content === "string") return role === "source" ? content : text(content);
    if (typeof content !== "number" || system === "metric") return content;
    const { top, left } = areaOf(at);
    const here = { top: top + row, bottom: top + row, left: left + column, right: left + column };
    const found = draft.quantities.find(({ range }) => inside(here, areaOf(range)))?.unit;
    if (!found) return content;
    // A limit is kept as it is: rounding would shift it.
    return (role === "input" ? exampleIn : figureIn)(content, found, system);
  };
  return {
    ...draft,
    system,
    blocks: draft.blocks.map((block) => ({
      ...block,
      rows: block.rows.map((line, i) => line.map((content, j) => contentIn(block, i, j, content))),
    })),
    formats: draft.formats.map(({ range, format }) => {
      const of = unit(range);
      return { range, format: of ? formatIn(format, of, system) : format };
    }),
    validation: draft.validation.map((one) => {
      const of = unit(one.range);
      if (!("least" in one) || one.kind === "date" || !of) return one;
      const [least, most] = [limitIn("least", one.least, of, system), limitIn("most", one.most, of, system)];
      const kind = system === "metric" ? one.kind : "number";
      return validationOf(one.range, { kind, least, most, unit: wordsIn(one.unit ?? symbol(of), system) });
    }),
    rules: draft.rules.map((rule) => ({ ...rule, when: text(rule.when) })),
    notes: draft.notes.map((note) => ({ ...note, text: text(note.text) })),
    links: draft.links.map((link) => ({ ...link, words: text(link.words) })),
    charts: draft.charts.map((chart) => ({
      ...chart,
      title: text(chart.title),
      axis: text(chart.axis),
      series: chart.series.map((one) => ({ ...one, name: text(one.name) })),
    })),
  };
};

/** A sheet in metric, from what is written; `inSystem` answers it in another system, where it can be had in that. */
export const drawnOf = (draft: Sheet, possible: readonly System[]): Sheet => {
  const known = new Map<System, Sheet>();
  const drawing = (wanted: System): Sheet => {
    const system = possible.includes(wanted) ? wanted : "metric";
    const sheet = known.get(system) ?? draw(draft, system);
    if (!known.has(system)) {
      known.set(system, sheet);
      drawings.set(sheet, drawing);
    }
    return sheet;
  };
  return drawing("metric");
};

/** A sheet of the catalogue in a system, before anything is filled in or cleared. */
export const inSystem = (sheet: Sheet, system: System): Sheet => {
  const drawing = drawings.get(sheet);
  if (!drawing)
    throw new Error(`"${sheet.name}" is not as the catalogue has it: first the system, then what is filled in`);
  return drawing(system);
};

/** A sheet in every system in which it can be had; only itself where it is not of the catalogue. */
export const inEverySystem = (sheet: Sheet): readonly Sheet[] => {
  const drawing = drawings.get(sheet);
  return drawing ? [...new Set(systems.map(drawing))] : [sheet];
};
