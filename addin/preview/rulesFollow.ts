import type { FWorksheet } from "@univerjs/sheets/lib/facade";
import type { IRange } from "@univerjs/core";
import { formulaMoved } from "../../taskpane/sheets/grown";

type Rule = ReturnType<FWorksheet["getConditionalFormattingRules"]>[number];

const moved = (range: IRange, row: number, count: number): IRange => ({
  ...range,
  startRow: range.startRow >= row ? range.startRow + count : range.startRow,
  endRow: range.endRow >= row ? range.endRow + count : range.endRow,
});

const stands = (one: IRange | undefined, other: IRange): boolean =>
  one?.startRow === other.startRow && one.endRow === other.endRow;

const formulaOf = (rule: Rule["rule"]): string | undefined =>
  "value" in rule && typeof rule.value === "string" ? rule.value : undefined;

/**
 * Colour rules after rows were put in. The engine moves them only where it has a page, by a part of its menus: what it has
 * not moved follows here, its formula too.
 */
export const rulesFollow = (sheet: FWorksheet, before: readonly Rule[], row: number, count: number): void => {
  const now = new Map(sheet.getConditionalFormattingRules().map((rule) => [rule.cfId, rule]));
  for (const { cfId, ranges, rule, ...rest } of before) {
    const wanted = ranges.map((range) => moved(range, row, count));
    const formula = formulaOf(rule);
    const follows = formula === undefined ? undefined : formulaMoved(formula, row + 1, count);
    const here = now.get(cfId);
    // A rule that stays where it is may look at cells that do not.
    if (!here || (wanted.every((range, i) => stands(here.ranges[i], range)) && formulaOf(here.rule) === follows))
      continue;
    sheet.setConditionalFormattingRule(cfId, {
      ...rest,
      cfId,
      ranges: wanted,
      rule: follows === undefined ? rule : ({ ...rule, value: follows } as Rule["rule"]),
    });
  }
};
