import { clearing } from "../sheets/clear";
import type { Sheet } from "../sheets/sheet";
import { counted, sheetsInWords, type Action } from "./action";
import { insertLinked, undrawn, unlistedWords } from "./insertLinked";

export const insertSheet: Action<readonly Sheet[]> = {
  key: "insert-sheet",
  label: "Insert",
  about: "Adds the sheet after your last one, filled with an invented example. Nothing else changes.",
  describe(_, chosen) {
    const names = chosen.map(({ name }) => `"${name}"`).join(", ");
    return {
      text: `Adds ${names} after your last sheet, filled with an invented example. Nothing else changes.`,
      possible: chosen.length > 0,
      ask: false,
    };
  },
  async run(workbook, chosen, options) {
    const { names, linked, entered, couldFollow, unlisted, left } = await insertLinked(workbook, chosen, options);
    const one = names.length === 1;
    // A sheet that takes no figures has no example either.
    const next = chosen.some((sheet) => clearing(sheet).length > 0)
      ? `${one ? "Its" : "Their"} figures are an invented example: clear it, then fill in your own.`
      : "There is nothing to fill in.";
    const sources = [...new Set(linked.map(({ source }) => source.name))];
    const follows =
      linked.length > 0
        ? ` ${counted(linked.length, "cell")} of ${one ? "it" : "them"} ${linked.length === 1 ? "follows" : "follow"} ${sheetsInWords(sources)}.`
        : "";
    const lists = [...new Set(entered.map(({ tab }) => tab.name))];
    const listed =
      lists.length > 0
        ? ` ${one ? "It is" : "They are"} entered on ${sheetsInWords(lists)}: name there which animal follows which.`
        : "";
    const others =
      couldFollow.length > 0
        ? ` ${counted(couldFollow.length, "cell")} of your other sheets could follow ${one ? "it" : "them"}: see "Link sheets" below.`
        : "";
    return {
      text: `${names.map((name) => `"${name}"`).join(", ")} ${one ? "is" : "are"} in the workbook. ${next}${follows}${listed}${unlistedWords(unlisted)}${others}${undrawn(workbook, left)}`,
      left,
    };
  },
};
