import { block } from "./shared/address";
import { assemble } from "./shared/assemble";
import { cell, heading, label, table, text, together } from "./shared/part";
import { selfChecks } from "./shared/selfChecks";

const ROWS = selfChecks.length;
const TABLE = 14;
const FIRST = TABLE + 1;
const marks = block(`F${FIRST}`, ROWS);

const passes = (row: number): string => {
  const [answer, expected, within] = [`C${row}`, `D${row}`, `E${row}`];
  return `=IF(ISERROR(${answer}),"fail",IF(ISNUMBER(${expected}),IF(ISNUMBER(${answer}),IF(ABS(${answer}-${expected})<=IF(ISNUMBER(${within}),${within},0),"pass","fail"),"fail"),IF(${answer}=${expected},"pass","fail")))`;
};

export const selfCheck = assemble(
  {
    key: "selfCheck",
    name: "Self-check",
    sentence: "Every function once, against a figure from elsewhere: what works in this spreadsheet.",
    cautions: ["noVet"],
    sources: ["definition", "practice"],
    widths: [18, 36, 13, 13, 9, 7, 13],
    cautionColumns: ["E", "G"],
    example: null,
    foot: ["The figures expected, and where they come from, stand in the last column."],
  },
  heading("A6", "In this spreadsheet", null),
  label("A7", "Checks that pass"),
  cell("B7", "computed", `=COUNTIF(${marks},"pass")&" of "&ROWS(${marks})&" pass"`),
  label("A8", "What failed first"),
  cell("B8", "computed", `=IFERROR(INDEX(${block(`A${FIRST}`, ROWS)},MATCH("fail",${marks},0)),"nothing")`),
  label("A9", "A blank cell is"),
  cell(
    "B9",
    "computed",
    '=IF(VIV.FLUCTUATION(C9,C9)="","handed over as a blank: good","handed over as 0: an old build")',
    {
      note: 'C9 is left blank on purpose. Old builds of the spreadsheet hand a function 0 for a blank cell: there, never call a function without IF(A1="","",...) around it. These sheets always do.',
    },
  ),
  text(
    "A11",
    "After a fail: load the add-in again and calculate. If it stays, report the function, its answer and the version in the last row.",
    2,
    3,
  ),
  table({
    at: `A${TABLE}`,
    rows: ROWS,
    columns: [
      { title: "Function", label: selfChecks.map(({ name }) => name) },
      { title: "Asked", label: selfChecks.map(({ asks }) => asks) },
      { title: "Answer", each: (row) => selfChecks[row - FIRST]?.formula ?? "" },
      { title: "Expected", label: selfChecks.map(({ expected }) => expected) },
      { title: "Within", label: selfChecks.map(({ within }) => within || "exact") },
      { title: "Result", each: passes },
      { title: "Where it comes from", label: selfChecks.map(({ from }) => from) },
    ],
  }),
  together({
    // Three decimals are enough to look at; what is held against one another is the whole figure.
    formats: selfChecks.flatMap(({ expected }, i) =>
      typeof expected === "number"
        ? [
            {
              range: `C${FIRST + i}:D${FIRST + i}`,
              format: Number.isInteger(expected) ? ("whole" as const) : ("thousandth" as const),
            },
          ]
        : [],
    ),
    rules: [
      { range: marks, when: `=$F${FIRST}="pass"`, look: "good" },
      { range: marks, when: `=$F${FIRST}="fail"`, look: "stop" },
    ],
  }),
);
