import { catalogue } from "../../functions/catalogue";
import { cautions } from "../../functions/cautions";
import { serialOfIso } from "../../functions/dates";
import type { Parameter } from "../../functions/define";
import { sheets } from "../../taskpane/sheets/catalogue";
import { areaFrom, areaOf, inside, overlap, type Area } from "../../taskpane/sheets/shared/address";
import { cellOf } from "../../taskpane/sheets/shared/page";
import { areaOfBlock } from "../../taskpane/sheets/shared/part";
import type { Content, Sheet, Validation } from "../../taskpane/sheets/sheet";
import { addressesIn, callsIn, nativesIn, withoutTexts } from "./formulas";

/** What a sheet is made of, held against itself: no spreadsheet is needed for it. */

const contents = (sheet: Sheet): readonly { readonly at: Area; readonly content: Content; readonly role: string }[] =>
  sheet.blocks.flatMap((block) =>
    block.rows.flatMap((row, i) =>
      row.map((content, j) => {
        const { top, left } = areaOf(block.at);
        return { at: { top: top + i, left: left + j, bottom: top + i, right: left + j }, content, role: block.role };
      }),
    ),
  );
const formulasOf = (sheet: Sheet): readonly string[] =>
  contents(sheet).flatMap(({ content }) => (typeof content === "string" && content.startsWith("=") ? [content] : []));

/** The area that the sheet draws in, and what it keeps free for pasting. */
const extent = (sheet: Sheet): Area => {
  const rooms = sheet.blocks.map(({ at, room }) => (room ? areaOf(at).top + room[0] - 1 : 0));
  return { top: 1, left: 1, bottom: Math.max(400, ...rooms), right: sheet.widths.length };
};

/** Functions of Excel 2021 that LibreOffice 7.4 and the preview's engine have too. A new one is tried in all before it is added. */
const NATIVES = new Set(
  (
    "ABS ADDRESS AND AVERAGE CLEAN COLUMN COUNT COUNTA COUNTBLANK COUNTIF COUNTIFS DAY FIND IF IFERROR IFNA INDEX ISERROR ISFORMULA ISNUMBER ISTEXT LEFT LEN LOOKUP MATCH " +
    "MAX MID MIN MOD MONTH NOT OR RIGHT ROUND ROUNDUP ROW ROWS SMALL LARGE SUBSTITUTE SUM SUMIF SUMIFS SUMPRODUCT TODAY TRANSPOSE DATE YEAR N ISBLANK EXACT INT TRIM CHAR TEXTJOIN"
  ).split(" "),
);

const accepts = (sheet: Sheet, rule: Validation, value: Content): boolean => {
  if (value === null) return true;
  switch (rule.kind) {
    case "cells":
      return contents(sheet).some(({ at, content }) => inside(at, areaOf(rule.cells)) && content === value);
    case "list":
      return typeof value === "string" && rule.words.includes(value);
    case "date":
      return (
        typeof value === "number" &&
        value >= (serialOfIso(rule.least) ?? NaN) &&
        value <= (serialOfIso(rule.most) ?? NaN)
      );
    default:
      return (
        typeof value === "number" &&
        value >= rule.least &&
        value <= rule.most &&
        (rule.kind === "number" || Number.isInteger(value))
      );
  }
};

test("keys and names are each sheet's own", () => {
  expect(new Set(sheets.map(({ key }) => key)).size).toBe(sheets.length);
  expect(new Set(sheets.map(({ name }) => name)).size).toBe(sheets.length);
});

describe.each(sheets.map((sheet) => [sheet.name, sheet] as const))("%s", (_, sheet) => {
  const blocks = sheet.blocks.map((block) => ({ block, area: areaOfBlock(block) }));

  test("has a name that a tab can bear, and a sentence", () => {
    expect(sheet.name.length).toBeLessThanOrEqual(31);
    expect(sheet.name).not.toMatch(/[\\/?*[\]:]/);
    expect(sheet.sentence).toMatch(/^[A-Z].*\.$/);
  });

  test("stays inside its columns, and no two blocks overlap", () => {
    const whole = extent(sheet);
    for (const { block, area } of blocks) expect([block.at, inside(area, whole)]).toEqual([block.at, true]);
    for (const { area } of sheet.charts.map(({ area }) => ({ area: areaOf(area) })))
      expect(inside(area, whole)).toBe(true);
    const clashes = blocks.flatMap(({ block, area }, i) =>
      blocks
        .slice(i + 1)
        .filter((other) => overlap(area, other.area))
        .map((other) => `${block.at} and ${other.block.at}`),
    );
    expect(clashes).toEqual([]);
  });

  test("blocks are rectangles, and a spill has one formula", () => {
    for (const { block } of blocks) {
      expect(new Set(block.rows.map((row) => row.length)).size).toBe(1);
      if (block.spills) {
        expect(block.rows).toHaveLength(1);
        expect(block.rows[0]).toHaveLength(1);
        expect(String(block.rows[0]?.[0])).toMatch(/^=/);
      }
    }
  });

  test("charts and merged cells cover nothing but their own", () => {
    for (const { area } of sheet.charts) {
      expect(blocks.filter((block) => overlap(block.area, areaOf(area))).map(({ block }) => block.at)).toEqual([]);
    }
    const areas = [...sheet.merges.map(areaOf), ...sheet.charts.map(({ area }) => areaOf(area))];
    areas.forEach((area, i) => expect(areas.slice(i + 1).filter((other) => overlap(area, other))).toEqual([]));
    for (const merge of sheet.merges) {
      const { top, left } = areaOf(merge);
      const covered = contents(sheet).filter(
        ({ at, content }) => content !== null && overlap(at, areaOf(merge)) && !(at.top === top && at.left === left),
      );
      expect([merge, covered]).toEqual([merge, []]);
      expect([merge, blocks.filter(({ block, area }) => block.spills && overlap(area, areaOf(merge)))]).toEqual([
        merge,
        [],
      ]);
      const { rows, columns } = sheet.freeze;
      expect(top <= rows && areaOf(merge).bottom > rows ? `${merge} is cut by the frozen rows` : "").toBe("");
      expect(left <= columns && areaOf(merge).right > columns ? `${merge} is cut by the frozen columns` : "").toBe("");
    }
  });

  test("every VIV function exists and has as many arguments as it takes", () => {
    for (const formula of formulasOf(sheet)) {
      for (const { name, args } of callsIn(formula)) {
        const definition = catalogue.find((one) => one.name === name);
        expect(definition ? name : `${name} is not in the catalogue`).toBe(name);
        const parameters = Object.values((definition?.parameters ?? {}) as Record<string, Parameter>);
        const required = parameters.filter(({ optional }) => !optional).length;
        expect([formula, args.length >= required && args.length <= parameters.length]).toEqual([formula, true]);
      }
    }
  });

  test("formulas keep to what every host can do", () => {
    for (const formula of [...formulasOf(sheet), ...sheet.rules.map(({ when }) => when)]) {
      const bare = withoutTexts(formula);
      expect([formula, /[#@;]/.test(bare.replace(/\{[^}]*\}/g, ""))]).toEqual([formula, false]);
      expect([formula, nativesIn(formula).filter((name) => !NATIVES.has(name))]).toEqual([formula, []]);
      expect(bare.split("(").length).toBe(bare.split(")").length);
    }
    for (const { when } of sheet.rules) expect(callsIn(when)).toEqual([]);
  });

  test("formulas, charts, formats, rules, notes, named cells and links point into the sheet", () => {
    const whole = extent(sheet);
    const pointed = [
      ...formulasOf(sheet).flatMap(addressesIn),
      ...sheet.rules.flatMap(({ range, when }) => [range, ...addressesIn(when)]),
      ...sheet.formats.map(({ range }) => range),
      ...sheet.validation.map(({ range }) => range),
      ...sheet.notes.map(({ at }) => at),
      ...Object.values(sheet.places),
      ...sheet.links.map(({ at }) => at),
      ...sheet.needed.map(({ at }) => at),
      ...sheet.charts.flatMap(({ along, summary }) => [along, summary]),
      ...sheet.charts.flatMap(({ series }) =>
        series.flatMap((one) => (one.draw === "band" ? [one.low, one.high] : [one.values])),
      ),
    ];
    expect(pointed.filter((address) => !inside(areaOf(address), whole))).toEqual([]);
  });

  test("every name has become an address", () => expect(JSON.stringify(sheet)).not.toMatch(/[⟦⟧]/));

  test("every chart has a summary in words", () => {
    for (const { summary } of sheet.charts) {
      const { top, left } = areaOf(summary);
      const cell = contents(sheet).find(({ at }) => at.top === top && at.left === left);
      expect(String(cell?.content)).toMatch(/^=/);
    }
  });

  test("every validation stands on inputs, and takes what the example holds", () => {
    for (const rule of sheet.validation) {
      const area = areaOf(rule.range);
      const cells = contents(sheet).filter(({ at }) => inside(at, area));
      expect([rule.range, cells.length]).toEqual([
        rule.range,
        (area.bottom - area.top + 1) * (area.right - area.left + 1),
      ]);
      expect([
        rule.range,
        [...new Set(cells.map(({ role }) => role))].filter((role) => role !== "input" && role !== "setting"),
      ]).toEqual([rule.range, []]);
      expect([
        rule.range,
        cells.filter(({ content }) => !accepts(sheet, rule, content)).map(({ content }) => content),
      ]).toEqual([rule.range, []]);
      expect(rule.message.length).toBeGreaterThan(10);
    }
  });

  test("every input that takes a date shows one", () => {
    for (const { range } of sheet.validation.filter(({ kind }) => kind === "date")) {
      expect([
        range,
        sheet.formats.some((one) => one.format === "date" && inside(areaOf(range), areaOf(one.range))),
      ]).toEqual([range, true]);
    }
  });

  test("carries its cautions at the top right and its sources at the foot", () => {
    const warned = contents(sheet).filter(({ role }) => role === "caution");
    expect(warned.map(({ content }) => content)).toEqual(sheet.cautions.map((key) => cautions[key]));
    // 1366 pixels less a pane of 360, the row numbers and a scroll bar; the preview draws columns widest, at 7.6 pixels
    // a character and 9 a column.
    const merged = sheet.merges.map(areaOf);
    const rightmost = Math.max(...merged.filter(({ top }) => top === sheet.freeze.rows + 1).map(({ right }) => right));
    const pixels = sheet.widths.slice(0, rightmost).reduce((sum, width) => sum + width * 7.6 + 9, 0);
    expect(pixels).toBeLessThanOrEqual(942);
    // 768 pixels less the ribbon, formula bar and tabs leave 25 rows of 20 pixels.
    const warnings = merged.filter(({ top, left }) => warned.some(({ at }) => at.top === top && at.left === left));
    expect(Math.max(...warnings.map(({ bottom }) => bottom))).toBeLessThanOrEqual(22);
    const sources = blocks.filter(({ block }) => block.role === "source");
    expect(sources.length).toBeGreaterThanOrEqual(sheet.sources.length);
    // What stands wholly to the right of the foot, such as a long list of days, may run on beside it.
    const right = Math.max(...sources.map(({ area }) => area.right));
    const lastBody = Math.max(
      ...blocks
        .filter(({ block, area }) => block.role !== "source" && area.left <= right)
        .map(({ area }) => area.bottom),
    );
    for (const { area } of sources) expect(area.top).toBeGreaterThanOrEqual(lastBody);
  });

  test("what stays in view under the title are headings of a table below, over their own columns", () => {
    const all = contents(sheet);
    const guides = all.filter(({ role }) => role === "guide");
    expect(sheet.freeze.rows).toBe(guides.length > 0 ? 2 : 1);
    for (const { at, content } of guides) {
      const same = all.filter(
        (one) => one.role === "heading" && one.at.left === at.left && one.at.top > at.top && one.content === content,
      );
      expect([content, at.top, same.length > 0]).toEqual([content, 2, true]);
    }
  });

  test("columns are wide enough for figures, dates and titles", () => {
    const shown = (content: Content, format: string | undefined): string => {
      if (typeof content !== "number") return String(content);
      if (format === "date") return "2026-10-05";
      if (format === "moment") return "2026-10-05 14:30";
      if (format === "percent") return `${(content * 100).toFixed(1)}%`;
      const decimals = { whole: 0, tenth: 1, hundredth: 2, thousandth: 3 }[format ?? ""];
      return decimals === undefined ? String(content) : content.toFixed(decimals);
    };
    const formatAt = (at: Area): string | undefined =>
      sheet.formats.findLast(({ range }) => inside(at, areaOf(range)))?.format;
    const widthAt = (at: Area): number => {
      const merge = sheet.merges.map(areaOf).find((area) => inside(at, area)) ?? at;
      return sheet.widths.slice(merge.left - 1, merge.right).reduce((sum, width) => sum + width, 0);
    };
    // A figure that does not fit shows as ####: each needs its characters and room for the edge.
    const narrow = contents(sheet)
      .filter(({ content }) => typeof content === "number")
      .filter(({ at, content }) => shown(content, formatAt(at)).length + 1 > widthAt(at));
    expect(narrow).toEqual([]);
    const dated = sheet.formats
      .filter(({ format }) => format === "date" || format === "moment")
      .flatMap(({ range, format }) => {
        const area = areaOf(range);
        return Array.from({ length: area.right - area.left + 1 }, (_, i) => ({
          range,
          room: widthAt({ ...area, left: area.left + i, right: area.left + i, bottom: area.top }),
          wanted: format === "date" ? 11 : 17,
        }));
      });
    expect(dated.filter(({ room, wanted }) => room < wanted)).toEqual([]);
    // A text runs over empty cells to its right, up to the next that holds something.
    const cells = contents(sheet);
    const cut = cells.filter(({ at, content, role }) => {
      if (
        typeof content !== "string" ||
        content.startsWith("=") ||
        role === "text" ||
        role === "caution" ||
        role === "source"
      )
        return false;
      const lines = sheet.lines.find(({ row }) => row === at.top)?.lines ?? 1;
      const merged = sheet.merges.map(areaOf).find((area) => inside(at, area));
      let room = widthAt(at);
      if (lines === 1 && (merged?.right ?? at.left) === sheet.widths.length) room = Infinity;
      for (let column = (merged?.right ?? at.left) + 1; lines === 1 && column <= sheet.widths.length; column++) {
        const beside = { ...at, left: column, right: column };
        const taken =
          cells.some((cell) => cell.content !== null && inside(beside, cell.at)) ||
          blocks.some(({ block, area }) => block.spills && inside(beside, area)) ||
          sheet.merges.some((merge) => inside(beside, areaOf(merge))) ||
          sheet.charts.some((chart) => inside(beside, areaOf(chart.area)));
        if (taken) break;
        room += sheet.widths[column - 1] ?? 0;
        // Right of the last column a spreadsheet has more, and nothing stands there.
        if (column === sheet.widths.length) room = Infinity;
      }
      // Letters are narrower than the digits by which widths are counted, by a tenth and more on average.
      return content.length * 0.9 > room * lines * (lines > 1 ? 0.85 : 1);
    });
    expect(cut.map(({ at, content }) => `${content} at ${at.top}/${at.left}`)).toEqual([]);
  });
});

/** The sheet and the name there that a link speaks of. */
const sourceOf = (from: string): readonly [sheet: Sheet | undefined, name: string] => {
  const [key, ...name] = from.split(".");
  return [sheets.find((one) => one.key === key), name.join(".")];
};

test("no note names a cell by its address, which would be wrong as soon as something moves", () =>
  expect(sheets.flatMap(({ notes }) => notes.map(({ text }) => text)).filter((text) => /![A-Z]+\d/.test(text))).toEqual(
    [],
  ));

test("what repeats another sheet names cells that are there, as many, and of the same format", () => {
  const size = ({ top, left, bottom, right }: Area) => [bottom - top + 1, right - left + 1];
  const formatAt = (sheet: Sheet, at: Area) => sheet.formats.findLast(({ range }) => inside(at, areaOf(range)))?.format;
  const links = sheets.flatMap((sheet) => sheet.links.map((link) => ({ sheet, ...link })));
  expect(links.length).toBeGreaterThan(0);
  const isDate = (sheet: Sheet, at: Area) => ["date", "moment"].includes(formatAt(sheet, at) ?? "");
  for (const { sheet, at, from, by } of links) {
    const [source, name] = sourceOf(from);
    if (!source) throw new Error(`${from}: there is no such sheet`);
    // The sheet's name, which stands in no cell.
    if (name === "") continue;
    const there = areaOf(cellOf(source, name));
    if (by === undefined) {
      expect([from, size(there)]).toEqual([from, size(areaOf(at))]);
      expect([from, formatAt(source, there)]).toEqual([from, formatAt(sheet, areaOf(at))]);
      continue;
    }
    // A figure of an animal: as many rows as names in the list, and as many here as there are to say which.
    expect([from, size(areaOf(cellOf(source, name.replace(/[^.]+$/, "label"))))]).toEqual([from, size(there)]);
    expect([from, by, [1, size(areaOf(at))[0]].includes(size(areaOf(by))[0])]).toEqual([from, by, true]);
    expect([from, isDate(source, there)]).toEqual([from, isDate(sheet, areaOf(at))]);
  }
});

test("an area is counted from its corner", () =>
  expect(areaFrom("B5", 3, 2)).toEqual({ top: 5, left: 2, bottom: 7, right: 3 }));
