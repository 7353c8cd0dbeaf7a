import { isoOf } from "../../../functions/dates";

/** Days, to the second: what is less is the rounding of a clock. */
const SECOND = 1 / 86_400;
const HOUR = 1 / 24;
/** Clocks go back in autumn, north or south, and forward in spring: by an hour nearly everywhere, on a night. */
const BACK_MONTHS = [9, 10, 11, 3, 4];
const FORWARD_MONTHS = [3, 4, 9, 10, 11];

const monthOf = (moment: number): number => Number(isoOf(moment).slice(5, 7));
const isNight = (moment: number): boolean => moment - Math.floor(moment) <= 4 * HOUR + SECOND;

/** The step that most readings keep. */
const usualStep = (moments: readonly number[]): number => {
  const steps = moments.slice(1).map((moment, i) => moment - (moments[i] as number));
  const forward = steps.filter((step) => step > SECOND).sort((a, b) => a - b);
  return forward[forward.length >> 1] ?? 0;
};

/**
 * Where a logger's clock seems to have been changed, in words: an hour that comes twice in autumn, an hour that is missing
 * in spring. Nothing is moved: a file says nothing of a clock's zone, and an hour may be missing for other reasons.
 */
export const clockChanges = (moments: readonly number[]): readonly string[] => {
  const step = usualStep(moments);
  if (step <= 0 || step > HOUR + SECOND) return [];
  return moments.flatMap((moment, i) => {
    const before = moments[i - 1];
    if (before === undefined) return [];
    const moved = moment - before - step;
    const day = isoOf(Math.floor(moment));
    if (Math.abs(moved + HOUR) < step / 2 && isNight(moment) && BACK_MONTHS.includes(monthOf(moment)))
      return [
        `${day}: an hour comes twice (back from ${isoOf(before).slice(11, 16) || "00:00"} to ${isoOf(moment).slice(11, 16) || "00:00"}), as when clocks go back in autumn. All readings are kept; that day counts an hour more`,
      ];
    if (Math.abs(moved - HOUR) < step / 2 && isNight(before) && FORWARD_MONTHS.includes(monthOf(moment)))
      return [
        `${day}: an hour is missing (from ${isoOf(before).slice(11, 16) || "00:00"} to ${isoOf(moment).slice(11, 16) || "00:00"}), as when clocks go forward in spring. Nothing was filled in`,
      ];
    return [];
  });
};
