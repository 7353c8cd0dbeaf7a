import type { Format } from "./sheet";
import { form } from "./shared/form";
import { f } from "./shared/formula";
import { log } from "./shared/log";
import { namedColumn } from "./shared/names";
import { page } from "./shared/page";
import { gap } from "./shared/region";
import { says } from "./shared/rules";
import { words } from "./shared/running";
import { selfChecks } from "./shared/selfChecks";

const [functions, results] = ["function", "result"].map((one) => namedColumn(`checks.${one}`));

const here = form("here", ["In this spreadsheet"], {
  passes: { wide: 2, label: "Checks that pass", value: f`COUNTIF(${results},"pass")&" of "&ROWS(${results})&" pass"` },
  failed: {
    wide: 2,
    label: "What failed first",
    value: f`IFERROR(INDEX(${functions},MATCH("fail",${results},0)),"nothing")`,
  },
  blank: {
    wide: 2,
    label: "A blank cell is",
    value: ({ leftBlank }) =>
      f`IF(VIV.FLUCTUATION(${leftBlank},${leftBlank})="","handed over as a blank: good","handed over as 0: an old build")`,
    note: 'The cell to the right is left blank on purpose. Old builds of the spreadsheet hand a function 0 for a blank cell: there, never call a function without IF(A1="","",...) around it. These sheets always do.',
  },
  leftBlank: {},
  // 15 °C at sea level are 8.5 °C at 1000 m in the standard atmosphere; a foot is 0.3048 m.
  units: {
    wide: 2,
    label: "°F and feet are",
    value: f`IF(ABS(VIV.LAPSE(59,0,1000/0.3048,"","imperial")-47.3)<1E-9,"read as such: good","not read: report it")`,
  },
});

const mend = words(
  "mend",
  [2, 3],
  "After a fail: load the add-in again and calculate. If it stays, report the function, its answer and the version in the last row.",
);

/** Three decimals are enough to look at; what is held against one another is the whole figure. */
const formats = selfChecks.map(({ expected }): Format | undefined =>
  typeof expected !== "number" ? undefined : Number.isInteger(expected) ? "whole" : "thousandth",
);

const checks = log("checks", selfChecks.length, {
  function: { title: "Function", label: selfChecks.map(({ name }) => name) },
  result: {
    title: "Result",
    each: ({ answer, expected, within }) =>
      f`IF(ISERROR(${answer}),"fail",IF(ISNUMBER(${expected}),IF(ISNUMBER(${answer}),IF(ABS(${answer}-${expected})<=IF(ISNUMBER(${within}),${within},0),"pass","fail"),"fail"),IF(${answer}=${expected},"pass","fail")))`,
    rules: [says("pass", "good"), says("fail", "stop")],
  },
  asked: { title: "Asked", label: selfChecks.map(({ asks }) => asks) },
  answer: { title: "Answer", each: ({ answer }) => selfChecks[answer.row - 1]?.formula ?? "", formats },
  expected: { title: "Expected", label: selfChecks.map(({ expected }) => expected), formats },
  within: { title: "Within", label: selfChecks.map(({ within }) => within || "exact") },
  from: { title: "Where it comes from", skip: 1, label: selfChecks.map(({ from }) => from) },
});

export const selfCheck = page(
  {
    key: "selfCheck",
    name: "Self-check",
    sentence: "Every function once, against a figure from elsewhere: what works in this spreadsheet.",
    cautions: ["noVet"],
    sources: ["definition", "practice"],
    widths: [18, 8, 36, 13, 13, 9, 1, 70],
    cautionColumns: ["E", "F"],
    example: null,
    metricOnly: true,
    foot: [
      "Asked and answered in metric, as the sources have it, whatever the units of your other sheets.",
      "The figures expected, and where they come from, stand in the last column.",
    ],
  },
  here,
  gap(1),
  mend,
  gap(1),
  checks,
);
