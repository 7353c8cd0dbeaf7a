import { areaOf, inside } from "../sheets/shared/address";
import type { Sheet } from "../sheets/sheet";

/** Something that a keeper fills in on a sheet. */
export interface Input {
  readonly at: string;
  readonly label: string;
  /** What it takes, as the sheet says it where something else is typed. */
  readonly takes: string;
  readonly note: string;
}

/** The texts of a sheet that name cells, by row and column. */
const labels = (sheet: Sheet): ReadonlyMap<string, string> =>
  new Map(
    sheet.blocks
      .filter(({ role }) => role === "label" || role === "heading")
      .flatMap(({ at, rows }) => {
        const { top, left } = areaOf(at);
        return rows.flatMap((row, i) =>
          row.flatMap((content, j) =>
            typeof content === "string" && content !== "" && !content.startsWith("=")
              ? [[`${top + i},${left + j}`, content] as const]
              : [],
          ),
        );
      }),
  );

/** A field is named by the text to its left, a column by the text above it. */
export const inputsOf = (sheet: Sheet): readonly Input[] => {
  const texts = labels(sheet);
  return sheet.validation
    .map(({ range, message }) => {
      const { top, left, bottom } = areaOf(range);
      const before = Array.from({ length: left - 1 }, (_, i) => texts.get(`${top},${left - 1 - i}`));
      const above = Array.from({ length: top - 1 }, (_, i) => texts.get(`${top - 1 - i},${left}`));
      const [first, second] = top === bottom ? [before, above] : [above, before];
      const label = [...first, ...second].find((text) => text !== undefined) ?? "";
      const note = sheet.notes.find(({ at }) => {
        const own = areaOf(at);
        return inside(own, areaOf(range)) || (own.left === left && own.top === top - 1 && top < bottom);
      });
      return { at: range, label, takes: message, note: note?.text ?? "" };
    })
    .sort((one, other) => {
      const [a, b] = [areaOf(one.at), areaOf(other.at)];
      return a.top - b.top || a.left - b.left;
    });
};
