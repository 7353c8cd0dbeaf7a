import type { Value } from "../../define";

/**
 * The words in which keepers write down what became of a meal; the first of each is ours. Common practice, no source. A
 * meal that was brought up was not kept: it counts like a refusal.
 */
export const outcomeWords = {
  taken: ["taken", "ate", "eaten", "yes", "y", "TRUE", "1"],
  refused: ["refused", "not taken", "not eaten", "left", "no", "n", "FALSE", "0"],
  broughtUp: ["regurgitated", "brought up"],
} as const;

export type Outcome = keyof typeof outcomeWords;

const outcomes: ReadonlyMap<string, Outcome> = new Map(
  Object.entries(outcomeWords).flatMap(([outcome, words]) =>
    words.map((word) => [word.toLowerCase(), outcome as Outcome] as const),
  ),
);

/** What a cell says of a meal, whatever its capitals and spaces; undefined where it is none of the words. */
export const outcomeOf = (value: Value): Outcome | undefined =>
  outcomes.get(String(value).trim().toLowerCase().replace(/\s+/g, " "));

/** "taken, ate or eaten; refused or left": for a message. */
export const outcomesInWords = Object.values(outcomeWords)
  .map((words) => `${words.slice(0, -1).join(", ")} or ${words.at(-1)}`)
  .join("; ");
