import { catalogue } from "../../functions/catalogue";
import { PREFIX } from "../../functions/define";
import { fileOf, functionPath, functionTitle } from "../../taskpane/handbook/paths";
import type { Engine } from "./engine";

/** The handbook from the page of the preview: the server and any host keep it beside the preview. */
export const HANDBOOK = "../handbook/";

/** The function that a formula calls last, which is the one that is being typed. */
const lastIn = (formula: string) => {
  const names = [...formula.matchAll(new RegExp(`\\b${PREFIX}\\.([A-Z0-9]+)`, "gi"))].map(([, name]) => name);
  const wanted = names.at(-1)?.toUpperCase();
  return catalogue.find(({ name }) => name === wanted);
};

/**
 * A link beside the formula bar that leads to the page of the function in the selected cell, or in the formula that is being
 * typed; to the handbook's first page where there is none. The engine's own hint takes words only.
 */
export const showHelp = ({ api }: Engine, link: HTMLAnchorElement): void => {
  const show = (formula: string): void => {
    const found = lastIn(formula);
    link.href = `${HANDBOOK}${fileOf(found ? functionPath(found) : "index")}`;
    link.textContent = found ? `${functionTitle(found)} in the handbook` : "Handbook";
  };
  api.addEvent(api.Event.SelectionChanged, () => {
    const cell = api.getActiveWorkbook()?.getActiveCell();
    show(cell?.getFormula() ?? "");
  });
  api.addEvent(api.Event.SheetEditChanging, ({ value }) => show(value.toPlainText()));
};
