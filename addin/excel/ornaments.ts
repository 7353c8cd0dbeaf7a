import { ruleLooks } from "../../taskpane/sheets/look";
import { printOf } from "../../taskpane/sheets/print";
import type { Sheet, Validation } from "../../taskpane/sheets/sheet";
import { drawCharts, removeCharts } from "./charts";

const ruleOf = (validation: Validation): Excel.DataValidationRule => {
  switch (validation.kind) {
    case "number":
      return { decimal: { formula1: validation.least, formula2: validation.most, operator: "Between" } };
    case "whole":
      return { wholeNumber: { formula1: validation.least, formula2: validation.most, operator: "Between" } };
    case "date":
      return { date: { formula1: validation.least, formula2: validation.most, operator: "Between" } };
    case "list":
      return { list: { inCellDropDown: true, source: validation.words.join(",") } };
    case "cells":
      return { list: { inCellDropDown: true, source: `=${validation.cells}` } };
  }
};

const PROMPT = 255; // letters, the most that Excel shows beside a cell

/**
 * Notes are newer than what the add-in asks for. Where Excel or its script has none, the words show when the cell is
 * chosen.
 */
const note = (sheet: Excel.Worksheet, at: string, text: string): void => {
  if ("notes" in sheet) {
    if (Office.context.requirements.isSetSupported("ExcelApi", "1.18")) {
      sheet.notes.add(at, text);
      return;
    }
  }
  const message = text.length <= PROMPT ? text : `${text.slice(0, PROMPT - 1)}…`;
  sheet.getRange(at).dataValidation.prompt = { showPrompt: true, title: "Note", message };
};

/** What a sheet has besides its contents and formats. A host that will not draw one of these still has the sheet. */
interface Ornament {
  /** What the sheet is without, where it could not be drawn: "without its charts". */
  readonly words: string;
  readonly isWanted: (data: Sheet) => boolean;
  readonly draw: (context: Excel.RequestContext, sheet: Excel.Worksheet, data: Sheet) => void | Promise<void>;
  /** Takes away what was begun. */
  readonly undo?: (context: Excel.RequestContext, sheet: Excel.Worksheet) => Promise<void>;
}

const ornaments: readonly Ornament[] = [
  {
    words: "the checks of what is typed in",
    isWanted: ({ validation }) => validation.length > 0,
    draw: (_, sheet, { validation }) => {
      for (const one of validation) {
        const { dataValidation } = sheet.getRange(one.range);
        dataValidation.rule = ruleOf(one);
        dataValidation.ignoreBlanks = true;
        dataValidation.errorAlert = {
          showAlert: true,
          style: "Stop",
          title: "That does not fit",
          message: one.message,
        };
      }
    },
  },
  {
    words: "its notes",
    isWanted: ({ notes }) => notes.length > 0,
    draw: (_, sheet, { notes }) => {
      for (const { at, text } of notes) note(sheet, at, text);
    },
  },
  {
    words: "its colours for what needs care",
    isWanted: ({ rules }) => rules.length > 0,
    draw: (_, sheet, { rules }) => {
      // Excel puts each new rule before the older ones; the first of the sheet is to win.
      for (const { range, when, look } of [...rules].reverse()) {
        const { custom } = sheet.getRange(range).conditionalFormats.add("Custom");
        const { fill, colour, bold } = ruleLooks[look];
        custom.rule.formula = when.startsWith("=") ? when : `=${when}`;
        custom.format.fill.color = fill;
        custom.format.font.color = colour;
        custom.format.font.bold = bold;
      }
    },
  },
  {
    words: "its charts",
    isWanted: ({ charts }) => charts.length > 0,
    draw: drawCharts,
    undo: removeCharts,
  },
  {
    // An Excel without a printer may refuse it.
    words: "its print set-up",
    isWanted: () => true,
    draw: (_, sheet, data) => {
      const { area, portrait, titleRows, footer } = printOf(data);
      const { pageLayout } = sheet;
      pageLayout.orientation = portrait ? "Portrait" : "Landscape";
      // As many pages long as it needs: no number stands for that.
      pageLayout.zoom = { horizontalFitToPages: 1 };
      if (area) pageLayout.setPrintArea(area);
      if (titleRows > 0) pageLayout.setPrintTitleRows(`$1:$${titleRows}`);
      const { defaultForAllPages } = pageLayout.headersFooters;
      defaultForAllPages.leftFooter = `&8${footer.left}`;
      defaultForAllPages.centerFooter = `&8${footer.centre}`;
      defaultForAllPages.rightFooter = `&8${footer.right}`;
    },
  },
];

/**
 * Draws what a sheet has besides its contents, each kind in a turn of its own: one that this Excel refuses costs no
 * more than itself. Answers in words what is missing.
 */
export const adorn = async (name: string, data: Sheet): Promise<readonly string[]> => {
  const missing: string[] = [];
  const on = (draw: (context: Excel.RequestContext, sheet: Excel.Worksheet) => void | Promise<void>): Promise<void> =>
    Excel.run(async (context) => {
      context.application.suspendScreenUpdatingUntilNextSync();
      await draw(context, context.workbook.worksheets.getItem(name));
      await context.sync();
    });
  for (const { words, isWanted, draw, undo } of ornaments) {
    if (!isWanted(data)) continue;
    try {
      await on((context, sheet) => draw(context, sheet, data));
    } catch {
      missing.push(words);
      // What is left of it does no harm.
      if (undo) await on(undo).catch(() => undefined);
    }
  }
  return missing;
};
