import type { Cell, CellErrorValue, CellFormulaValue, CellValueInput, Worksheet } from "@cj-tech-master/excelts";
import { Workbook } from "@cj-tech-master/excelts";
import { installChartSupport } from "@cj-tech-master/excelts/chart";
import { hasFunction, sheetReferences } from "../../taskpane/actions/formulas";
import { frozenContent } from "../../taskpane/actions/freeze";
import { plainSeries } from "../../taskpane/pictures/plainSeries";
import { datesBeside, plottedBeside, type Plotted } from "../../taskpane/pictures/plotted";
import type { CellLook } from "../../taskpane/sheets/look";
import { addressOf, areaOf, fixed } from "../../taskpane/sheets/shared/address";
import type { Chart, Validation } from "../../taskpane/sheets/sheet";
import type { Manner } from "../../taskpane/text/form";
import { filledIn, type FileCell, type FileRule, type FileSheet } from "./book";
import { mannerInWords } from "./mannerInWords";
import { FIT_WIDTH } from "./printed";
import { filedFormula, isFileable, storedFormula } from "./newFunctions";

const argb = (colour: string): { argb: string } => ({ argb: `FF${colour.replace("#", "").toUpperCase()}` });

/** Errors that the format knows; an engine's own kinds are written as the nearest of them. */
const ERRORS = new Set(["#N/A", "#VALUE!", "#REF!", "#NAME?", "#DIV/0!", "#NUM!", "#NULL!"]);

const plainValue = (value: FileCell["value"]): number | string | boolean | null | CellErrorValue =>
  typeof value === "object" && value !== null
    ? { error: (ERRORS.has(value.error) ? value.error : "#VALUE!") as CellErrorValue["error"] }
    : value;

const PLAIN_HEIGHT = 15; // pt, a row of one line

/** What a file is for: the keeper's own workbook, or people without the add-in. */
export type Purpose = "own" | "others";

/**
 * For others a VIV formula becomes its answer, because nobody without the add-in could work it out; so does a native
 * formula whose answer fills several cells, because programs differ in what they make of one in a file.
 */
const contentForOthers = (
  { value, formula, spills }: FileCell,
  isFrozen: boolean,
  isHere: (sheet: string) => boolean,
): CellValueInput => {
  const answer = plainValue(value);
  const frozen = isFrozen ? frozenContent({ value }) : null;
  // As Freeze would leave it, so that Thaw finds it.
  if (typeof frozen === "object" && frozen !== null && !frozen.formula.startsWith("=#"))
    return { formula: frozen.formula.slice(1), ...(answer === null ? {} : { result: answer }) };
  if (formula === undefined || spills || hasFunction(formula) || !isFileable(formula)) return answer;
  // A sheet that is not in the file would leave an error in place of the figure.
  if (!sheetReferences(formula).every(({ sheet }) => isHere(sheet))) return answer;
  return { formula: filedFormula(formula), ...(answer === null ? {} : { result: answer }) };
};

/** In the keeper's own workbook every formula stays, with its answer; one that spills is marked as such. */
const ownContent = ({ value, formula, spills }: FileCell, at: string): CellValueInput => {
  const answer = plainValue(value);
  if (formula === undefined) return answer;
  const common = { formula: storedFormula(formula), ...(answer === null ? {} : { result: answer }) };
  if (!spills) return common;
  const { top, left } = areaOf(at);
  const ref = addressOf({ top, left, bottom: top + spills[0] - 1, right: left + spills[1] - 1 });
  return { ...common, shareType: "array", ref, isDynamicArray: true };
};

const dress = (cell: Cell, { format, look = {} }: { readonly format?: string; readonly look?: CellLook }): void => {
  const { bold, size, colour, fill, frame, frameColour = "#000000", wraps } = look;
  if (format !== undefined) cell.numFmt = format;
  if (bold || size !== undefined || colour !== undefined) {
    cell.font = {
      name: "Calibri",
      size: size ?? 11,
      ...(bold ? { bold } : {}),
      ...(colour === undefined ? {} : { color: argb(colour) }),
    };
  }
  if (fill !== undefined) cell.fill = { type: "pattern", pattern: "solid", fgColor: argb(fill) };
  if (frame) {
    const edge = { style: "thin" as const, color: argb(frameColour) };
    cell.border = frame === "box" ? { top: edge, left: edge, bottom: edge, right: edge } : { bottom: edge };
  }
  if (wraps) cell.alignment = { wrapText: true, vertical: "top" };
};

const eachCell = (sheet: Worksheet, range: string, visit: (cell: Cell) => void): void => {
  const { top, left, bottom, right } = areaOf(range);
  for (let row = top; row <= bottom; row++)
    for (let column = left; column <= right; column++) visit(sheet.getCell(row, column));
};

const MOST_PROMPT = 255; // letters of an error message, by the format

const validate = (sheet: Worksheet, validation: Validation): void => {
  const common = {
    allowBlank: true,
    showErrorMessage: true,
    errorStyle: "stop",
    error: validation.message.slice(0, MOST_PROMPT),
  } as const;
  eachCell(sheet, validation.range, (cell) => {
    switch (validation.kind) {
      case "number":
      case "whole":
        cell.dataValidation = {
          ...common,
          type: validation.kind === "whole" ? "whole" : "decimal",
          operator: "between",
          formulae: [validation.least, validation.most],
        };
        break;
      case "date":
        cell.dataValidation = {
          ...common,
          type: "date",
          operator: "between",
          formulae: [new Date(`${validation.least}T00:00:00Z`), new Date(`${validation.most}T00:00:00Z`)],
        };
        break;
      case "list":
        cell.dataValidation = { ...common, type: "list", formulae: [`"${validation.words.join(",")}"`] };
        break;
      case "cells":
        cell.dataValidation = { ...common, type: "list", formulae: [validation.cells] };
    }
  });
};

const colour = (sheet: Worksheet, { ranges, when, fill, colour: ink, bold }: FileRule, priority: number): void =>
  sheet.addConditionalFormatting({
    ref: ranges.join(" "),
    rules: [
      {
        type: "expression",
        priority,
        formulae: [filedFormula(when)],
        style: {
          ...(fill === undefined ? {} : { fill: { type: "pattern", pattern: "solid", bgColor: argb(fill) } }),
          ...(ink === undefined && !bold
            ? {}
            : { font: { ...(ink ? { color: argb(ink) } : {}), ...(bold ? { bold } : {}) } }),
        },
      },
    ],
  });

const DASHES = ["solid", "dash", "sysDot", "dashDot", "lgDashDotDot"] as const;

/** A range from which charts are drawn, in a hidden column; answers what stands in each of its cells as `shown` says. */
const hide = (
  sheet: Worksheet,
  { at, formulas }: Plotted,
  shown: (
    i: number,
    j: number,
  ) => { readonly result: CellFormulaValue["result"]; readonly format?: string | undefined },
): void => {
  const to = areaOf(at);
  formulas.forEach((line, i) =>
    line.forEach((formula, j) => {
      const { result, format } = shown(i, j);
      const cell = sheet.getCell(to.top + i, to.left + j);
      cell.value = { formula: filedFormula(formula), result };
      if (format !== undefined) cell.numFmt = format;
    }),
  );
  for (let column = to.left; column <= to.right; column++) sheet.getColumn(column).hidden = true;
};

/** What the charts are drawn from, in hidden columns: the programs plot text as 0, and leave #N/A out. */
const plot = (sheet: Worksheet, { charts, cells, widths }: FileSheet): ReadonlyMap<string, Plotted> => {
  const last = Math.max(widths.length, ...cells.map((line) => line.length));
  const plotted = new Map(plottedBeside(charts, last));
  for (const [range, one] of plotted) {
    const from = areaOf(range);
    hide(sheet, one, (i, j) => {
      const value = cells[from.top - 1 + i]?.[from.left - 1 + j]?.value;
      return { result: typeof value === "number" ? value : { error: "#N/A" } };
    });
  }
  let next = Math.max(0, ...[...plotted.values()].map(({ at }) => areaOf(at).right));
  for (const along of new Set(charts.map((one) => one.along))) {
    const { top, left, bottom } = areaOf(along);
    const given = cells.slice(top - 1, bottom).map((line) => line[left - 1]);
    const dates = given.flatMap((cell) => (typeof cell?.value === "number" ? cell.value : []));
    // Names of months are no dates.
    if (next === 0 || dates.length === 0) continue;
    next += 1;
    const one = datesBeside(along, next);
    hide(sheet, one, (i) => {
      const value = given[i]?.value;
      return { result: typeof value === "number" ? value : Math.max(...dates), format: given[0]?.format };
    });
    plotted.set(along, one);
  }
  return plotted;
};

const chart = (
  sheet: Worksheet,
  plotted: ReadonlyMap<string, Plotted>,
  { title, area, along, axis, ...rest }: Chart,
): void => {
  const series = plainSeries({ title, area, along, axis, ...rest });
  if (series.length === 0) return;
  const place = (range: string): string => `'${sheet.name.replaceAll("'", "''")}'!${fixed(range)}`;
  const drawn = (bar: boolean) =>
    series
      .filter((one) => one.bar === bar)
      .map(({ name, values, colour: tone, dash, weight }) => ({
        name,
        categories: place(plotted.get(along)?.at ?? along),
        values: place(plotted.get(values)?.at ?? values),
        ...(bar
          ? { fill: tone }
          : {
              line: tone,
              lineWidth: weight,
              lineDash: DASHES[dash % DASHES.length],
              marker: { symbol: "none" as const },
              smooth: false,
            }),
      }));
  const common = {
    title,
    showLegend: series.length > 1,
    legendPosition: "b",
    // LibreOffice 7.4 draws what a file leaves as a gap at 0, which a keeper would read as 0 °C: the line goes on to the next figure.
    displayBlanksAs: "span",
    plotVisOnly: false,
    valueAxis: { title: axis },
    categoryAxis: { tickLblPos: "low" },
  } as const;
  const bars = drawn(true);
  const lines = drawn(false);
  if (bars.length > 0 && lines.length > 0) {
    sheet.addComboChart(
      {
        ...common,
        groups: [
          { type: "bar", series: bars },
          { type: "line", series: lines },
        ],
      },
      area,
    );
  } else {
    sheet.addChart({ ...common, type: bars.length > 0 ? "bar" : "line", series: bars.length > 0 ? bars : lines }, area);
  }
};

/** The sheets as an .xlsx file: values, formats, native formulas with their answers, charts of the program's own kind. */
export const writeXlsx = async (
  sheets: readonly FileSheet[],
  purpose: Purpose = "others",
  manner?: Manner,
): Promise<Uint8Array> => {
  installChartSupport();
  const book = new Workbook();
  if (manner) book.keywords = mannerInWords(manner);
  const namesOf = new Map<string, string[]>();
  for (const { name, range, sheet } of sheets.flatMap((one) =>
    one.names.map((named) => ({ ...named, sheet: one.name })),
  )) {
    namesOf.set(name, [...(namesOf.get(name) ?? []), `'${sheet.replaceAll("'", "''")}'!${fixed(range)}`]);
  }
  const here = new Set(sheets.map(({ name }) => name.toLowerCase()));
  const isHere = (sheet: string): boolean => here.has(sheet.toLowerCase());
  for (const data of sheets) {
    const { rows, columns } = data.freeze;
    const sheet = book.addWorksheet(data.name, {
      views: rows > 0 || columns > 0 ? [{ state: "frozen", xSplit: columns, ySplit: rows }] : [],
      ...(data.hidden ? { state: "hidden" } : {}),
      pageSetup: data.page?.setup ?? FIT_WIDTH,
      ...(data.page?.headerFooter ? { headerFooter: data.page.headerFooter } : {}),
    });
    data.widths.forEach((width, i) => {
      if (width !== undefined) sheet.getColumn(i + 1).width = width;
    });
    for (const { row, points } of data.heights) sheet.getRow(row).height = points;
    for (const number of data.hiddenRows ?? []) {
      const row = sheet.getRow(number);
      row.hidden = true;
      // The library writes no row that has neither cells nor a height.
      row.height ??= PLAIN_HEIGHT;
    }
    for (const column of data.hiddenColumns ?? []) sheet.getColumn(column).hidden = true;
    const isOurs = ({ formula }: FileCell): boolean => formula !== undefined && hasFunction(formula);
    const ours = filledIn(data.cells, isOurs);
    data.cells.forEach((line, i) =>
      line.forEach((cell, j) => {
        if (cell.value === null && cell.formula === undefined && cell.format === undefined && cell.look === undefined)
          return;
        const target = sheet.getCell(i + 1, j + 1);
        const content =
          purpose === "own"
            ? ownContent(cell, target.address)
            : contentForOthers(cell, isOurs(cell) || ours.has(`${i},${j}`), isHere);
        // A link stands on words: on a figure it would turn the figure into words.
        if (typeof content === "string" && cell.link !== undefined)
          target.value = { text: content, hyperlink: cell.link };
        else if (content !== null) target.value = content;
        dress(target, cell);
      }),
    );
    for (const merge of data.merges) sheet.mergeCells(merge);
    for (const validation of data.validation) validate(sheet, validation);
    data.rules.forEach((rule, i) => colour(sheet, rule, i + 1));
    for (const { at, text } of data.notes) sheet.getCell(at).note = text;
    const plotted = plot(sheet, data);
    for (const one of data.charts) chart(sheet, plotted, one);
  }
  // As a formula, which the library writes as it is: in a place it doubles apostrophes once too often.
  for (const [name, ranges] of namesOf) book.definedNames.addFormula(name, ranges.join(","));
  return new Uint8Array(await book.xlsx.writeBuffer());
};
