import { outcomeWords, type Outcome } from "../../../functions/feeding/shared/outcomes";
import { oneOf } from "./takes";

/** What a log takes for the outcome of a meal: our own words first, then all others that keepers write. */
const all = Object.values(outcomeWords);
const others = all.flatMap(([, ...rest]) => rest);
export const anyOutcome = {
  ...oneOf(...all.map(([first]) => first), ...others),
  message: `Choose ${all.map(([first]) => first).join(", ")}, or write another common word for it, such as ate, left or brought up; or leave it blank.`,
};

/** The same where the plain answers are yes and no. */
export const yesOrNo = {
  ...oneOf("yes", "no", ...all.flat().filter((word) => word !== "yes" && word !== "no")),
  message: "Choose yes or no, or write taken, refused or brought up; or leave it blank.",
};

/** A condition, native: the cell holds one of the words for that outcome. */
export const isOutcome = (cell: string, which: Outcome): string =>
  `OR(${outcomeWords[which].map((word) => `${cell}="${word}"`).join(",")})`;

/** A count, native: how many cells of the range hold one of the words for that outcome. */
export const countOfOutcome = (range: string, which: Outcome): string =>
  outcomeWords[which].map((word) => `COUNTIF(${range},"${word}")`).join("+");
