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

/** The names that LET and LAMBDA give: each stands before a comma, right after the bracket or after another name's value. */
const namesIn = (formula: string): ReadonlySet<string> => {
  const names = new Set<string>();
  outsideText(formula, (code) => {
    for (const [, name] of code.matchAll(/[(,]\s*([\p{L}_][\p{L}\p{N}_.]*)\s*(?=,)/giu))
      if (name && !/^[A-Z]{1,3}\d+$/i.test(name) && !/^(TRUE|FALSE)$/i.test(name)) names.add(name.toLowerCase());
    return code;
  });
  return names;
};

/**
 * A formula as Excel stores it in a workbook of its own, without its "=": an add-in's function under the add-in's prefix,
 * names within LET and LAMBDA marked as such, the cells of a spill by a function. No program but Excel with the add-in,
 * and the preview, works all of them out.
 */
export const storedFormula = (formula: string): string => {
  const names = WITH_NAMES.test(formula) ? namesIn(formula) : new Set<string>();
  return outsideText(filedFormula(formula), (code) =>
    code
      .replace(
        /(?<![\p{L}\p{N}_.\\])VIV\.([A-Z][A-Z0-9]*)(?=\s*\()/giu,
        (_, name: string) => `_xldudf_VIV_${name.toUpperCase()}`,
      )
      .replace(new RegExp(WITH_NAMES.source, "giu"), (call) => `_xlfn.${call}`)
      .replace(/((?:[\p{L}_][\p{L}\p{N}_.]*!)?\$?[A-Z]{1,3}\$?\d+)#/giu, "_xlfn.ANCHORARRAY($1)")
      .replace(/(?<![\p{L}\p{N}_.!])[\p{L}_][\p{L}\p{N}_.]*(?![\p{L}\p{N}_.!(])/giu, (name) =>
        names.has(name.toLowerCase()) ? `_xlpm.${name}` : name,
      ),
  );
};

/** A file's formula as it is typed, with its "=". */
export const typedFormula = (formula: string): string =>
  `=${outsideText(formula.replace(/^=/, ""), (code) => code.replace(/_xlfn\.ANCHORARRAY\(([^()]*)\)/g, "$1#").replace(/_xlfn\.|_xlws\.|_xlpm\./g, ""))}`;
