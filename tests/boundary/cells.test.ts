import { SheetError } from "../../addin/boundary/cell";
import { evaluate } from "../../addin/boundary/evaluate";
import { readCell } from "../../addin/boundary/readCell";
import { catalogue } from "../../functions/catalogue";
import { fluctuation } from "../../functions/climate/fluctuation";
import { lapse } from "../../functions/climate/lapse";
import { onDate } from "../../functions/climate/onDate";
import { seasonShift } from "../../functions/climate/seasonShift";
import { stationRank } from "../../functions/climate/stationRank";
import { scaledMass } from "../../functions/condition/scaledMass";
import type { AnyDefinition } from "../../functions/define";
import { preyMass } from "../../functions/feeding/preyMass";
import { preyRatio } from "../../functions/feeding/preyRatio";
import { refusals } from "../../functions/feeding/refusals";
import { Problem } from "../../functions/problem";
import { fromMetric, symbol, systems } from "../../functions/units";
import { boxAir } from "../../functions/winter/boxAir";
import { lossTrend } from "../../functions/winter/lossTrend";
import { ramp } from "../../functions/winter/ramp";
import { rampCheck } from "../../functions/winter/rampCheck";
import { rampDates } from "../../functions/winter/rampDates";
import { setPoint } from "../../functions/winter/setPoint";
import { stage } from "../../functions/winter/stage";
import { limitsInWords } from "../../functions/words";
import { call, callCell, down } from "../call";

/** What is given to a function, and what it answers: one cell, or rows of cells. */
type Case = readonly [definition: AnyDefinition, given: readonly unknown[], answer: unknown];

const shows = ([definition, given, answer]: Case) =>
  expect(call(definition, ...given)).toEqual(Array.isArray(answer) ? answer : [[answer]]);

const YEAR = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];
/** A year whose July holds something else. */
const july = (cell: unknown) => [YEAR.map((value) => (value === 7 ? cell : value))];
/** SEASONSHIFT by 0 months answers a year as it was read. */
const year = (months: unknown, answer: unknown): Case => [seasonShift, [months, 0], answer];
/** A problem in each cell of an answer of three columns. */
const seven = (problem: string): string[] => Array<string>(7).fill(problem);
/** LAPSE from 500 to 1500 m: 6.5 K less. */
const at1500 = (temperature: unknown, answer: unknown): Case => [lapse, [temperature, 500, 1500], answer];

const PLAN = ["2026-09-21", "2026-10-05", "2026-11-16", "2027-02-08", "2027-03-22", "2027-03-29"];
const number = "give a number from -90 to 60 °C";
const monthly = "give a number from -1000 to 10000";
const size = "give 12, January to December";

/** What a cell or a range may hold. */
type Holding = "blank" | "0" | "text" | "text number" | "boolean" | "error" | "1×1" | "row" | "column" | "mismatch";

/** Each rule of the boundary, for a parameter that is one cell and for one that is a range. */
const table: Record<Holding, { readonly cell: readonly Case[]; readonly range: readonly Case[] }> = {
  blank: {
    cell: [
      at1500(null, "#N/A temperature is blank"),
      at1500(undefined, "#N/A temperature is blank"),
      at1500("", "#N/A temperature is blank"),
      at1500("  ", "#N/A temperature is blank"),
      at1500([[null]], "#N/A temperature is blank"),
      at1500([], "#N/A temperature is blank"),
      at1500([[]], "#N/A temperature is blank"),
      at1500({ type: "FormattedNumber", basicValue: "" }, "#N/A temperature is blank"),
      [lapse, [null, null, null], ""],
      [lapse, [], ""],
      [lapse, [24, 500, 1500, null, ""], 17.5], // optional arguments
      [lapse, [24, 500, 1500, down([9.5, null])], down([14.5, 17.5])],
      [lapse, [null, null, null, down([9.5, null])], down(["", ""])],
    ],
    range: [
      year(july(null), "#N/A month 7 of months is blank"),
      year(july(undefined), "#N/A month 7 of months is blank"),
      year(july(""), "#N/A month 7 of months is blank"),
      year(down(july("  ")[0] ?? []), "#N/A month 7 of months is blank"),
      year([YEAR.map(() => null)], ""),
      [onDate, [[YEAR.map(() => "")], "2026-07-01"], "#N/A months is blank"],
      [onDate, [[], "2026-07-01"], "#N/A months is blank"],
      [stage, ["2026-12-24", down(PLAN.map((day, i) => (i === 2 ? null : day)))], "#N/A row 3 of plan is blank"],
      // A list of meals skips its blanks, a log of weighings keeps their places.
      [
        rampCheck,
        [down(PLAN), 24, 8, down([null, "2026-09-21", ""])],
        [["note", expect.stringMatching(/^Nothing stands out/)]],
      ],
      [
        lossTrend,
        [down(["2026-12-01", null, "2026-12-11", "2026-12-31"]), down([100, null, 99, 97]), "2026-12-31"],
        [[0.03, ...seven("#N/A too few to tell: 3 weighings over 30 days, a trend needs 5 over 28").slice(1)]],
      ],
    ],
  },
  "0": {
    cell: [
      at1500(0, -6.5),
      at1500(-0, -6.5),
      [preyRatio, [0, 100], 0],
      [preyRatio, [10, 0], "#VALUE! body holds 0: give a number from 0.1 to 200000 g"],
    ],
    range: [
      year(july(0), july(0)),
      [refusals, [down([1, 0, 0])], 2], // 0 for a meal that was refused
      [
        lossTrend,
        [down(["2026-12-01", "2026-12-11", "2026-12-21"]), down([100, 0, 99]), "2026-12-31"],
        "#VALUE! row 2 of masses holds 0: give a number from 0.1 to 200000 g",
      ],
    ],
  },
  text: {
    cell: [
      at1500("24C", `#VALUE! temperature holds '24C': ${number}`),
      at1500("24,5", `#VALUE! temperature holds '24,5': ${number}; its comma makes it text, and not the number 24.5`),
      at1500("warm", `#VALUE! temperature holds 'warm': ${number}`),
      at1500("0x10", `#VALUE! temperature holds '0x10': ${number}`),
      at1500("Infinity", `#VALUE! temperature holds 'Infinity': ${number}`),
      [
        lapse,
        [24, 500, 1500, "steep"],
        '#VALUE! rate holds \'steep\': give a number from -15 to 15 K/km or one of "standard", "high", "low", "median", "dry"',
      ],
      [lapse, [24, 500, 1500, "Standard "], 17.5],
      [lapse, [24, 500, 1500, 6.5, "kelvin"], '#VALUE! units holds \'kelvin\': give "metric" or "imperial"'],
    ],
    range: [
      year(july("hot"), `#VALUE! month 7 of months holds 'hot': ${monthly}`),
      [
        stage,
        ["2026-12-24", down(PLAN.map((day, i) => (i === 2 ? "mid-November" : day)))],
        "#VALUE! row 3 of plan holds 'mid-November': give a real date, or 2026-10-05",
      ],
    ],
  },
  "text number": {
    cell: [
      at1500("24.5", 18),
      at1500(" 24.5 ", 18),
      at1500("-1", -7.5),
      at1500("+.5e1", -1.5),
      at1500("0", -6.5),
      at1500("61", `#VALUE! temperature holds '61': ${number}`),
    ],
    range: [year(july("7"), july(7)), year(july(" 7.25"), july(7.25))],
  },
  boolean: {
    cell: [
      at1500(true, `#VALUE! temperature holds TRUE: ${number}`),
      at1500(false, `#VALUE! temperature holds FALSE: ${number}`),
    ],
    range: [
      year(july(true), `#VALUE! month 7 of months holds TRUE: ${monthly}`),
      year(july(false), `#VALUE! month 7 of months holds FALSE: ${monthly}`),
      [
        stationRank,
        [[[true, 1450, 46.3, 11.6]], 1200, 1800, 46.2, 11.5],
        "#VALUE! name in row 1 of stations holds TRUE: give text",
      ],
    ],
  },
  error: {
    cell: [
      at1500(new SheetError("#DIV/0!"), "#VALUE! temperature holds the error #DIV/0!"),
      at1500(new SheetError("#N/A"), "#N/A temperature holds the error #N/A"),
      at1500(NaN, "#VALUE! temperature holds NaN: give a number from -90 to 60 °C"),
      at1500(Infinity, `#VALUE! temperature holds Infinity: ${number}`),
      at1500({ unheardOf: true }, `#VALUE! temperature holds something that is no number, text or date: ${number}`),
    ],
    range: [
      year(july(new SheetError("#DIV/0!")), "#VALUE! month 7 of months holds the error #DIV/0!"),
      year(july(new SheetError("#N/A")), "#N/A month 7 of months holds the error #N/A"),
      [refusals, [[[NaN]]], "#VALUE! row 1 of outcomes holds NaN: give a number, text, TRUE or FALSE"],
    ],
  },
  "1×1": {
    cell: [
      at1500([[24]], 17.5),
      at1500([24], 17.5),
      at1500({ type: "FormattedNumber", basicValue: 24 }, 17.5),
      [lapse, [[[24]], [[500]], [[1500]], [["high"]], [["metric"]]], 17.5],
    ],
    range: [
      year([[7]], `#VALUE! months holds 1 cell: ${size}`),
      year(7, `#VALUE! months holds 1 cell: ${size}`),
      [
        lossTrend,
        [[["2026-12-01"]], [[100]], "2026-12-31"],
        [seven("#N/A masses holds 1 with a date: give three or more")],
      ],
    ],
  },
  row: {
    cell: [
      at1500(
        [[24, 20, null, "x"]],
        [[17.5, 13.5, "#N/A temperature is blank", `#VALUE! temperature holds 'x': ${number}`]],
      ),
      [
        boxAir,
        [[[300, 300]], 5, 5.3],
        [0, 1, 2, 3, 4, 5, 6].map(() => [expect.any(Number) as unknown, expect.any(Number) as unknown]),
      ], // seven answers stand below each
    ],
    range: [year([YEAR], [YEAR]), year(YEAR, [YEAR]), [stage, ["2026-12-24", [PLAN]], "Cold"]],
  },
  column: {
    cell: [
      at1500(
        down([24, 20, null, "x"]),
        down([17.5, 13.5, "#N/A temperature is blank", `#VALUE! temperature holds 'x': ${number}`]),
      ),
      [
        lapse,
        [
          [
            [24, 20],
            [10, 0],
          ],
          500,
          1500,
        ],
        [
          [17.5, 13.5],
          [3.5, -6.5],
        ],
      ], // a block
      [
        lapse,
        [down([24, 20]), [[500, 1500]], 1500],
        [
          [17.5, 24],
          [13.5, 20],
        ],
      ], // a column against a row
      // A log that is filled in as far as its second row.
      [
        lapse,
        [down([24, 20, null]), down([500, null, null]), down([1500, 1500, null])],
        down([17.5, "#N/A stationElevation is blank", ""]),
      ],
      [
        boxAir,
        [down([300, null]), down([5, null]), down([5.3, null])],
        [Array<unknown>(7).fill(expect.any(Number)), Array<string>(7).fill("")],
      ],
    ],
    range: [
      year(down(YEAR), down(YEAR)),
      [stage, ["2026-12-24", down(PLAN)], "Cold"],
      [stage, ["2026-12-24", PLAN.map((day, i) => [`row ${i + 1}`, day])], "Cold"], // a plan with its stages
    ],
  },
  mismatch: {
    cell: [
      [
        lapse,
        [down([24, 20]), down([500, 600, 700]), 1500],
        "#VALUE! temperature holds 2 by 1 cells and stationElevation 3 by 1 cells: give blocks that fit",
      ],
      [
        lapse,
        [[[24, 20, 16]], [[500, 600]], 1500],
        "#VALUE! stationElevation holds 1 by 2 cells and temperature 1 by 3 cells: give blocks that fit",
      ],
      [
        lapse,
        [24, [[500, 600]], [[1500, 1600, 1700]]],
        "#VALUE! stationElevation holds 1 by 2 cells and homeElevation 1 by 3 cells: give blocks that fit",
      ],
      [lapse, [24, 500, 1500, 6.5, down(["metric", "imperial"])], "#VALUE! units holds 2 by 1 cells: give one cell"],
      [ramp, [down(["2026-10-05", "2026-10-06"]), 24, 8, 42], "#VALUE! start holds 2 by 1 cells: give one cell"],
      [
        boxAir,
        [
          [
            [300, 200],
            [300, 200],
          ],
          5,
          5.3,
        ],
        "#VALUE! BOXAIR answers 7 cells for each: give one row or one column, not a block",
      ],
    ],
    range: [
      year([YEAR.slice(1)], `#VALUE! months holds 11 cells: ${size}`),
      year(down([...YEAR, 13]), `#VALUE! months holds 13 cells: ${size}`),
      year([YEAR.slice(0, 6), YEAR.slice(6)], "#VALUE! months holds 2 by 6 cells: give one row or one column"),
      [stage, ["2026-12-24", down(PLAN.slice(1))], "#VALUE! plan holds 5 cells: give 6"],
      [
        stationRank,
        [[["Pass", 1450, 46.3]], 1200, 1800, 46.2, 11.5],
        "#VALUE! stations holds 1 by 3 cells: give rows of 4 cells (name, elevation, latitude, longitude)",
      ],
      [
        lossTrend,
        [down(PLAN), down([100, 99]), "2027-03-29"],
        [seven("#VALUE! dates holds 6 cells and masses 2: give as many of each")],
      ],
    ],
  },
};

describe.each(Object.entries(table))("%s", (_, { cell, range }) => {
  test("in a cell", () => cell.forEach(shows));
  test("in a range", () => range.forEach(shows));
});

const date = "give a date from 1900-03-01 to 9999-12-31";
const ramped = (start: unknown, answer: unknown): Case => [ramp, [start, 24, 8, 42, 42], answer];
const from = (start: number) => [
  [start, 24],
  [start + 42, 8],
];

describe("what a keeper gets wrong", () => {
  test.each<[string, ...Case]>([
    ["low above high", fluctuation, [7, 18.5], "#VALUE! low holds 18.5 °C, above high 7 °C: are they swapped?"],
    [
      "low above high, in °F",
      fluctuation,
      [45, 65, "imperial"],
      "#VALUE! low holds 65 °F, above high 45 °F: are they swapped?",
    ],
    [
      "a station below the lowest shore",
      lapse,
      [24, -431, 1500],
      "#VALUE! stationElevation holds -431: give a number from -430 to 9000 m",
    ],
    [
      "a home above every summit",
      lapse,
      [24, 500, 9001],
      "#VALUE! homeElevation holds 9001: give a number from -430 to 9000 m",
    ],
    [
      "feet for metres, told in feet",
      lapse,
      [75, 500, 30_000, 6.5, "imperial"],
      "#VALUE! homeElevation holds 30000: give a number from -1410 to 29527 ft",
    ],
    ["the lowest and the highest elevation are fine", lapse, [0, -430, 9000, 10], -94.3],
    [
      "eleven months",
      onDate,
      [[YEAR.slice(1)], "2026-07-01"],
      "#VALUE! months holds 11 cells: give 12, January to December",
    ],
    ["a month blank in the middle", onDate, [july(null), "2026-07-01"], "#N/A month 7 of months is blank"],
    [
      "warm and cold swapped",
      setPoint,
      ["2026-12-24", down(PLAN), 8, 24],
      "#VALUE! cold holds 24 °C, above warm 8 °C: are they swapped?",
    ],
    [
      "a plan out of order",
      stage,
      ["2026-12-24", down([...PLAN].reverse())],
      "#VALUE! plan holds Cooling starts 2027-03-22, before Last meal 2027-03-29: give its dates in order",
    ],
    [
      "days below 0",
      rampDates,
      ["2026-09-21", 14, 42, -84, 42],
      "#VALUE! cold holds -84: give a whole number from 0 to 366 days",
    ],
    [
      "a part of a day",
      rampDates,
      ["2026-09-21", 14, 42.5, 84, 42],
      "#VALUE! cool holds 42.5: give a whole number from 1 to 366 days",
    ],
    [
      "a share for a percentage",
      boxAir,
      [300, 5, 5.3, 0, 0.19],
      [Array<string>(7).fill("#VALUE! floor holds 0.19: give a number from 18 to 20.8 %")],
    ],
    [
      "a station without its longitude",
      stationRank,
      [[["Pass", 1450, 46.3, null]], 1200, 1800, 46.2, 11.5],
      "#N/A longitude in row 1 of stations is blank",
    ],
    [
      "an elevation in words",
      stationRank,
      [[["Pass", "high", 46.3, 11.6]], 1200, 1800, 46.2, 11.5],
      "#VALUE! elevation in row 1 of stations holds 'high': give a number from -430 to 9000 m",
    ],
  ])("%s", (_, ...one) => shows(one));

  test.each<[string, ...Case]>([
    ["1 March 1900 is the first day", ...ramped(61, from(61))],
    ["29 February 1900 never was", ...ramped(60, `#VALUE! start holds 60: ${date}`)],
    ["28 February 1900 is before it", ...ramped("1900-02-28", `#VALUE! start holds '1900-02-28': ${date}`)],
    ["a date below 0", ...ramped(-1, `#VALUE! start holds -1: ${date}`)],
    ["a time of day is dropped", ...ramped(46_300.75, from(46_300))],
    ["ISO text", ...ramped("2026-10-05", from(46_300))],
    ["ISO text with blanks around it", ...ramped(" 2026-10-05 ", from(46_300))],
    ["ISO text with a time of day", ...ramped("2026-10-05T18:00", from(46_300))],
    ["a serial number as text", ...ramped("46300", from(46_300))],
    [
      "a date with its format around it",
      ...ramped({ type: "FormattedNumber", basicValue: 46_300, numberFormat: "yyyy-mm-dd" }, from(46_300)),
    ],
    [
      "a day that the calendar has not",
      ...ramped("2026-02-30", `#VALUE! start holds '2026-02-30': give a real date, or 2026-10-05`),
    ],
    [
      "a date that could be read two ways",
      ...ramped("5/10/2026", `#VALUE! start holds '5/10/2026': give a real date, or 2026-10-05`),
    ],
    ["a year alone reads as a serial number, a day of 1905", ...ramped(2026, from(2026))],
    ["TRUE for a date", ...ramped(true, `#VALUE! start holds TRUE: give a real date, or 2026-10-05`)],
    ["a date past the calendar", ...ramped(2_958_466, `#VALUE! start holds 2958466: ${date}`)],
    ["a blank date", ...ramped(null, "#N/A start is blank")],
  ])("dates: %s", (_, ...one) => shows(one));
});

test.each([
  ["41 letters are cut after 40", 41, `${"x".repeat(40)}…`],
  ["40 letters are shown whole", 40, "x".repeat(40)],
])("long text in a message: %s", (_, length, shown) =>
  expect(callCell(lapse, "x".repeat(length), 500, 1500)).toBe(`#VALUE! temperature holds '${shown}': ${number}`),
);

test("one bad cell spoils its own answer, not the spill", () => {
  const temperatures = Array.from({ length: 100 }, (_, i) => (i === 50 ? "?" : i % 60));
  const answers = call(lapse, down(temperatures), 500, 1500).flat();
  expect(answers.filter((answer) => typeof answer === "number")).toHaveLength(99);
  expect(answers[50]).toBe(`#VALUE! temperature holds '?': ${number}`);
});

test("dates are handed on as dates, text and figures as what they are", () => {
  const plan = evaluate(rampDates, ["2026-09-21", 14, 42, 84, 42]);
  expect([plan.unit(0, 0), plan.unit(0, 1)]).toEqual(["text", "date"]);
  expect(plan.cells[0]).toEqual(["Last meal", 46_286]);
  expect(evaluate(ramp, ["2026-10-05", 24, 8, 42]).unit(3, 1)).toBe("celsius");
});

describe("units of one call", () => {
  test.each<[string, ...Case]>([
    ["a temperature converts with its offset", lapse, [75.2, 0, 0, 6.5, "imperial"], expect.closeTo(75.2, 9)],
    [
      "an elevation and a rate convert with it: 3.5 °F per 1000 ft over 1000 ft",
      lapse,
      [70, 1000, 2000, 3.5, "imperial"],
      expect.closeTo(66.5, 9),
    ],
    ["a difference converts without offset", fluctuation, [75.2, 46.4, "imperial"], expect.closeTo(28.8, 9)],
    [
      "limits hold in metric and are told in °F",
      lapse,
      [141, 0, 0, 6.5, "imperial"],
      "#VALUE! temperature holds 141: give a number from -130 to 140 °F",
    ],
    ["capitals are of no matter", lapse, [75.2, 0, 0, 6.5, "Imperial"], expect.closeTo(75.2, 9)],
  ])("%s", (_, definition, given, answer) => expect(call(definition, ...given)).toEqual([[answer]]));
});

describe("the limits that a message asks for", () => {
  const asked = catalogue.flatMap(({ name, parameters }) =>
    Object.entries(parameters).flatMap(([key, parameter]) =>
      (parameter.reads === "cell" ? [parameter] : parameter.columns.map(([, cell]) => cell))
        .filter(({ kind, limits }) => limits && (kind === "quantity" || kind === "count"))
        .map((cell) => [`${name}, ${key}`, cell] as const),
    ),
  );
  test("are there", () => expect(asked.length).toBeGreaterThan(80));

  test.each(asked)("%s: are taken, in both systems", (_, cell) => {
    for (const system of systems) {
      const [, least, most] = /^from (\S+) to (\S+)/.exec(limitsInWords(cell, system)) ?? [];
      for (const limit of [least, most]) {
        expect(readCell(cell, Number(limit), system, () => "it")).not.toBeInstanceOf(Problem);
        expect(readCell(cell, limit, system, () => "it")).not.toBeInstanceOf(Problem);
      }
      // Short, and no further inwards than its last digit, which is at most a thirtieth of it.
      for (const [limit, metric] of [
        [least, cell.limits?.least],
        [most, cell.limits?.most],
      ] as const) {
        if (symbol(cell.unit, system) !== symbol(cell.unit))
          expect(limit?.replace(/\D|^[0.]+/g, "").length).toBeLessThanOrEqual(5);
        const exact = fromMetric(metric as number, cell.unit, system);
        expect(Math.abs(Number(limit) - exact)).toBeLessThanOrEqual(Math.abs(exact) / 30);
      }
    }
  });

  test("are whole feet", () => {
    const message = "#VALUE! stationElevation holds 29528: give a number from -1410 to 29527 ft";
    expect(callCell(lapse, 20, 29_528, 0, null, "imperial")).toBe(message);
    expect(callCell(lapse, 20, 29_527, 29_527, null, "imperial")).toBeCloseTo(20, 9);
  });

  test("of a share or a length have no unit word behind them", () => {
    expect(callCell(preyMass, 240, 2)).toBe("#VALUE! ratio holds 2: give a number from 0.001 to 1; 10 % is 0.1");
    expect(callCell(scaledMass, 200, 0)).toBe("#VALUE! row 1 of lengths holds 0: give a number from 0.1 to 20000");
  });
});
