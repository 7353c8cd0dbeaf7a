import type { Page } from "../../taskpane/handbook/page";
import { fileOf } from "../../taskpane/handbook/paths";
import type { Findable } from "../../taskpane/search/searchOver";
import { asText } from "./text";

/** A page as the search knows it, by its file. */
export interface Entry extends Findable {
  readonly title: string;
}

const wordsOf = (text: string): readonly string[] => [...new Set(text.toLowerCase().match(/\p{L}[\p{L}\p{N}]{2,}/gu))];

/** A word on more than this share of the pages finds nothing in particular. */
const COMMON = 0.25;

/** What the search knows of each page: of its text those words that few pages have, and that are not said already. */
export const entriesOf = (pages: readonly Page[]): readonly Entry[] => {
  const words = pages.map((page) => wordsOf(asText(page)));
  const counts = new Map<string, number>();
  for (const word of words.flat()) counts.set(word, (counts.get(word) ?? 0) + 1);
  return pages.map(({ path, title, about, alsoFoundBy: everyday = "" }, i) => {
    const said = new Set(wordsOf([title, about, everyday].join(" ")));
    const own = (words[i] ?? []).filter((word) => (counts.get(word) ?? 0) <= COMMON * pages.length && !said.has(word));
    const name = title.replace(/^VIV\./, "");
    return { id: fileOf(path), title, name, everyday, summary: about, about: own.join(" ") };
  });
};
