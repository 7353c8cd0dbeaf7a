/** A sheet's name as a formula writes it. */
export const quoted = (sheet: string): string => `'${sheet.replaceAll("'", "''")}'`;

/** A formula with names of ranges replaced; what stands in quotation marks is left alone. */
export const renamed = (formula: string, names: ReadonlyMap<string, string>): string => {
  if (names.size === 0) return formula;
  return formula
    .split(/("(?:[^"]|"")*"|'(?:[^']|'')*'!)/)
    .map((part, i) =>
      i % 2 === 1
        ? part
        : part.replace(/[\p{L}_\\][\p{L}\p{N}_.\\]*(?!\s*\()/gu, (word, at: number) =>
            part[at - 1] === "!" || part[at + word.length] === "!" ? word : (names.get(word.toLowerCase()) ?? word),
          ),
    )
    .join("");
};
