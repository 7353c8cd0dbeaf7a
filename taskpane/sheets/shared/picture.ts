import type { Chart } from "../sheet";
import { block } from "./address";
import type { Region } from "./region";

/** A chart over so many rows and columns; what it shows is said in words somewhere on the sheet. */
export const picture = (
  [rows, columns]: readonly [rows: number, columns: number],
  chart: Omit<Chart, "area">,
): Region => ({
  region: {
    rows,
    columns,
    places: () => ({}),
    build: (at) => ({ charts: [{ ...chart, area: block(at, rows, columns) }] }),
  },
});
