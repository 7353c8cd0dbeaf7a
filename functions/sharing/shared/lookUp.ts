import { PREFIX, type AnyDefinition } from "../../define";
import { notAvailable, type Problem } from "../../problem";
import { nearest } from "../../shared/nearest";

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
  const names = nearest(
    list.map((definition) => definition.name),
    name,
    NEAREST,
  );
  const shown = given.length > 40 ? `${given.slice(0, 40)}…` : given;
  return notAvailable(`function holds '${shown}': the nearest names are ${names.join(", ")}`);
};

/**
 * These functions speak of all the others, and stand in the same list: they are handed the list when it is complete,
 * so that no file of a function imports the catalogue which imports it.
 */
export type Everything = () => readonly AnyDefinition[];
