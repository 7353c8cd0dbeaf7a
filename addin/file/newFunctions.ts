/**
 * Functions that came after the file format: a file spells them "_xlfn.XLOOKUP", and a program that finds the bare name
 * in a file shows #NAME? until the formula is typed anew. The list is recalled from the published format's "future
 * function" names.
 */
const NEWER = new Set(
  (
    "ACOT ACOTH AGGREGATE ARABIC BASE BITAND BITLSHIFT BITOR BITRSHIFT BITXOR CEILING.MATH COMBINA CONCAT COT COTH CSC " +
    "CSCH DAYS DECIMAL FILTERXML FLOOR.MATH FORECAST.ETS FORECAST.LINEAR FORMULATEXT GAMMA GAUSS IFNA IFS ISFORMULA " +
    "ISOWEEKNUM MAXIFS MINIFS MODE.MULT MODE.SNGL MUNIT NUMBERVALUE PDURATION PERCENTILE.EXC PERCENTILE.INC " +
    "PERMUTATIONA PHI QUARTILE.EXC QUARTILE.INC RANDARRAY RANK.AVG RANK.EQ RRI SEC SECH SEQUENCE SHEET SHEETS SORTBY " +
    "STDEV.P STDEV.S SWITCH TEXTJOIN UNICHAR UNICODE UNIQUE VAR.P VAR.S XLOOKUP XMATCH XOR CHOOSECOLS CHOOSEROWS DROP " +
    "EXPAND HSTACK TAKE TEXTAFTER TEXTBEFORE TEXTSPLIT TOCOL TOROW VSTACK WRAPCOLS WRAPROWS"
  ).split(" "),
);
/** Two of them have a longer spelling still. */
const WORKSHEET = new Set(["FILTER", "SORT"]);
/** Functions with names of their own inside, which a file spells in a way that no other program reads. */
const WITH_NAMES = /(?<![\p{L}\p{N}_.])(LET|LAMBDA|MAP|REDUCE|SCAN|BYROW|BYCOL|MAKEARRAY|ISOMITTED)\s*\(/iu;

const outsideText = (formula: string, change: (code: string) => string): string =>
  formula
    .split(/("(?:[^"]|"")*"|'(?:[^']|'')*')/)
    .map((part, i) => (i % 2 === 1 ? part : change(part)))
    .join("");

/** Whether a file can hold the formula such that other programs read it. */
export const isFileable = (formula: string): boolean => {
  let able = true;
  outsideText(formula, (code) => {
    if (WITH_NAMES.test(code) || /[A-Z]\$?\d+#/i.test(code)) able = false;
    return code;
  });
  return able;
};

/** A formula as a file spells it, without its "=". */
export const filedFormula = (formula: string): string =>
  outsideText(formula.replace(/^=/, ""), (code) =>
    code.replace(/(?<![\p{L}\p{N}_.])[A-Z][A-Z0-9.]*(?=\s*\()/giu, (name) => {
      const upper = name.toUpperCase();
      return WORKSHEET.has(upper) ? `_xlfn._xlws.${upper}` : NEWER.has(upper) ? `_xlfn.${upper}` : name;
    }),
  );

/** A file's formula as it is typed, with its "=". */
export const typedFormula = (formula: string): string =>
  `=${outsideText(formula.replace(/^=/, ""), (code) => code.replace(/_xlfn\.|_xlws\.|_xlpm\./g, ""))}`;
