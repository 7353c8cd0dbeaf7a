/**
 * Excel's own spelling of an add-in's function where the add-in is not there: "_xldudf_VIV_LAPSE", behind the number of
 * a link where another add-in has confused it ("[2]!_xldudf_VIV_LAPSE").
 */
const STORED = /(?:\[\d+\]!)?_xldudf_VIV_([A-Z][A-Z0-9]*)/giu;

/** A function of this add-in, in either spelling; a sheet's or a name's longer name does not count. */
const FUNCTION = /(?<![\p{L}\p{N}_.\\])(?:VIV\.|_xldudf_VIV_)[A-Z][A-Z0-9]*(?![\p{L}\p{N}_.!\\])/iu;

/**
 * A formula with everything that is not code replaced by spaces, so that places stay: text literals ("" is a quote
 * within), quoted sheet names ('' likewise), and table columns in brackets (' keeps the next sign from closing).
 */
export const codeOf = (formula: string): string => {
  let code = "";
  let depth = 0; // of brackets
  let quote = ""; // the quote that is open
  for (let i = 0; i < formula.length; i++) {
    const sign = formula.charAt(i);
    if (quote) {
      // A doubled quote closes and opens again at once, which comes to the same.
      if (sign === quote) quote = "";
      code += " ";
    } else if (depth > 0) {
      if (sign === "[") depth++;
      if (sign === "]") depth--;
      if (sign === "'") {
        i++;
        code += "  ";
      } else {
        code += " ";
      }
    } else if (sign === '"' || sign === "'") {
      quote = sign;
      code += " ";
    } else if (sign === "[") {
      depth = 1;
      code += " ";
    } else {
      code += sign;
    }
  }
  return code.slice(0, formula.length);
};

/** Whether a function of this add-in is called anywhere in the formula. */
export const hasFunction = (formula: string): boolean => FUNCTION.test(codeOf(formula));

/** The formula with the add-in's functions spelled as they are typed, where a file has kept Excel's stored spelling. */
export const respelled = (formula: string): string => {
  // "[2]!" is no code, so the spelling is looked for in code, and the link before it in the formula.
  const code = codeOf(formula);
  let answer = "";
  let from = 0;
  for (const found of formula.matchAll(STORED)) {
    const name = found[1] ?? "";
    const at = found.index + found[0].length - name.length;
    if (code.slice(at, at + name.length) !== name) continue;
    answer += `${formula.slice(from, found.index)}VIV.${name}`;
    from = found.index + found[0].length;
  }
  return answer + formula.slice(from);
};

/** A reference to a whole spill: "B5#", "$B$5#", "Plan!B5#", "'Winter log'!B5#". */
export interface SpillReference {
  /** Undefined where it is on the formula's own sheet. */
  readonly sheet?: string;
  /** "B5", without "$". */
  readonly cell: string;
}

const SPILL = /(?<![\p{L}\p{N}_.$])(?:('(?:[^']|'')*'|[\p{L}_][\p{L}\p{N}_.]*)!)?\$?([A-Z]{1,3})\$?(\d+)#/giu;

export const spillReferences = (formula: string): readonly SpillReference[] => {
  if (!formula.includes("#")) return [];
  const code = codeOf(formula);
  return [...formula.matchAll(SPILL)]
    .filter((found) => code.charAt(found.index + found[0].length - 1) === "#")
    .map(([, sheet, column, row]) => ({
      ...(sheet === undefined
        ? {}
        : { sheet: sheet.startsWith("'") ? sheet.slice(1, -1).replaceAll("''", "'") : sheet }),
      cell: `${column?.toUpperCase()}${row}`,
    }));
};

const ON_SHEET =
  /('(?:[^']|'')+'|[\p{L}_][\p{L}\p{N}_.]*)!(\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?|\$?[A-Z]{1,3}:\$?[A-Z]{1,3}|[\p{L}_][\p{L}\p{N}_.]*)/giu;

/** What a formula names on another sheet: cells, columns or a name, without "$". */
export const sheetReferences = (formula: string): readonly { readonly sheet: string; readonly address: string }[] =>
  formula.includes("!")
    ? // Text literals hold no reference; quoted sheet names stay.
      [...formula.replace(/"(?:[^"]|"")*"/g, '""').matchAll(ON_SHEET)].map(([, sheet = "", address = ""]) => ({
        sheet: sheet.startsWith("'") ? sheet.slice(1, -1).replaceAll("''", "'") : sheet,
        address: address.replaceAll("$", ""),
      }))
    : [];

/** Whether a formula follows another sheet. */
export const followsSheet = (formula: string | undefined): boolean =>
  formula !== undefined && sheetReferences(formula).length > 0;
