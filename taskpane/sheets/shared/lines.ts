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
