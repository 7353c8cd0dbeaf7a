import { isoOf } from "../dates";
import { notUsable, type Problem } from "../problem";
import type { Unit } from "../units";
import { figures } from "./figure";

/**
 * Figures of one day that no animal has: the greatest more than half above the least. A meal or a clutch seldom makes so
 * much. Common practice, no source.
 */
const FAR_APART = 1.5;
/** It takes so many days of them, with half of all figures on them: a female may lay every year, and keys slip. */
const FEWEST_DAYS = 2;

/** The problem with figures, in the order of their days, that can hardly be one animal's. */
export const severalAnimals = (
  dates: readonly number[],
  values: readonly number[],
  valuesName: string,
  unit: Unit,
): Problem | undefined => {
  let [days, rows] = [0, 0];
  let example: readonly [day: number, least: number, greatest: number] | undefined;
  for (let first = 0; first < dates.length;) {
    const day = dates[first] as number;
    let [least, greatest] = [Infinity, 0];
    let next = first;
    for (; dates[next] === day; next++) {
      least = Math.min(least, values[next] as number);
      greatest = Math.max(greatest, values[next] as number);
    }
    if (least > 0 && greatest > FAR_APART * least) {
      days++;
      rows += next - first;
      example ??= [day, least, greatest];
    }
    first = next;
  }
  if (!example || days < FEWEST_DAYS || rows * 2 < dates.length) return undefined;
  const [day, least, greatest] = example;
  const [light, heavy] = figures([least, greatest], unit);
  return notUsable(
    `${valuesName} holds ${light} and ${heavy} on ${isoOf(day)}, and more such days: are these several animals? Give animals and animal`,
  );
};
