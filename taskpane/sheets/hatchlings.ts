import { all, looked } from "./hatchlingsLog";
import { firstWinter, winterLines, winterSaid } from "./hatchlingsWinter";
import { form } from "./shared/form";
import { page } from "./shared/page";
import { gap } from "./shared/region";
import { moreThanNone } from "./shared/rules";
import { title, words } from "./shared/running";
import { onceFilled } from "./shared/words";

const { label: labels, standsOut } = all;
const countOf = (like: string): string => onceFilled(`${labels}`, 1, `COUNTIF(${standsOut},"${like}*")`);

const now = form(
  "now",
  "Now",
  {
    all: { label: "Hatchlings", value: onceFilled(`${labels}`, 1, `COUNTA(${labels})`), format: "whole" },
    eat: { label: "Eat", value: countOf("Eats"), format: "whole" },
    wait: { label: "Wait", value: countOf("Waiting"), format: "whole" },
    plan: { label: "Need a plan", value: countOf("Plan"), format: "whole", rules: [moreThanNone("care")] },
    undecided: {
      label: "Winter open",
      value: onceFilled(`${labels}`, 1, `COUNTIF(${all.firstWinter},"Does*")`),
      format: "whole",
      note: "Young ones whose first winter is not decided.",
      rules: [moreThanNone("care")],
    },
  },
  { across: 1 },
);

const plan = [
  "0. Before the first shed no meal: damp hide, water, quiet; most shed within their second week. Later than that: look at damp and warmth.",
  "1. Warm end, cool end, tight hide, water, quiet: right first, then leave it alone for some days.",
  "2. Smaller prey, freshly thawed and warm, left overnight in the hide.",
  "3. Other prey or another scent, in a small box in the dark. Change one thing at a time.",
  "4. Losing mass, or weak: a reptile vet. No force-feeding, but as the vet has shown you.",
] as const;
const WIDTHS = [9, 29, 11.5, 11.5, 7, 7, 5.2, 5.2, 5.2, 5.2, 5.2, 5.2, 6, 8.5, 8, 8, 20, 20] as const;
/** The columns beside the cautions. */
const LEFT = 5;

export const hatchlings = page(
  {
    key: "hatchlings",
    name: "Hatchlings",
    sentence: "First shed, first meals, refusals and masses, the first winter: who needs a plan.",
    cautions: ["refusing", "meal", "coldKills", "sameScales", "noVet"],
    sources: ["practice", "definition"],
    widths: WIDTHS,
    inView: [all],
    cautionColumns: ["G", "L"],
  },
  { A: [looked], D: [now] },
  gap(1),
  title("A plan (practice): one step at a time", LEFT),
  ...plan.map((line, i) => words(`plan${i + 1}`, [2, LEFT], line)),
  gap(1),
  all,
  gap(2),
  { A: [firstWinter], D: [winterSaid] },
  gap(1),
  winterLines,
);
