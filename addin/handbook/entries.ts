import type { Page } from "../../taskpane/handbook/page";
import { fileOf } from "../../taskpane/handbook/paths";
import { plainWords, type Entry } from "./find";
import { asText } from "./text";

/** A word on more than this share of the pages finds nothing in particular. */
const COMMON = 0.25;

/** What the search knows of each page: of its text those words that few pages have, and that are not said already. */
export const entriesOf = (pages: readonly Page[]): readonly Entry[] => {
  const words = pages.map((page) => new Set(plainWords(asText(page)).split(" ")));
  const counts = new Map<string, number>();
  for (const word of words.flatMap((own) => [...own])) counts.set(word, (counts.get(word) ?? 0) + 1);
  return pages.map(({ path, title, about, alsoFoundBy: also = "" }, i) => {
    const said = ` ${plainWords([title, about, also].join(" "))}`;
    const own = [...(words[i] ?? [])].filter(
      (word) =>
        /\p{L}{3}/u.test(word) && (counts.get(word) ?? 0) <= COMMON * pages.length && !said.includes(` ${word}`),
    );
    return { file: fileOf(path), title, about, also, words: own.join(" ") };
  });
};
