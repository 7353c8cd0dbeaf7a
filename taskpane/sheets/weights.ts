import { f } from "./shared/formula";
import { page } from "./shared/page";
import { picture } from "./shared/picture";
import { gap } from "./shared/region";
import { words } from "./shared/running";
import { fastWords } from "./shared/winterPlan";
import { isoText, rounded } from "./shared/words";
import { animal, plan, weekly } from "./weightsLog";
import { now, picked } from "./weightsPicked";
import { sideBySide } from "./weightsSideBySide";

const { label, window } = animal;
const { count, trend } = now;
const fast = words("fast", [3, 3], fastWords(plan.dates));

const trendWords = `IF(${trend}="","","; "&${rounded(`${trend}`, 1, "g")}&" g a week in the last "&${window}&" days")`;
const summary = words(
  "summary",
  [2, 8],
  f`IF(OR(${label}="",${count}=""),"",IF(${count}=0,"No weighing of "&${label}&" in the log: the name is written there as here.",${label}&": "&${count}&" weighings from "&${isoText(`${picked.date.at(1)}`)}&" to "&${isoText(`${now.on}`)}&", "&${rounded(`MIN(${picked.mass})`, 1, "g")}&" to "&${rounded(`MAX(${picked.mass})`, 1, "g")}&" g, "&${rounded(`${now.mass}`, 1, "g")}&" g at the last"&${trendWords}&"."))`,
);
const chart = picture([14, 5], {
  title: "Mass, and the winter",
  along: `${picked.date}`,
  axis: "g",
  series: [
    { draw: "line", name: "Mass", values: `${picked.mass}` },
    { draw: "stages", name: "Stage", values: `${picked.stage}` },
  ],
  summary: `${summary.said}`,
});

export const weights = page(
  {
    key: "weights",
    name: "Weights",
    sentence: "Mass and length of each animal over time; below, animals side by side.",
    cautions: ["sameScales", "narrowLengths", "noVet"],
    sources: ["theilSen", "peigGreen", "practice", "definition"],
    widths: [11.5, 10, 11.5, 9, 7.8, 7.8, 7.8, 17.2, 1, 15.5, 11.5],
    inView: [weekly],
    cautionColumns: ["J", "K"],
  },
  summary,
  gap(1),
  { A: [animal, plan, fast], D: [chart], J: [now] },
  gap(1),
  weekly,
  gap(2),
  sideBySide,
  gap(2),
  picked,
);
