import { coolSpell } from "../../../functions/climate/coolSpell";
import { lapse } from "../../../functions/climate/lapse";
import { median24 } from "../../../functions/climate/median24";
import { call } from "../../call";
import { median } from "../../statistics";
import { rows as pairs } from "../../tables/stationPairs.json";

/**
 * The keeper's whole way, on open records: highs and lows of the lower station, corrected each at its own rate, their
 * mid-points, the curve through them, and the cool spell that the winter plan rests on - against the same from the upper
 * station's own records. CLIMAT reports 2004-2020 (Datenbasis: Deutscher Wetterdienst, Einzelwerte gemittelt).
 */
const THRESHOLD = 8; // °C, about where a hibernaculum begins
const YEAR = 2026;

const spellOf = (highs: readonly unknown[], lows: readonly unknown[]): readonly number[] | undefined => {
  const spell = call(coolSpell, call(median24, [highs], [lows]), THRESHOLD, YEAR)[0] as number[];
  return typeof spell[0] === "number" ? spell : undefined;
};

const compared = pairs.map((pair) => {
  const up = (months: readonly number[], rate: string): readonly unknown[] =>
    call(lapse, [months], pair.lowElevation, pair.highElevation, rate)[0] ?? [];
  return {
    pair,
    observed: spellOf(pair.highHighs, pair.highLows),
    corrected: spellOf(up(pair.lowHighs, "high"), up(pair.lowLows, "low")),
    bare: spellOf(pair.lowHighs, pair.lowLows),
  };
});

const isWholeYear = (spell: readonly number[] | undefined): boolean =>
  spell !== undefined && (spell[2] as number) >= 365;
/** Where the upper station has a cool spell with a beginning; high summits are below the threshold all the year. */
const seasonal = compared.filter(({ observed }) => observed !== undefined && !isWholeYear(observed));
const daysOff = (one: readonly number[] | undefined, other: readonly number[] | undefined): number =>
  one && other ? Math.abs((one[2] as number) - (other[2] as number)) : 365;

test("eight pairs have a cool spell, three summits are cool all the year, three warm places never", () => {
  const never = compared.filter(({ observed }) => observed === undefined);
  const always = compared.filter(({ observed }) => isWholeYear(observed));
  expect([seasonal.length, always.length, never.length]).toEqual([8, 3, 3]);
  for (const { corrected } of never) expect(corrected).toBeUndefined();
  for (const { corrected } of always) expect(corrected?.[2]).toBeGreaterThan(240);
});

const off = seasonal.map(({ observed, corrected }) => daysOff(observed, corrected));
const offBare = seasonal.map(({ observed, bare }) => daysOff(observed, bare));

// A correction that is worth making leaves less than half of the bare record's error. In days no source says what to
// expect; a month either way is what 2 K are worth where the curve moves 2 K in ten days to a month.
test(`length of the cool spell: half of the pairs within ${median(off)} days, ${median(offBare)} uncorrected`, () => {
  expect(median(off)).toBeLessThan(median(offBare) / 2);
  expect(median(off)).toBeLessThan(31);
});

test.each(
  seasonal.map(({ pair, observed, corrected }) => [pair.low, pair.high, daysOff(observed, corrected)] as const),
)("from %s to %s: %i days off in length", (_, __, days) => expect(days).toBeLessThan(120));
