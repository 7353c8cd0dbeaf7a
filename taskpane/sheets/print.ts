import { cautions } from "../../functions/cautions";
import type { Sheet } from "./sheet";

/** How a sheet of ours is printed: as wide as the paper, as many pages long as it needs, the column titles on each. */
export interface Print {
  readonly portrait: boolean;
  /** The rows that stay while a sheet is scrolled stand on every page. */
  readonly titleRows: number;
  readonly footer: { readonly left: string; readonly centre: string; readonly right: string };
}

/** In characters, of which upright paper holds some 90 at full size: up to here they are smaller by a quarter at most. */
const WIDEST_UPRIGHT = 125;

export const printOf = ({ widths, freeze, cautions: own }: Sheet): Print => ({
  portrait: widths.reduce((sum, width) => sum + width, 0) <= WIDEST_UPRIGHT,
  titleRows: freeze.rows,
  // What the codes stand for: the sheet's name, the page, and how many there are.
  footer: { left: "&A", centre: own.includes("noVet") ? cautions.noVet : "", right: "&P / &N" },
});
