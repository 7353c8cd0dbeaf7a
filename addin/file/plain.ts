import { roleLooks } from "../../taskpane/sheets/look";
import type { CellContent, PlainSheet } from "../../taskpane/workbook";
import type { FileCell, FileSheet } from "./book";

const LINE = 15; // pt, a row of one line

const contentOf = (content: CellContent): Pick<FileCell, "value" | "formula"> =>
  content !== null && typeof content === "object" ? { value: null, formula: content.formula } : { value: content };

/** A plain sheet for a file, its headings and running words dressed as in every sheet of ours. */
export const plainFileSheet = ({
  name,
  cells,
  look: { widths = [], headings = 0, lines } = {},
}: PlainSheet): FileSheet => ({
  name,
  cells: cells.map((row, i) =>
    row.map((content): FileCell => {
      const look = i < headings ? roleLooks.heading : lines ? roleLooks.text : undefined;
      return { ...contentOf(content), ...(look ? { look } : {}) };
    }),
  ),
  widths,
  heights: (lines ?? []).flatMap((count, i) => (count > 1 ? [{ row: i + 1, points: count * LINE }] : [])),
  merges: [],
  freeze: { rows: headings, columns: 0 },
  validation: [],
  rules: [],
  notes: [],
  names: [],
  charts: [],
});
