import { PREFIX, type AnyDefinition } from "../../define";
import { notAvailable, type Problem } from "../../problem";

/** How many letters must be put in, taken out or changed to make one word of the other (Levenshtein). */
export const editDistance = (one: string, other: string): number => {
  let before = Array.from({ length: other.length + 1 }, (_, j) => j);
  for (let i = 1; i <= one.length; i++) {
    const line = [i];
    for (let j = 1; j <= other.length; j++) {
      const changed = (before[j - 1] as number) + (one[i - 1] === other[j - 1] ? 0 : 1);
      line.push(Math.min(changed, (before[j] as number) + 1, (line[j - 1] as number) + 1));
    }
    before = line;
  }
  return before[other.length] as number;
};

const NEAREST = 3;

/** The function that a keeper means by "LAPSE", "lapse", "VIV.LAPSE" or "=VIV.LAPSE(A1,300,1400)". */
export const lookUp = (list: readonly AnyDefinition[], given: string): AnyDefinition | Problem => {
  const name = given
    .trim()
    .toUpperCase()
    .replace(/^[=@\s]+/, "")
    .replace(new RegExp(`^${PREFIX}\\.`), "")
    .replace(/\s*\(.*/s, "");
  const found = list.find((definition) => definition.name === name);
  if (found) return found;
  const nearest = list
    .map((definition) => ({ name: definition.name, distance: editDistance(name, definition.name) }))
    .sort((one, other) => one.distance - other.distance)
    .slice(0, NEAREST)
    .map((one) => one.name);
  const shown = given.length > 40 ? `${given.slice(0, 40)}…` : given;
  return notAvailable(`function holds '${shown}': the nearest names are ${nearest.join(", ")}`);
};

/**
 * These functions speak of all the others, and stand in the same list: they are handed the list when it is complete,
 * so that no file of a function imports the catalogue which imports it.
 */
export type Everything = () => readonly AnyDefinition[];
