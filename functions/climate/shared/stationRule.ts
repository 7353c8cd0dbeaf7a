/**
 * How a station's gap and distance weigh against each other: a rule of thumb, common practice without a source. 100 m
 * of gap are worth about half a kelvin that a correction only guesses at, and count as much as 10 km of distance.
 */
const KM_PER_METRE = 10 / 100;

/** Rules of thumb, m and km. Within 80 km lay the pairs on which the corrections were measured. */
const SMALL_GAP = 300;
const LARGE_GAP = 1000;
const NEAR = 80;
const FAR = 250;

/** The smaller, the better: kilometres, the gap counted as kilometres. */
export const stationScore = (gap: number, km: number): number => Math.abs(gap) * KM_PER_METRE + km;

const elevationWords = (gap: number): string => {
  const side = gap < 0 ? "below" : "above";
  if (gap === 0) return "In the band";
  if (Math.abs(gap) <= SMALL_GAP) return `A little ${side}: correct it`;
  return Math.abs(gap) <= LARGE_GAP
    ? `Well ${side}: correct it and show the band`
    : `Far ${side}: shows the season, not the degrees`;
};
const distanceWords = (km: number): string =>
  km <= NEAR ? "near" : km <= FAR ? "some way off, compare slope and coast" : "far off, may be another climate";

/** "A little below: correct it; near." */
export const stationVerdict = (gap: number, km: number): string => `${elevationWords(gap)}; ${distanceWords(km)}`;
