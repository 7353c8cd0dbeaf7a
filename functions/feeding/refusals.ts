import { anything, cell, column, defineFunction } from "../define";
import { EntryProblem } from "../problem";
import { outcomeOf, outcomesInWords } from "./shared/outcomes";

/** Blanks are skipped: a meal still to come has no outcome. Every entry is read, also those before the streak. */
export const refusals = defineFunction({
  name: "REFUSALS",
  summary: "How many meals in a row an animal has refused or brought up, counted back from the last.",
  parameters: {
    outcomes: column(
      anything("Oldest first; taken, refused, regurgitated, yes, no, 1, 0 and the like; blanks are skipped"),
      { blank: "keep" },
    ),
  },
  forEach: "animal",
  result: cell("none", "Refusals and regurgitations since the last meal that was taken; 0 if that was the last"),
  sources: ["definition"],
  cautions: ["refusing", "noVet"],
  examples: [
    { given: [[["taken"], ["refused"], ["refused"], [null]]], gives: 2, within: 0 },
    { given: [[["no"], ["regurgitated"], ["yes"]]], gives: 0, within: 0 },
  ],
  calculate({ outcomes }) {
    let streak = 0;
    for (const [i, outcome] of outcomes.entries()) {
      if (outcome === undefined) continue;
      const found = outcomeOf(outcome);
      if (found === undefined) {
        return new EntryProblem(
          "#VALUE!",
          "outcomes",
          i,
          `holds '${String(outcome).slice(0, 40)}': give ${outcomesInWords}`,
        );
      }
      streak = found === "taken" ? 0 : streak + 1;
    }
    return streak;
  },
});
