import { isoOf } from "../dates";
import { type Answer, column, columns, date, defineFunction, optional, quantity } from "../define";
import { notAvailable, notUsable, Problem } from "../problem";
import { BODY_MASS } from "../shared/limits";
import { median, NINETY_PERCENT } from "../shared/theilSen";
import { weighingsOf, type Weighings } from "../shared/weighings";

/** Days of the period for which the loss is told. */
const PERIOD = 30;

/**
 * Fewer weighings, or fewer days from the first to the last, tell no trend: three weekly ones, each a gram off, put a
 * true loss of 2.8 % anywhere from a gain of 2 % to a loss of 7 %.
 */
const ENOUGH_WEIGHINGS = 5;
const ENOUGH_DAYS = 28;

const tooFew = ({ dates }: Weighings): Problem | undefined => {
  const days = (dates.at(-1) as number) - (dates[0] as number);
  return dates.length < ENOUGH_WEIGHINGS || days < ENOUGH_DAYS
    ? notAvailable(
        `too few to tell: ${dates.length} weighings over ${days} days, a trend needs ${ENOUGH_WEIGHINGS} over ${ENOUGH_DAYS}`,
      )
    : undefined;
};

/**
 * Shares of the mass at the start, or of the first weighing; a gain is negative. So far: the start less the last
 * weighing. Per 30 days: the slope of the Theil-Sen line, the median of the slopes of all pairs of weighings, which one
 * wet or mistyped weighing hardly moves, and Sen's 90 % range of it. At `end`: the start less the line's value on that
 * day; its range is that of the lines with the least and the most slope, and the scatter of the weighings around the line
 * besides. Rows may be in any order; a row whose mass is blank is left out.
 */
export const lossTrend = defineFunction({
  name: "LOSSTREND",
  summary: "Share of body mass lost so far, lost per 30 days, and lost by a date if the trend goes on, with its range.",
  parameters: {
    dates: column(date("Days of the weighings"), { blank: "keep" }),
    masses: column(quantity("gram", "Masses, row by row with the dates; a trend needs five over 28 days", BODY_MASS), {
      blank: "keep",
    }),
    end: date("Day to look ahead to, such as the end of the cold; not before the last weighing"),
    start: optional(quantity("gram", "Mass at the start, of which the shares are", BODY_MASS), "the first weighing"),
  },
  forEach: "animal",
  result: columns(
    { name: "So far", unit: "share", about: "Lost from the start to the last weighing" },
    { name: "Per 30 days", unit: "share", about: "Lost in 30 days by the trend, the likely figure" },
    { name: "At the end", unit: "share", about: "Lost from the start to the end by the trend, the likely figure" },
    { name: "Per 30 days, least", unit: "share", about: "Low end of nine in ten" },
    { name: "Per 30 days, most", unit: "share", about: "High end" },
    { name: "At the end, least", unit: "share", about: "Low end of nine in ten" },
    { name: "At the end, most", unit: "share", about: "High end" },
  ),
  sources: ["theilSen"],
  cautions: ["noLossLimit", "sameScales", "noVet"],
  examples: [
    {
      given: [
        [["2026-11-16"], ["2026-12-01"], ["2026-12-16"], ["2026-12-31"], ["2027-01-15"]],
        [[320], [318], [316.5], [314], [313]],
        "2027-02-08",
      ],
      gives: [[0.021875, 0.0109375, 0.030625, 0.009375, 0.0125, 0.025242, 0.03757]],
      within: 1e-6,
    },
  ],
  calculate({ dates, masses, end, start, named }) {
    const weighings = weighingsOf(dates, masses, named);
    if (weighings instanceof Problem) return weighings;
    const [oldest, newest] = [weighings.dates[0] as number, weighings.dates.at(-1) as number];
    if (end < newest) {
      return notUsable(`end holds ${isoOf(end)}: give the last weighing, ${isoOf(newest)}, or a later day`);
    }
    const [firstMass, lastMass] = [weighings.masses[0] as number, weighings.masses.at(-1) as number];
    const first = start ?? firstMass;
    const soFar = (first - lastMass) / first;
    const few = tooFew(weighings);
    if (few) return [soFar, ...Array<Answer>(6).fill(few)];

    const { line } = weighings;
    const days = weighings.dates.map((day) => day - oldest);
    const heightOf = (slope: number): number =>
      median(weighings.masses.map((mass, i) => mass - slope * (days[i] as number)));
    const lostWith = (slope: number): number => (first - heightOf(slope) - slope * (end - oldest)) / first;
    const likely = lostWith(line.slope);
    if (likely >= 1) {
      return notUsable(`end holds ${isoOf(end)}: give an earlier day, by then the trend would leave no animal`);
    }
    const count = days.length;
    const squares = weighings.masses.reduce(
      (sum, mass, i) => sum + (mass - line.intercept - line.slope * (days[i] as number)) ** 2,
      0,
    );
    // The weighing that stands for the start scatters as the others do.
    const margin = (NINETY_PERCENT * Math.sqrt((squares / (count - 2)) * (1 + 1 / count))) / first;
    const perPeriod = (slope: number): number => (-slope * PERIOD) / first;
    return [
      soFar,
      perPeriod(line.slope),
      likely,
      perPeriod(line.most),
      perPeriod(line.least),
      lostWith(line.most) - margin,
      Math.min(lostWith(line.least) + margin, 1),
    ];
  },
});
