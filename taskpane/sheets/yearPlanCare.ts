import { GUT_SLOW, GUT_STILL, NIGHT_SLOW, NIGHT_STILL } from "../../functions/rules/limits";
import { f } from "./shared/formula";
import { log } from "./shared/log";
import { Column, namedColumn, type Cell } from "./shared/names";
import { begins } from "./shared/rules";
import { figure } from "./shared/systems";
import { datesIn, hasPlan } from "./shared/winterPlan";
import { isoText } from "./shared/words";
import { year } from "./yearPlanInputs";

/** What the stage asks for in each week of the Year plan. */

export const WEEKS = 52;
const plan = datesIn(year);
const [week, meals, day, night] = ["week", "meals", "day", "night"].map((one) => namedColumn(`weeks.${one}`)) as [
  Column,
  Column,
  Column,
  Column,
];

/** Empty until all six dates, the first week and what else is named are there. */
export const whenReady = (more: readonly (Cell | Column)[], formula: string): string => {
  const blank = [year.start, ...more].map((one) => `${one instanceof Column ? one.at(1) : one}=""`);
  return f`IF(OR(NOT(${hasPlan(plan)}),${blank.join(",")}),"",${formula})`;
};
/** What the stage asks for, week by week: every sheet has it from the same place. */
export const asked = log(
  "care",
  WEEKS,
  {
    food: { title: "Food", spilled: whenReady([], `VIV.STAGECARE(${week},${plan})`) },
    light: { title: "Light", covered: true },
    moisture: { title: "Moisture", covered: true },
    nights: { title: "Nights", covered: true },
    soaking: { title: "Soaking", covered: true },
    share: { title: "Of day length", covered: true, format: "percent" },
  },
  { titleLines: 2 },
);
/** Where the fast begins or ends within the week: by its first day alone it would be fed on, or not yet. */
const inTheWeek = (first: Cell, otherwise: string): string => {
  const falls = (day: Cell): string => `AND(${day}>${first},${day}<${first}+7)`;
  const { lastMeal, firstMeal } = year;
  return `IF(${falls(lastMeal)},"Last "&${isoText(`${lastMeal}`)}&", then none",IF(${falls(firstMeal)},"None before "&${isoText(`${firstMeal}`)},${otherwise}))`;
};
/** Beside the weeks: what is fed, and where the nights or the days are too cool for it. */
export const food = log(
  "food",
  WEEKS,
  {
    words: {
      title: "Food",
      wide: 2,
      each: ({ words: { row } }) => {
        const below = (cell: Cell, celsius: number): string =>
          `IF(ISNUMBER(${cell}),${cell}<${figure(celsius, "°C")},FALSE)`;
        const fedBelow = (byNight: number, byDay: number): string =>
          `AND(N(${meals.at(row)})>0,OR(${below(night.at(row), byNight)},${below(day.at(row), byDay)}))`;
        const [nights, days] = [below(night.at(row), NIGHT_STILL), below(night.at(row), NIGHT_SLOW)].map(
          (isNight) => `IF(${isNight},"nights","days")`,
        );
        const small = `IF(${fedBelow(NIGHT_SLOW, GUT_SLOW)},"Cool "&${days}&": small, or warmer",${asked.food.at(row)})`;
        return f`IF(${asked.food.at(row)}="","",IF(${fedBelow(NIGHT_STILL, GUT_STILL)},"No meal: the "&${nights}&" are cold",${inTheWeek(week.at(row), small)}))`;
      },
      note: `Where nights are below ${NIGHT_SLOW} °C, or days below ${GUT_SLOW} °C, the gut works slowly: a smaller meal, or more warmth after it. Nights below ${NIGHT_STILL} °C or days below ${GUT_STILL} °C: it hardly works, no meal. Practice.`,
      rules: [
        begins("No meal", "stop"),
        begins("Cool", "care"),
        { when: (own) => `=${own}="none"`, look: "cold" },
        begins("Last", "cold"),
        begins("None", "cold"),
      ],
    },
  },
  { titleLines: 2 },
);
