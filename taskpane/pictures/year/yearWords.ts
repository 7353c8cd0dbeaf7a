import {
  coldDays,
  degreesOf,
  rainFigure,
  rainUnitOf,
  firstMonthOf,
  isFigure,
  MONTHS,
  STARTS,
  stageRuns,
  DAYS,
  type DrawnYear,
} from "./drawnYear";

const tenth = (value: number): string => String(Number(value.toFixed(1)));

/** A day of the round year as "16 Nov". */
const dayWords = (day: number): string => {
  const inYear = ((day % DAYS) + DAYS) % DAYS;
  const month = STARTS.findLastIndex((start) => start <= inYear);
  return `${inYear - (STARTS[month] as number) + 1} ${MONTHS[month]}`;
};

/** What is counted below the cold; the days of a curve through means are not those of any one year. */
export const countedWords = (year: DrawnYear): string =>
  `days with ${year.counted ?? ""} below ${tenth(year.cold)} ${degreesOf(year)} on average`;

/** What a picture of the year shows, in words: for its caption, and for a screen reader. */
export const yearWords = (year: DrawnYear): string => {
  const lines = year.lines.flatMap(({ name, likely }) => {
    const figures = likely.filter(isFigure);
    return figures.length === 0
      ? []
      : [`${name} from ${tenth(Math.min(...figures))} to ${tenth(Math.max(...figures))} ${degreesOf(year)}`];
  });
  const days = coldDays(year);
  const rain = year.rain.reduce((sum, mm) => sum + mm, 0);
  const stages = stageRuns(year.stages, STARTS[firstMonthOf(year)] as number);
  // What begins and ends with the picture is one stage, cut in two.
  const [head, tail] = [stages[0], stages.at(-1)];
  const whole =
    head && tail && head !== tail && head.stage === tail.stage && tail.to === head.from + DAYS
      ? [...stages.slice(1, -1), { ...tail, to: head.to + DAYS }]
      : stages;
  // A day of the last meal is the first of clearing, that of the first meal feeds again.
  const fed = whole.find(({ stage }) => stage === "Feeding");
  const meals = fed && whole.length > 1 ? `Last meal on ${dayWords(fed.to)}, first meal on ${dayWords(fed.from)}.` : "";
  return [
    lines.length === 0
      ? ""
      : `${lines.join(", ")} over the year${year.counted === undefined ? "" : ", on average"}.`.replace(/^./, (one) =>
          one.toUpperCase(),
        ),
    days === undefined ? "" : `${days} ${countedWords(year)}; single days and nights differ.`,
    year.rain.length > 0 && isFigure(rain)
      ? `${rainFigure(rain, year)} ${rainUnitOf(year)} of rain and melted snow a year.`
      : "",
    whole.length === 0
      ? ""
      : `Stages: ${whole.map(({ stage, from, to }) => `${stage} from ${dayWords(from)} to ${dayWords(to - 1)}`).join(", ")}.`,
    meals,
  ]
    .filter((part) => part !== "")
    .join(" ");
};
