import { isFunction, isReference, parseA1Ref, tokenize, type ReferenceA1, type Token } from "@borgar/fx";

/**
 * A function of this add-in, as it is typed or in Excel's own spelling where the add-in is not there
 * ("_xldudf_VIV_LAPSE"). Handed over without brackets it reads as a name: MAP(A1:A3,VIV.SEASONSHIFT).
 */
const FUNCTION = /^(?:VIV\.|_xldudf_VIV_)([A-Z][A-Z0-9]*)$/iu;
/** Most formulas of a workbook are none of ours, and need not be read. */
const LIKELY = /VIV[._]/iu;

const functionOf = (token: Token | undefined): string | undefined =>
  token && (isFunction(token) || isReference(token)) ? FUNCTION.exec(token.value)?.[1] : undefined;

/** The functions of this add-in that a formula calls, in capitals and without the prefix. */
export const functionsIn = (formula: string): readonly string[] =>
  LIKELY.test(formula) ? tokenize(formula).flatMap((token) => functionOf(token)?.toUpperCase() ?? []) : [];

/** Whether a function of this add-in is called anywhere in the formula. */
export const hasFunction = (formula: string): boolean => functionsIn(formula).length > 0;

/** Whether a formula follows the calendar or the clock: it changes while nobody types. */
export const followsCalendar = (formula: string): boolean =>
  /\b(?:TODAY|NOW)\b/iu.test(formula) &&
  tokenize(formula).some((token) => isFunction(token) && /^(?:TODAY|NOW)$/iu.test(token.value));

/** How many tokens the number of a link has that Excel writes before a function of another add-in's: "[2]!". */
const LINK = 4;

/** The formula with the add-in's functions spelled as they are typed, where a file has kept Excel's stored spelling. */
export const respelled = (formula: string): string => {
  if (!/_xldudf_VIV_/iu.test(formula)) return formula;
  const written: string[] = [];
  for (const token of tokenize(formula)) {
    const name = functionOf(token);
    if (name === undefined) {
      written.push(token.value);
      continue;
    }
    if (/^\[\d+\]!$/.test(written.slice(-LINK).join(""))) written.splice(-LINK);
    written.push(token.value.toUpperCase().startsWith("VIV.") ? token.value : `VIV.${name}`);
  }
  return written.join("");
};

/** The sheet that a reference names; of another workbook it has that one's name in brackets before its own. */
const sheetIn = (token: Token): string | undefined => {
  if (!isReference(token) || !token.value.includes("!")) return undefined;
  const [sheet, workbook] = [...((parseA1Ref(token.value) as ReferenceA1 | undefined)?.context ?? [])].reverse();
  return sheet === undefined || workbook === undefined ? sheet : `[${workbook}]${sheet}`;
};

/** What a reference names on its sheet. */
const addressIn = ({ value }: Token): string => value.slice(value.lastIndexOf("!") + 1).replaceAll("$", "");

/** A reference to a whole spill: "B5#", "$B$5#", "Plan!B5#", "'Winter log'!B5#". */
export interface SpillReference {
  /** Undefined where it is on the formula's own sheet. */
  readonly sheet?: string;
  /** "B5", without "$". */
  readonly cell: string;
}

export const spillReferences = (formula: string): readonly SpillReference[] => {
  if (!formula.includes("#")) return [];
  const tokens = tokenize(formula);
  return tokens.flatMap((token, i) => {
    const address = addressIn(token).toUpperCase();
    if (tokens[i + 1]?.value !== "#" || !isReference(token) || !/^[A-Z]{1,3}\d+$/.test(address)) return [];
    const sheet = sheetIn(token);
    return [{ ...(sheet === undefined ? {} : { sheet }), cell: address }];
  });
};

/** What a formula names on another sheet: cells, columns or a name, without "$". */
export const sheetReferences = (formula: string): readonly { readonly sheet: string; readonly address: string }[] =>
  formula.includes("!")
    ? tokenize(formula).flatMap((token) => {
        const sheet = sheetIn(token);
        return sheet === undefined ? [] : [{ sheet, address: addressIn(token) }];
      })
    : [];

/** Whether a formula follows another sheet. */
export const followsSheet = (formula: string | undefined): boolean =>
  formula !== undefined && sheetReferences(formula).length > 0;

/** The formula with other sheets in place of those that it names; `others` is by names in small letters. */
export const onOtherSheets = (formula: string, others: ReadonlyMap<string, string>): string =>
  formula.includes("!")
    ? tokenize(formula)
        .map((token) => {
          const other = others.get(sheetIn(token)?.toLowerCase() ?? "");
          const address = token.value.slice(token.value.lastIndexOf("!") + 1);
          return other === undefined ? token.value : `'${other.replaceAll("'", "''")}'!${address}`;
        })
        .join("")
    : formula;
