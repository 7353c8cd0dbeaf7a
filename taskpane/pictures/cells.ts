/** A figure, or NaN, which Plot leaves out: a blank, text or an error is a gap and never 0. */
export const figure = (cell: unknown): number => (typeof cell === "number" && Number.isFinite(cell) ? cell : NaN);

export const isTicked = (cell: unknown): boolean => cell === true || figure(cell) > 0;
export const word = (cell: unknown): string => (typeof cell === "string" ? cell.trim() : "");
