import { cautions } from "../../functions/cautions";
import { columnNumber } from "./shared/address";
import type { Sheet } from "./sheet";

/** How a sheet of ours is printed: as wide as the paper, as many pages long as it needs, the column titles on each. */
export interface Print {
  /** The columns that are printed, "A:H", in all rows that there will be; all where nothing is said. */
  readonly area?: string;
  readonly portrait: boolean;
  /** The rows that stay while a sheet is scrolled stand on every page. */
  readonly titleRows: number;
  readonly footer: { readonly left: string; readonly centre: string; readonly right: string };
}

/** In characters, of which upright paper holds some 90 at full size: up to here they are smaller by a quarter at most. */
const WIDEST_UPRIGHT = 125;

/** How wide what is printed of a sheet is, in characters. */
export const printedWidth = ({ widths, printTo }: Pick<Sheet, "widths" | "printTo">): number =>
  widths.slice(0, printTo ? columnNumber(printTo) : undefined).reduce((sum, width) => sum + width, 0);

export const printOf = (sheet: Sheet): Print => ({
  ...(sheet.printTo ? { area: `A:${sheet.printTo}` } : {}),
  portrait: printedWidth(sheet) <= WIDEST_UPRIGHT,
  titleRows: sheet.freeze.rows,
  // What the codes stand for: the sheet's name, the page, and how many there are.
  footer: { left: "&A", centre: sheet.cautions.includes("noVet") ? cautions.noVet : "", right: "&P / &N" },
});
