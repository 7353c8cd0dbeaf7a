import { wrapped } from "../labels";
import { lettersIn, widthOf } from "../style";
import { introduced, newId, penOf } from "../svg";
import type { PageCell, SheetPage } from "./readPage";

const WIDTH = 1000; // px
const EDGE = 24;
const CAPTION = 15; // px
const GAP = 10; // px between two cells
/** Some systems' letters are as much wider than those that widths are reckoned by. */
const WIDER = 1.12;

interface Told {
  readonly title: string;
  readonly sentence: string;
  readonly summary: string;
}

/** A sheet of ours as one page: its title, its picture, and what it says line by line. The caption comes below. */
export const sheetPage = (
  { widths, rows, more }: SheetPage,
  picture: SVGSVGElement | undefined,
  { title, sentence, summary }: Told,
  document: Document,
): SVGSVGElement => {
  const pen = penOf(document);
  const { make, says } = pen;
  const inner = WIDTH - 2 * EDGE;
  const elements: SVGElement[] = [];
  let y = 14;
  for (const text of wrapped(title, lettersIn(inner, 36, true))) {
    y += 40;
    elements.push(says(EDGE, y, text, { "font-size": 36, "font-weight": 700 }));
  }
  for (const text of wrapped(sentence, lettersIn(inner, 18))) {
    y += 24;
    elements.push(says(EDGE, y, text, { "font-size": 18 }));
  }
  y += 16;
  if (picture) {
    const [wide, tall] = ["width", "height"].map((key) => Number(picture.getAttribute(key))) as [number, number];
    const scale = inner / wide;
    for (const [key, value] of Object.entries({
      x: EDGE,
      y,
      width: inner,
      height: tall * scale,
      viewBox: `0 0 ${wide} ${tall}`,
    }))
      picture.setAttribute(key, String(value));
    // One picture is spoken of, the page: what is inside it is told in the page's own words.
    for (const key of ["role", "aria-labelledby", "aria-describedby", "style"]) picture.removeAttribute(key);
    elements.push(picture);
    y += tall * scale + 16;
  }

  const sum = widths.reduce((all, one) => all + one, 0);
  const letter = Math.min(10, inner / sum);
  const size = Math.max(10, Math.min(16, letter * 1.6));
  const line = size * 1.3;
  const edges = widths.reduce<number[]>((all, one) => [...all, (all.at(-1) as number) + one * letter], [EDGE]);
  const at = (column: number): number => edges[Math.min(column, edges.length - 1)] as number;
  const linesOf = ({ from, to, text, role }: PageCell): readonly string[] =>
    text.split("\n").flatMap((part) => wrapped(part, lettersIn(at(to) - at(from) - GAP / 2, size, role === "heading")));
  /** A word that is longer than its column is written smaller. */
  const fitted = (text: string, room: number, isBold: boolean): number =>
    size * Math.min(1, Math.max(0.7, room / (widthOf(text, size, isBold) * WIDER)));
  for (const row of rows) {
    const cells = row.map((cell) => ({ ...cell, lines: linesOf(cell) }));
    const tall = Math.max(...cells.map(({ lines }) => lines.length)) * line;
    if (row.some(({ role }) => role === "heading")) y += 6;
    for (const { from, to, role } of row)
      if (role === "heading")
        elements.push(
          make("rect", {
            x: at(from),
            y,
            width: at(to) - at(from),
            height: tall + 4,
            fill: "currentColor",
            "fill-opacity": 0.1,
          }),
        );
    for (const { from, to, role, isNumber, lines } of cells)
      lines.forEach((text, i) => {
        const place = isNumber ? at(to) - GAP : at(from) + 2;
        elements.push(
          says(place, y + size + i * line, text, {
            "font-size": fitted(text, at(to) - at(from), role === "heading"),
            ...(isNumber ? { "text-anchor": "end" } : {}),
            ...(role === "heading" ? { "font-weight": 600 } : {}),
          }),
        );
      });
    y += tall + 3;
  }
  if (more > 0) {
    y += line;
    elements.push(says(EDGE, y, `and ${more} more rows on the sheet`, { "font-size": size }));
  }
  const height = Math.ceil(y + 20);
  const page = make("svg", { width: WIDTH, height, viewBox: `0 0 ${WIDTH} ${height}`, "data-edge": EDGE });
  page.append(...elements);
  return introduced(page, pen, { id: newId(), title, summary, size: CAPTION });
};
