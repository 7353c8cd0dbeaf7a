import { WorkbookError } from "../workbook";
import { counted, impossible, sheetsInWords, stopIfCancelled, type Action } from "./action";
import { planOf, type Plan } from "./clearExample";
import { recognise } from "./template";
import { sheets as templates } from "../sheets/catalogue";
import { clearing } from "../sheets/clear";
import type { Workbook } from "../workbook";

const plansOf = async (workbook: Workbook) => {
  const plans: Plan[] = [];
  const left: string[] = [];
  for (const contents of await workbook.read()) {
    const known = recognise(contents, templates);
    if (!known || clearing(known.template).length === 0) continue;
    const plan = planOf(contents);
    if (typeof plan === "string") left.push(plan.replace(" Nothing was changed", " It was left as it is"));
    else if (plan.filled > 0) plans.push(plan);
  }
  return { plans, left };
};

const cells = (plans: readonly Plan[], count: "filled" | "own"): number =>
  plans.reduce((sum, plan) => sum + plan[count], 0);

export const clearAll: Action = {
  key: "clear-all",
  label: "Clear all sheets",
  about: "The same on every sheet of this pane at once, so that a whole workbook is yours to fill.",
  async describe(workbook) {
    const { plans, left } = await plansOf(workbook);
    if (plans.length === 0) {
      return impossible(
        left.length > 0 ? "Nothing can be cleared:" : "No sheet of this pane holds anything to clear.",
        left,
      );
    }
    const own = cells(plans, "own");
    return {
      text:
        `${counted(cells(plans, "filled"), "cell")} on ${sheetsInWords(plans.map(({ sheet }) => sheet))} will be emptied. ` +
        "Formulas, settings, cautions and what follows another sheet stay." +
        (own > 0
          ? ` Take care: ${counted(own, "cell")} of these ${own === 1 ? "is" : "are"} your own, not the example.`
          : "") +
        (workbook.undoes ? "" : " This cannot be undone."),
      list: [
        ...left,
        ...plans.map(
          ({ sheet, filled, own: yours }) =>
            `"${sheet}": ${counted(filled, "cell")}${yours > 0 ? `, ${yours} of them your own` : ""}`,
        ),
      ],
      possible: true,
      ask: true,
    };
  },
  async run(workbook, _, options) {
    const { plans, left } = await plansOf(workbook);
    stopIfCancelled(options);
    if (plans.length === 0) throw new WorkbookError("There is nothing to clear any more. Nothing was changed.");
    await workbook.write(
      plans.flatMap(({ changes }) => changes),
      options,
    );
    return {
      text: `${counted(cells(plans, "filled"), "cell")} on ${sheetsInWords(plans.map(({ sheet }) => sheet))} emptied. The framed cells are yours to fill.${left.length > 0 ? " Left as it was:" : ""}`,
      left,
    };
  },
};
