/** Dashes tell lines apart where colours do not print. */
export const dashes = ["none", "7 3", "2 3", "9 3 2 3", "1 4", "13 4"] as const;
/** Slopes of the hatching tell areas apart where colours do not print. */
export const slopes = [45, -45, 0, 90, 20] as const;
export const signs = ["▼", "●", "◆", "■", "▲"] as const;

export const TEXT = 12; // px
export const LETTER = 6.4; // px, the mean width of a letter at that size in the system's font
export const LINE = 14; // px

/** px that words take at a size, on average; bold ones are wider. */
export const widthOf = (words: string, size: number, isBold = false): number =>
  words.length * size * (LETTER / TEXT) * (isBold ? 1.15 : 1);
/** Letters that fit. */
export const lettersIn = (width: number, size: number, isBold = false): number =>
  Math.max(4, Math.floor(width / widthOf("x", size, isBold)));
