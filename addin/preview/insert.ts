import {
  BooleanNumber,
  DataValidationErrorStyle,
  DataValidationOperator,
  DataValidationRenderMode,
  DataValidationType,
  ICommandService,
  type ISheetDataValidationRule,
  type IWorksheetData,
} from "@univerjs/core";
import { IFunctionService } from "@univerjs/engine-formula";
import { InsertSheetCommand } from "@univerjs/sheets";
import { AddCfCommand, CFRuleType, CFSubRuleType } from "@univerjs/sheets-conditional-formatting";
import { AddSheetDataValidationCommand } from "@univerjs/sheets-data-validation";
import { SheetUpdateNoteCommand } from "@univerjs/sheets-note";
import type { FWorkbook } from "@univerjs/sheets/lib/facade";
import { serialOfIso } from "../../functions/dates";
import { markOf } from "../../taskpane/sheets/mark";
import { ruleLooks } from "../../taskpane/sheets/look";
import { fixed } from "../../taskpane/sheets/shared/address";
import type { Sheet, Validation } from "../../taskpane/sheets/sheet";
import type { FileSheet } from "../file/book";
import type { Engine } from "./engine";
import { freeName } from "../freeName";
import { quoted, renamed } from "./names";
import { rangeOf, sheetDataOf } from "./sheetData";

const limits = (least: number, most: number): Pick<ISheetDataValidationRule, "operator" | "formula1" | "formula2"> => ({
  operator: DataValidationOperator.BETWEEN,
  formula1: String(least),
  formula2: String(most),
});

const serial = (iso: string): number => {
  const found = serialOfIso(iso);
  if (found === undefined) throw new Error(`${iso} is no date`);
  return found;
};

const validationRule = (uid: string, validation: Validation): ISheetDataValidationRule => {
  const common = {
    uid,
    ranges: [rangeOf(validation.range)],
    allowBlank: true,
    showErrorMessage: true,
    error: validation.message,
    errorStyle: DataValidationErrorStyle.STOP,
  };
  switch (validation.kind) {
    case "number":
      return { ...common, type: DataValidationType.DECIMAL, ...limits(validation.least, validation.most) };
    case "whole":
      return { ...common, type: DataValidationType.WHOLE, ...limits(validation.least, validation.most) };
    case "date":
      return { ...common, type: DataValidationType.DATE, ...limits(serial(validation.least), serial(validation.most)) };
    case "list":
    case "cells":
      return {
        ...common,
        type: DataValidationType.LIST,
        formula1: validation.kind === "cells" ? `=${validation.cells}` : validation.words.join(","),
        renderMode: DataValidationRenderMode.ARROW,
      };
  }
};

const NOTE = { width: 240, letters: 34, line: 18, padding: 24 }; // px, but for the letters of a line

/** Lets the engine do something by its own command, which its undo then knows; throws where it refuses. */
const commander = (engine: Engine) => {
  const commands = engine.univer.__getInjector().get(ICommandService);
  return (command: { readonly id: string }, params: object): void => {
    if (!commands.syncExecuteCommand(command.id, params)) throw new Error(`the engine refused ${command.id}`);
  };
};

/** What the engine keeps beside a sheet. Rules are formulas with their looks; the first that holds wins. */
export type Beside = Pick<FileSheet, "validation" | "rules" | "notes">;

/** Inserts a sheet after the last one. */
export const placeSheet = (
  engine: Engine,
  workbook: FWorkbook,
  name: string,
  data: Partial<IWorksheetData>,
  { validation, rules, notes }: Beside,
): void => {
  const command = commander(engine);
  const unitId = workbook.getId();
  command(InsertSheetCommand, { unitId, index: workbook.getSheets().length, sheet: { ...data, name } });
  const subUnitId = workbook.getSheetByName(name)?.getSheetId();
  if (subUnitId === undefined) throw new Error(`the engine gave the sheet "${name}" another name`);
  const target = { unitId, subUnitId };
  validation.forEach((one, i) =>
    command(AddSheetDataValidationCommand, { ...target, rule: validationRule(`${subUnitId}-${i}`, one) }),
  );
  // The engine puts each new rule before the older ones.
  for (const { ranges, when, fill, colour, bold } of [...rules].reverse()) {
    command(AddCfCommand, {
      ...target,
      rule: {
        ranges: ranges.map(rangeOf),
        stopIfTrue: false,
        rule: {
          type: CFRuleType.highlightCell,
          subType: CFSubRuleType.formula,
          value: when,
          style: {
            ...(fill === undefined ? {} : { bg: { rgb: fill } }),
            ...(colour === undefined ? {} : { cl: { rgb: colour } }),
            ...(bold ? { bl: BooleanNumber.TRUE } : {}),
          },
        },
      },
    });
  }
  notes.forEach(({ at, text }, i) => {
    const { startRow: row, startColumn: col } = rangeOf(at);
    const height = Math.ceil(text.length / NOTE.letters) * NOTE.line + NOTE.padding;
    command(SheetUpdateNoteCommand, {
      ...target,
      row,
      col,
      note: { id: `${subUnitId}-note-${i}`, row, col, note: text, width: NOTE.width, height, show: false },
    });
  });
};

/**
 * Names of ranges for a sheet that is about to stand in the workbook, and how its formulas are to be rewritten. The
 * engine looks a name up in the whole workbook, and takes none that is a function's or a sheet's: a name that is taken
 * gets a number. `tell` hears in words of each that changes, and of each that the engine does not take at all. Names
 * come first: a formula that is worked out before its names exist stays "#NAME?".
 */
export const placeNames = (
  { univer }: Engine,
  workbook: FWorkbook,
  sheet: string,
  names: FileSheet["names"],
  tell: (words: string) => void,
): ((formula: string) => string) => {
  const functions = univer.__getInjector().get(IFunctionService);
  const taken = new Set(
    [
      ...workbook.getDefinedNames().map((one) => one.getName()),
      ...workbook.getSheets().map((one) => one.getSheetName()),
    ].map((name) => name.toLowerCase()),
  );
  const changed = new Map<string, string>();
  for (const { name, range } of names) {
    let free = name;
    for (let i = 2; taken.has(free.toLowerCase()) || functions.hasExecutor(free.toUpperCase()); i++)
      free = `${name}_${i}`;
    taken.add(free.toLowerCase());
    try {
      workbook.insertDefinedName(free, `${quoted(sheet)}!${fixed(range)}`);
    } catch {
      tell(`the name "${name}"`);
      continue;
    }
    if (free === name) continue;
    changed.set(name.toLowerCase(), free);
    tell(`the name "${name}": it is "${free}" here, in formulas too, because the preview has a use of its own for it`);
  }
  return (formula) => renamed(formula, changed);
};

/** Inserts one templated sheet after the last, and answers the name that it was given. */
export const insertSheet = (engine: Engine, workbook: FWorkbook, sheet: Sheet): string => {
  const name = freeName(
    sheet.name,
    workbook.getSheets().map((one) => one.getSheetName()),
  );
  const data = { ...sheetDataOf(sheet), custom: { template: markOf(sheet) } };
  placeSheet(engine, workbook, name, data, {
    validation: sheet.validation,
    notes: sheet.notes,
    rules: sheet.rules.map(({ range, when, look }) => ({
      ranges: [range],
      when: when.startsWith("=") ? when : `=${when}`,
      ...ruleLooks[look],
    })),
  });
  return name;
};
