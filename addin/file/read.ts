import { Workbook, type Cell, type CellValue, type Worksheet } from "@cj-tech-master/excelts";
import { installChartSupport } from "@cj-tech-master/excelts/chart";
import { isoOf } from "../../functions/dates";
import { isPlotted } from "../../taskpane/pictures/plotted";
import { respelled } from "../../taskpane/actions/formulas";
import { markOf } from "../../taskpane/sheets/mark";
import { lookTold, type CellLook } from "../../taskpane/sheets/look";
import { addressOf, areaOf, isFixed, type Area } from "../../taskpane/sheets/shared/address";
import type { Validation } from "../../taskpane/sheets/sheet";
import { recognise } from "../../taskpane/actions/template";
import { sheets as templates } from "../../taskpane/sheets/catalogue";
import type { FileCell, FileRule, FileSheet, Page, ReadFile } from "./book";
import { mannerFrom } from "./mannerInWords";
import { typedFormula } from "./newFunctions";
import { notesIn } from "./notesIn";
import { partsOf } from "./parts";

const DAY = 86_400_000; // ms
const DAYS_TO_1970 = 25_569; // from 1899-12-30

/** The library reads dates as UTC moments; a time of day alone lies on day 0. */
const serialOfDate = (date: Date): number => {
  const serial = date.getTime() / DAY + DAYS_TO_1970;
  // A serial has no more than a millisecond's digits in it.
  return Math.round(serial * DAY) / DAY;
};

const valueOf = (value: CellValue): FileCell["value"] => {
  if (value === null || value === undefined) return null;
  if (value instanceof Date) return serialOfDate(value);
  if (typeof value !== "object") return value;
  if ("error" in value) return { error: value.error };
  if ("richText" in value && value.richText) return value.richText.map(({ text }) => text).join("");
  if ("result" in value) return valueOf(value.result);
  if ("text" in value) return typeof value.text === "string" ? value.text : valueOf(value.text);
  if ("checkbox" in value) return value.checkbox;
  return null;
};

const colourOf = (colour: { readonly argb?: string } | undefined): string | undefined => {
  const found = /^(?:[0-9a-f]{2})?([0-9a-f]{6})$/i.exec(colour?.argb ?? "");
  return found?.[1] && `#${found[1].toLowerCase()}`;
};

/** A cell that nobody has dressed. */
const PLAIN = { size: 11, colour: "#000000" };

const dressOf = ({ font, fill, border, alignment }: Cell): CellLook | undefined => {
  const edge = border?.bottom ?? border?.top;
  return lookTold(
    {
      bold: font?.bold,
      size: font?.size,
      colour: colourOf(font?.color),
      fill: fill?.type === "pattern" && fill.pattern === "solid" ? colourOf(fill.fgColor) : undefined,
      frame: edge?.style && (border?.top?.style && border.left?.style ? "box" : "below"),
      frameColour: edge?.style && colourOf(edge.color),
      wraps: alignment?.wrapText,
    },
    PLAIN,
  );
};

/** Where a click on the cell leads; undefined where it stands on no words. */
const linkOf = ({ value }: Cell): string | undefined =>
  typeof value === "object" && value !== null && "hyperlink" in value && typeof value.hyperlink === "string"
    ? value.hyperlink
    : undefined;

/** How far an array formula reaches; undefined where it fills its own cell alone. */
const spillsOf = ({ value }: Cell): FileCell["spills"] => {
  if (typeof value !== "object" || value === null || !("shareType" in value)) return undefined;
  const { top, left, bottom, right } = areaOf(value.ref);
  return top === bottom && left === right ? undefined : [bottom - top + 1, right - left + 1];
};

const cellOf = (cell: Cell): FileCell => {
  const look = dressOf(cell);
  const link = linkOf(cell);
  const spills = spillsOf(cell);
  const format = typeof cell.numFmt === "string" ? cell.numFmt : cell.numFmt?.formatCode;
  // LibreOffice files a plain TRUE as a formula.
  const formula = /^(TRUE|FALSE)\(\)$/.test(cell.formula ?? "") ? undefined : cell.formula;
  return {
    value: valueOf(cell.formula === undefined ? cell.value : cell.result),
    ...(formula ? { formula: respelled(typedFormula(formula)) } : {}),
    ...(formula && spills ? { spills } : {}),
    ...(format && format !== "General" ? { format } : {}),
    ...(look ? { look } : {}),
    ...(link === undefined ? {} : { link }),
  };
};

const ENDLESS = 1e15;

/** A rule for inputs as one of ours; undefined where we have none like it. */
const validationOf = (range: string, rule: Record<string, unknown>): Validation | undefined => {
  const given = Array.isArray(rule.formulae) ? (rule.formulae as unknown[]) : [];
  const number = (value: unknown): number => (value instanceof Date ? serialOfDate(value) : Number(value ?? NaN));
  const common = { range, message: typeof rule.error === "string" ? rule.error : "This does not fit here." };
  if (rule.type === "list") {
    const source = typeof given[0] === "string" ? given[0] : "";
    if (isFixed(source)) return { ...common, kind: "cells", cells: source };
    const words = /^"(.*)"$/.exec(source)?.[1]?.split(",");
    return words && { ...common, kind: "list", words: words.map((word) => word.trim()) };
  }
  if (rule.type !== "decimal" && rule.type !== "whole" && rule.type !== "date") return undefined;
  const [first, second] = given.map(number);
  const bounds =
    rule.operator === undefined || rule.operator === "between"
      ? [first, second]
      : rule.operator === "greaterThanOrEqual"
        ? [first, ENDLESS]
        : rule.operator === "lessThanOrEqual"
          ? [-ENDLESS, first]
          : [];
  const [least, most] = bounds;
  if (least === undefined || most === undefined || !Number.isFinite(least) || !Number.isFinite(most)) return undefined;
  if (rule.type === "date") {
    return { ...common, kind: "date", least: isoOf(Math.max(61, least)), most: isoOf(Math.min(2_958_465, most)) };
  }
  return { ...common, kind: rule.type === "whole" ? "whole" : "number", least, most };
};

/** Cells one under the other as ranges, because the library keeps what belongs to a range cell by cell. */
const columnsOf = (addresses: readonly string[]): string[] => {
  const areas = addresses.map(areaOf).sort((a, b) => a.left - b.left || a.right - b.right || a.top - b.top);
  const joined: Area[] = [];
  for (const area of areas) {
    const last = joined.at(-1);
    if (last?.left === area.left && last.right === area.right && last.bottom + 1 >= area.top) {
      joined[joined.length - 1] = { ...last, bottom: Math.max(last.bottom, area.bottom) };
    } else {
      joined.push(area);
    }
  }
  return joined.map(addressOf);
};

const OPERATORS: Readonly<Record<string, string>> = {
  equal: "=",
  notEqual: "<>",
  greaterThan: ">",
  lessThan: "<",
  greaterThanOrEqual: ">=",
  lessThanOrEqual: "<=",
};

/** Whole columns and rows, and what is no place at all, are beyond `areaOf`. */
const isArea = (address: string): boolean => /^\$?[A-Z]{1,3}\$?\d+(:\$?[A-Z]{1,3}\$?\d+)?$/.test(address);

/** A colour rule as a formula; undefined where it is of another kind, such as a scale of colours, or on another place. */
const ruleOf = (ref: string, rule: Record<string, unknown>): FileRule | undefined => {
  const ranges = ref.split(/\s+/);
  if (!ranges.every(isArea)) return undefined;
  const first =
    ranges[0] && addressOf({ ...areaOf(ranges[0]), bottom: areaOf(ranges[0]).top, right: areaOf(ranges[0]).left });
  const formulas = Array.isArray(rule.formulae) ? (rule.formulae as unknown[]).map(String) : [];
  const operator = OPERATORS[String(rule.operator)];
  const when =
    rule.type === "expression"
      ? formulas[0]
      : rule.type === "cellIs" && operator && formulas[0] !== undefined
        ? `${first}${operator}${formulas[0]}`
        : undefined;
  if (when === undefined) return undefined;
  const style = (rule.style ?? {}) as {
    readonly fill?: { readonly bgColor?: { readonly argb?: string }; readonly fgColor?: { readonly argb?: string } };
    readonly font?: { readonly color?: { readonly argb?: string }; readonly bold?: boolean };
  };
  const fill = colourOf(style.fill?.bgColor) ?? colourOf(style.fill?.fgColor);
  const colour = colourOf(style.font?.color);
  return {
    ranges,
    when: typedFormula(when),
    ...(fill === undefined ? {} : { fill }),
    ...(colour === undefined ? {} : { colour }),
    ...(style.font?.bold ? { bold: true } : {}),
  };
};

/** The cell at the top left of a place in the library's own measure. */
const cornerOf = (range: unknown): string | undefined => {
  const corner = (range as { readonly tl?: { readonly nativeRow?: number; readonly nativeCol?: number } } | undefined)
    ?.tl;
  if (corner?.nativeRow === undefined || corner.nativeCol === undefined) return undefined;
  const [row, column] = [corner.nativeRow + 1, corner.nativeCol + 1];
  return addressOf({ top: row, left: column, bottom: row, right: column });
};

const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

/** Parts of a text that do not look as the whole cell does. */
const isRich = (value: CellValue): boolean =>
  typeof value === "object" && value !== null && "richText" in value && (value.richText?.length ?? 0) > 1;

/** How it is printed. Undefined where the file says nothing, whatever the library's types say. */
const pageOf = ({ pageSetup, headerFooter }: Worksheet): Page => {
  const given = Object.entries(pageSetup).filter(
    // The library takes a first page's number that it made up itself for one that somebody chose.
    ([key]) => !/firstPageNumber/i.test(key),
  );
  const setup = Object.fromEntries(given);
  const words = Object.fromEntries(
    Object.entries((headerFooter as Worksheet["headerFooter"] | undefined) ?? {}).filter(
      ([, value]) => typeof value === "string" || value === true,
    ),
  );
  return { setup, ...(Object.keys(words).length > 0 ? { headerFooter: words } : {}) };
};

const sheetOf = (sheet: Worksheet, notes: FileSheet["notes"], left: string[]): FileSheet => {
  const name = sheet.name;
  const lost = (count: number, one: string, many?: string, first?: string): void => {
    if (count > 0)
      left.push(
        `"${name}": ${counted(count, one, many)}${first === undefined ? "" : count === 1 ? `, at ${first}` : `, the first at ${first}`}`,
      );
  };
  const cells: FileCell[][] = [];
  const rich: string[] = [];
  /** Columns from which charts of ours are drawn: they come anew with the charts. */
  const plotted = new Set<number>();
  for (let number = 1; number <= sheet.rowCount; number++) {
    const row = sheet.findRow(number);
    for (let column = 1; row && column <= row.cellCount; column++) {
      const cell = row.findCell(column);
      if (!cell) continue;
      // A merged area is one cell: the library repeats its content in each of them.
      const read: Partial<FileCell> = cell.isMerged && cell.master !== cell ? {} : cellOf(cell);
      if (isPlotted(read.formula ?? "")) {
        plotted.add(column);
        continue;
      }
      (cells[number - 1] ??= [])[column - 1] = { value: null, ...read };
      const value = cell.value;
      if (isRich(value)) rich.push(cell.address);
    }
  }

  const kinds = new Map<string, { rule: Record<string, unknown>; addresses: string[] }>();
  for (const [key, rule] of Object.entries(sheet.dataValidations.model)) {
    if (!rule) continue;
    const address = key.replace(/^range:/, "");
    const kind = JSON.stringify(rule);
    const known = kinds.get(kind);
    if (known) known.addresses.push(address);
    else kinds.set(kind, { rule: rule as unknown as Record<string, unknown>, addresses: [address] });
  }
  const validation: Validation[] = [];
  const otherValidation: string[] = [];
  for (const { rule, addresses } of kinds.values()) {
    const places = addresses.flatMap((address) => address.split(/\s+/));
    otherValidation.push(...places.filter((place) => !isArea(place)));
    for (const range of columnsOf(places.filter(isArea))) {
      const found = validationOf(range, rule);
      if (found) validation.push(found);
      else otherValidation.push(range.replace(/:.*/, ""));
    }
  }
  const rules: FileRule[] = [];
  const otherRules: string[] = [];
  for (const { ref, rules: given } of sheet.conditionalFormattings) {
    for (const rule of given) {
      const found = ruleOf(ref, rule as unknown as Record<string, unknown>);
      if (found) rules.push(found);
      else otherRules.push(ref.replace(/[:\s].*/, ""));
    }
  }

  // Undefined where the file says nothing of columns, whatever the library's types say.
  const allColumns = (sheet.columns as Worksheet["columns"] | undefined) ?? [];
  const known = recognise({ cells: Array.from(cells, (line: FileCell[] | undefined) => line ?? []) }, templates);
  const template = known?.inPlace ? known.template : undefined;
  // Charts of a sheet of ours are drawn anew.
  if (!template) lost(sheet.getCharts().length, "chart");
  const pictures = sheet.getImages();
  lost(pictures.length, "picture", undefined, cornerOf(pictures[0]?.range));
  lost(sheet.getShapes().length, "drawn shape");
  lost(sheet.pivotTables.length, "pivot table");
  const tables = sheet.getTables();
  lost(
    tables.length,
    "table (its cells are here, its filter buttons and totals are not)",
    "tables (their cells are here)",
    tables[0]?.ref.replace(/:.*/, ""),
  );
  lost(
    rich.length,
    "cell with letters of several kinds (its words are here)",
    "cells with letters of several kinds (their words are here)",
    rich[0],
  );
  lost(sheet.getSparklineGroups().length, "group of sparklines", "groups of sparklines");
  lost(sheet.getFormCheckboxes().length, "check box", "check boxes");
  lost(sheet.threadedComments.length, "thread of comments", "threads of comments", sheet.threadedComments[0]?.ref);
  lost(otherValidation.length, "rule for what a cell takes", "rules for what a cell takes", otherValidation[0]);
  lost(
    otherRules.length,
    "colour rule of a kind that the preview does not draw",
    "colour rules of a kind that the preview does not draw",
    otherRules[0],
  );
  if (sheet.sheetProtection) left.push(`"${name}": its protection`);
  if (sheet.autoFilter) {
    const on = typeof sheet.autoFilter === "string" ? `, on ${sheet.autoFilter}` : "";
    left.push(`"${name}": its filter${on} (all rows are here)`);
  }

  // Undefined where the file has none, whatever the library's types say.
  const view = (sheet.views as Worksheet["views"] | undefined)?.[0];
  const frozen = view?.state === "frozen" ? view : undefined;
  return {
    name,
    hidden: sheet.state !== "visible",
    cells: Array.from<readonly (FileCell | undefined)[] | undefined, FileCell[]>(cells, (line) =>
      Array.from(line ?? [], (cell) => cell ?? { value: null }),
    ),
    widths: Array.from({ length: Math.min(sheet.columnCount, ...plotted) }, (_, i) =>
      plotted.has(i + 1) ? undefined : sheet.getColumn(i + 1).width,
    ),
    heights: Array.from({ length: sheet.rowCount }, (_, i) => i + 1).flatMap((row) => {
      const points = sheet.findRow(row)?.height;
      return points ? [{ row, points }] : [];
    }),
    merges: sheet.mergedRegions.map(addressOf),
    freeze: {
      rows: frozen && "ySplit" in frozen ? (frozen.ySplit ?? 0) : 0,
      columns: frozen && "xSplit" in frozen ? (frozen.xSplit ?? 0) : 0,
    },
    validation,
    rules,
    notes,
    names: [],
    charts: template?.charts ?? [],
    hiddenRows: Array.from({ length: sheet.rowCount }, (_, i) => i + 1).filter((row) => sheet.findRow(row)?.hidden),
    // Columns that are hidden to the right of all cells are hidden there alone.
    hiddenColumns: Array.from({ length: Math.max(sheet.columnCount, allColumns.length) }, (_, i) => i + 1).filter(
      (column) => sheet.getColumn(column).hidden && !plotted.has(column),
    ),
    ...(template ? { template: markOf(template) } : {}),
    page: pageOf(sheet),
  };
};

/** Reads an .xlsx file. Throws where it is none. */
export const readXlsx = async (bytes: Uint8Array, file = "The file"): Promise<ReadFile> => {
  installChartSupport();
  const parts = await partsOf(file, bytes);
  const book = new Workbook();
  await book.xlsx.loadFromFiles(parts);
  const left: string[] = [];
  const notes = notesIn(parts);
  const sheets = book.worksheets.map((sheet) => sheetOf(sheet, notes.get(sheet.name) ?? [], left));
  const named = sheets.map((sheet) => ({ ...sheet, names: [] as { name: string; range: string }[] }));
  for (const { name, ranges, formulaExpression } of book.definedNames.model) {
    if (name.startsWith("_xlnm.")) continue;
    const [first, ...more] = ranges;
    const found = /^(?:'((?:[^']|'')+)'|([^'!]+))!(\$?[A-Z]+\$?\d+(?::\$?[A-Z]+\$?\d+)?)$/i.exec(first ?? "");
    // The library doubles once more the apostrophes that a file has doubled.
    const on = found?.[1]?.replaceAll("''", "'").replaceAll("''", "'") ?? found?.[2];
    const sheet = named.find((one) => one.name === on);
    if (!sheet || !found?.[3] || more.length > 0 || formulaExpression !== undefined) left.push(`the name "${name}"`);
    else sheet.names.push({ name, range: found[3].replaceAll("$", "") });
  }
  if (Object.keys(parts).some((path) => path.endsWith("vbaProject.bin"))) left.push("its macros");
  if (book.externalLinks.length > 0)
    left.push(counted(book.externalLinks.length, "link to another file", "links to other files"));
  // Undefined where the file says nothing, whatever the library's types say.
  const manner = mannerFrom(book.keywords);
  return { sheets: named, left, ...(manner ? { manner } : {}) };
};
