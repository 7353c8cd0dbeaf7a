import { isoText } from "./words";
import type { Column } from "./names";

/**
 * The lines of a check as one text for TEXTJOIN, each with its level before it, and where there is one with its day. Line
 * by line: an IF over the whole column is one for every row only where formulas are arrays by nature.
 */
export const joinedLines = (
  rows: number,
  { level, told, on }: { readonly level: Column; readonly told: Column; readonly on?: Column },
): string => {
  const lines = Array.from({ length: rows }, (_, i) => {
    const [itsLevel, day] = [level.at(i + 1), on?.at(i + 1)];
    const dated = day ? `IF(${day}="","",${isoText(`${day}`)}&", ")&` : "";
    return `IF(${itsLevel}="","",${itsLevel}&": "&${dated}${told.at(i + 1)})`;
  });
  return `TEXTJOIN(CHAR(10),TRUE,${lines.join(",")})`;
};

/** The same where one call answers levels and words, for one cell: each second bar between them becomes a colon, the others end a line. */
export const linesOfCall = (call: string, most: number): string => {
  const lines = Array.from({ length: most }, (_, i) => i + 1);
  const withColons = lines.reduce((text, line) => `SUBSTITUTE(${text},"|",": ",${line})`, `TEXTJOIN("|",TRUE,${call})`);
  return `SUBSTITUTE(${withColons},"|",CHAR(10))`;
};

/** Of such lines the level of the first, its words, and how many there are beside it. */
export const firstOfLines = (lines: unknown): Readonly<Record<"level" | "words" | "more", string>> => {
  const [text, colon] = [String(lines), `FIND(": ",${String(lines)})`];
  return {
    level: `LEFT(${text},${colon}-1)`,
    words: `MID(${text},${colon}+2,FIND(CHAR(10),${text}&CHAR(10))-${colon}-2)`,
    // CLEAN takes out what ends a line, and nothing else of ours.
    more: `(LEN(${text})-LEN(CLEAN(${text})))`,
  };
};
