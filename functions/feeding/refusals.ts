import { anything, cell, column, defineFunction, type Value } from "../define";
import { EntryProblem } from "../problem";

/** The spellings of a log. A regurgitation is a meal that the animal did not keep: it counts like a refusal. */
const TAKEN = ["taken", "yes", "true", "1"];
const NOT_TAKEN = ["refused", "regurgitated", "no", "false", "0"];

const wasTaken = (outcome: Value): boolean | undefined => {
  const word = String(outcome).trim().toLowerCase();
  return TAKEN.includes(word) ? true : NOT_TAKEN.includes(word) ? false : undefined;
};

/** Blanks are skipped: a meal still to come has no outcome. Every entry is read, also those before the streak. */
export const refusals = defineFunction({
  name: "REFUSALS",
  summary: "How many meals in a row an animal has refused or brought up, counted back from the last.",
  parameters: {
    outcomes: column(
      anything("Oldest first; taken, refused, regurgitated, yes, no, TRUE, FALSE, 1, 0; blanks are skipped"),
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
      const taken = wasTaken(outcome);
      if (taken === undefined) {
        return new EntryProblem(
          "#VALUE!",
          "outcomes",
          i,
          `holds '${String(outcome).slice(0, 40)}': give taken, refused, regurgitated, yes, no, TRUE, FALSE, 1 or 0`,
        );
      }
      streak = taken ? 0 : streak + 1;
    }
    return streak;
  },
});
