/** A block of cells by its corners, both included; rows and columns count from 1. */
export interface Area {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** "A" is 1, "AA" is 27. */
export const columnNumber = (letters: string): number =>
  letters.split("").reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0);

/** 1 is "A", 27 is "AA". */
export const columnLetters = (number: number): string =>
  number <= 26
    ? String.fromCharCode(64 + number)
    : columnLetters(Math.floor((number - 1) / 26)) + columnLetters(((number - 1) % 26) + 1);

/** The area of "B5" or "B5:D7"; dollar signs are read over. */
export const areaOf = (address: string): Area => {
  const found = /^([A-Z]{1,3})(\d+)(?::([A-Z]{1,3})(\d+))?$/.exec(address.replaceAll("$", ""));
  if (!found) throw new Error(`${address} is no address of a sheet`);
  const [, left, top, right = left, bottom = top] = found as unknown as [string, string, string, string?, string?];
  return { top: Number(top), left: columnNumber(left), bottom: Number(bottom), right: columnNumber(right) };
};

/** "B5", or "B5:D7" where the area is more than one cell. */
export const addressOf = ({ top, left, bottom, right }: Area): string => {
  const first = `${columnLetters(left)}${top}`;
  return top === bottom && left === right ? first : `${first}:${columnLetters(right)}${bottom}`;
};

/** The area of so many rows and columns from `at` on. */
export const areaFrom = (at: string, rows: number, columns: number): Area => {
  const { top, left } = areaOf(at);
  return { top, left, bottom: top + rows - 1, right: left + columns - 1 };
};

/** The address of so many rows and columns from `at` on. */
export const block = (at: string, rows: number, columns = 1): string => addressOf(areaFrom(at, rows, columns));

/** The cell so many rows down and columns right of `at`. */
export const beside = (at: string, down: number, across: number): string => {
  const { top, left } = areaOf(at);
  return `${columnLetters(left + across)}${top + down}`;
};

/** "B5" as "$B$5", "B5:D7" as "$B$5:$D$7": it stays where it is when a formula is copied. */
export const fixed = (address: string): string => address.replace(/\$?([A-Z]+)\$?(\d+)/g, "$$$1$$$2");

/** Whether a text is an address that stays, of the sheet itself. */
export const isFixed = (text: string): boolean => /^\$[A-Z]{1,3}\$\d+(:\$[A-Z]{1,3}\$\d+)?$/.test(text);

export const overlap = (one: Area, other: Area): boolean =>
  one.top <= other.bottom && other.top <= one.bottom && one.left <= other.right && other.left <= one.right;

export const inside = (one: Area, other: Area): boolean =>
  one.top >= other.top && one.bottom <= other.bottom && one.left >= other.left && one.right <= other.right;
