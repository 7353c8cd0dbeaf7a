import { wrapped } from "../labels";
import { lettersIn, widthOf } from "../style";
import type { Pen } from "../svg";
import { coldDays, type DrawnYear } from "./drawnYear";
import { countedWords } from "./yearWords";

/** Sizes of a picture's words in px. A post is read on a telephone, at a third of its width. */
export interface Sizes {
  readonly title: number;
  readonly figure: number;
  readonly words: number;
}
export const WIDE: Sizes = { title: 40, figure: 46, words: 24 };
export const NARROW: Sizes = { title: 28, figure: 36, words: 20 };

/** Fainter words; they keep a contrast of 4.5 to 1 on either paper. */
export const SOFT = { "fill-opacity": 0.78 } as const;

/** The place, what is said of it, and the days that are counted, from a height on; answers where it ends. */
export const head = (
  { says, make }: Pen,
  year: DrawnYear,
  { left, width, sizes }: { readonly left: number; readonly width: number; readonly sizes: Sizes },
): { readonly elements: readonly SVGElement[]; readonly bottom: number } => {
  const { title, figure, words } = sizes;
  const elements: SVGElement[] = [];
  let y = 14;
  const line = (text: string, size: number, more: Readonly<Record<string, string | number>> = {}): void => {
    y += size * 1.12;
    elements.push(says(left, y, text, { "font-size": size, ...more }));
  };
  for (const text of wrapped(year.title, lettersIn(width, title, true))) line(text, title, { "font-weight": 700 });
  y += 4;
  for (const text of wrapped(year.subtitle, lettersIn(width, words)).filter(Boolean)) line(text, words, SOFT);
  const days = coldDays(year);
  if (days !== undefined) {
    const beside = widthOf(String(days), figure, true) + figure * 0.5;
    const told = wrapped(countedWords(year), lettersIn(width - beside, words));
    y += Math.max(figure * 0.95, told.length * words * 1.1) + 10;
    elements.push(
      says(left, y, String(days), { "font-size": figure, "font-weight": 700 }),
      make(
        "g",
        {},
        told.map((text, i) =>
          says(left + beside, y - (told.length - 1 - i) * words * 1.1, text, { "font-size": words }),
        ),
      ),
    );
  }
  return { elements, bottom: y + 16 };
};
