import { DataValidationStatus } from "@univerjs/core";
import { sheets } from "../../taskpane/sheets/catalogue";
import { block, columnLetters } from "../../taskpane/sheets/shared/address";
import { serialOfIso } from "../../functions/dates";
import type { Content, Sheet, Validation } from "../../taskpane/sheets/sheet";
import { openWorkbook } from "../preview/engine";

// An engine is started for each test: seconds on a busy machine.
jest.setTimeout(60_000);

/** What each validation takes and refuses, as the spreadsheet engine judges it. */

const blank: Sheet = {
  key: "trial",
  name: "Trial",
  sentence: "Values that validations take and refuse.",
  cautions: ["noVet"],
  sources: ["definition"],
  widths: [],
  blocks: [],
  formats: [],
  validation: [],
  rules: [],
  notes: [],
  system: "metric",
  quantities: [],
  places: {},
  links: [],
  needed: [],
  merges: [],
  lines: [],
  charts: [],
  freeze: { rows: 0, columns: 0 },
};

/** What stands in the cells from which a choice is taken; one of them is blank. */
const PLANS = ["Cooling plan", "Cooling plan (2)"];
const CHOICES = "$A$30:$C$30";

/** Values that must be taken, and values that must not. */
const cases = (rule: Validation): { readonly good: readonly Content[]; readonly bad: readonly Content[] } => {
  switch (rule.kind) {
    case "cells":
      return { good: [...PLANS, null], bad: ["something else", 7] };
    case "list":
      return { good: [...rule.words, null], bad: ["something else", 7] };
    case "date": {
      const [least, most] = [serialOfIso(rule.least) ?? NaN, serialOfIso(rule.most) ?? NaN];
      return { good: [least, 46_300, most, null], bad: [least - 1, most + 1, "soon"] };
    }
    case "whole":
      return { good: [rule.least, rule.most, null], bad: [rule.least - 1, rule.most + 1, rule.least + 0.5, "many"] };
    case "number":
      return {
        good: [rule.least, (rule.least + rule.most) / 2, rule.most, null],
        bad: [rule.least - 1, rule.most + 1, "much"],
      };
  }
};

/** Every validation of every sheet, once. */
const rules = [
  ...new Map(
    sheets
      .flatMap(({ validation }) => validation)
      .map(({ range: _, message: __, ...rule }) => (rule.kind === "cells" ? { ...rule, cells: CHOICES } : rule))
      .map((rule) => [JSON.stringify(rule), rule] as const),
  ).values(),
].map((rule): Validation => ({ ...rule, range: "A1", message: "no" }));

/** A column for each rule, with what it must take and what it must refuse; a sheet of nothing else is soon worked out. */
const trial: Sheet = {
  ...blank,
  widths: rules.map(() => 12),
  blocks: [
    { at: "A30", role: "input", rows: [[...PLANS, null]] },
    ...rules.map((rule, i) => ({
      at: `${columnLetters(i + 1)}1`,
      role: "input" as const,
      rows: [...cases(rule).good, ...cases(rule).bad].map((value) => [value]),
    })),
  ],
  // A number is a date to the engine only where it is shown as one, as every date of the sheets is.
  formats: rules.flatMap(({ kind }, i) =>
    kind === "date" ? [{ range: block(`${columnLetters(i + 1)}1`, 10), format: "date" as const }] : [],
  ),
  validation: rules.map((rule, i) => {
    const { good, bad } = cases(rule);
    return { ...rule, range: block(`${columnLetters(i + 1)}1`, good.length + bad.length) };
  }),
};

test("there are rules of every kind", () =>
  expect([...new Set(rules.map(({ kind }) => kind))].sort()).toEqual(["cells", "date", "list", "number", "whole"]));

test("each validation takes what it allows and nothing else", async () => {
  const { workbook, engine, close } = openWorkbook();
  try {
    const [name] = (await workbook.insert([trial])) as [string];
    const grid = engine.api.getActiveWorkbook()?.getSheetByName(name);
    const wrong: string[] = [];
    for (const [column, rule] of rules.entries()) {
      const { good, bad } = cases(rule);
      for (const [row, value] of [...good, ...bad].entries()) {
        const status = (await grid?.getRange(row, column).getValidatorStatus())?.[0]?.[0];
        const taken = status === DataValidationStatus.VALID;
        if (taken !== row < good.length)
          wrong.push(`${JSON.stringify(rule)} ${taken ? "takes" : "refuses"} ${String(value)}`);
      }
    }
    expect(wrong).toEqual([]);
  } finally {
    close();
  }
});
