import { cautions } from "../../functions/cautions";
import { everydayWords } from "./everydayWords";
import { items, type Item } from "./items";
import { searchOver, type Findable } from "./searchOver";

/** A caution is found by its words, but what can be done comes first. */
const CAUTIONS_WEIGH = 0.3;

const findable = (item: Item): Findable => {
  if (item.kind === "caution") {
    return { id: item.id, name: "", everyday: "", summary: cautions[item.id], about: "", weighs: CAUTIONS_WEIGH };
  }
  if (item.kind === "sheet") {
    const { sheet, id } = item;
    return { id, name: sheet.name, everyday: everydayWords[id] ?? "", summary: sheet.sentence, about: "" };
  }
  const { definition, topic } = item;
  return {
    id: item.id,
    name: definition.name,
    everyday: everydayWords[definition.name] ?? "",
    summary: definition.summary,
    about: [
      topic,
      ...Object.entries(definition.parameters).flatMap(([name, { about }]) => [name.replace(/[A-Z]/g, " $&"), about]),
      ...definition.result.columns.map(({ name, about }) => `${name} ${about}`),
    ].join(" "),
  };
};

const byId = new Map(items.map((item) => [item.id, item]));
const search = searchOver(items.map(findable));

/** What is found for what was typed, best first; nothing where nothing was typed. */
export const find = (typed: string): readonly Item[] => search(typed).flatMap((id) => byId.get(id) ?? []);
