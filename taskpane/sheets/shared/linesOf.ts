/**
 * Widths of letters in those of a digit, by which a spreadsheet counts a column's width: of Helvetica, whose figures are
 * published with every PostScript printer (Adobe Font Metrics, recalled); the usual fonts of spreadsheets run narrower.
 */
const WIDTHS: readonly (readonly [letters: string, width: number])[] = [
  ["ijl'|", 0.42],
  [" ftIJr.,:;()[]/!-", 0.56],
  ["kcsvxyz", 0.92],
  ["ABEKPSVXY&", 1.22],
  ["CDHNRUwGOQ", 1.34],
  ["mMW%", 1.56],
];
const widthOf = (letter: string): number => WIDTHS.find(([letters]) => letters.includes(letter))?.[1] ?? 1;
const measure = (text: string): number => Array.from(text).reduce((sum, letter) => sum + widthOf(letter), 0);
const SPACE = widthOf(" ");
/** A column is a little wider than its digits, and a cell keeps about as much free at its edges; fonts differ by so much. */
const SPARE = 0.98;

/** Lines that words take in a column's width, as they break between words. */
export const linesOf = (words: string, width: number): number => {
  const room = Math.max(1, width * SPARE);
  return words.split("\n").reduce((lines, paragraph) => {
    let [more, used] = [1, 0];
    for (const word of paragraph.split(" ")) {
      const wide = measure(word);
      if (used > 0 && used + SPACE + wide > room) {
        more++;
        used = 0;
      }
      used += (used > 0 ? SPACE : 0) + wide;
      // A word longer than a line runs on over the next ones.
      if (used > room) {
        more += Math.ceil(used / room) - 1;
        used %= room;
      }
    }
    return lines + more;
  }, 0);
};
