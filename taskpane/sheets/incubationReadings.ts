import { EGGS_DEADLY, EGGS_LEAST, EGGS_MOST } from "../../functions/breeding/shared/development";
import { f, once } from "./shared/formula";
import { log } from "./shared/log";
import { named } from "./shared/names";
import { picture } from "./shared/picture";
import { begins, over, saysSomething, under } from "./shared/rules";
import { words } from "./shared/running";
import { clutch } from "./shared/scenario";
import { figure } from "./shared/systems";
import { date, HUMIDITY, number } from "./shared/takes";
import { isoText, rounded } from "./shared/words";

/** A reading a day for as long as cool eggs take: more than the sixty rows of other logs. */
const ROWS = 90;
const threshold = named("own.threshold");

/** Highs and lows of the incubator in the first weeks, °C: invented. */
const swings: readonly (readonly [high: number, low: number])[] = [
  [26.4, 25.5],
  [26.5, 25.6],
  [26.3, 25.7],
  [26.6, 25.4],
  [26.8, 25.6],
  [27.9, 25.8],
  [26.9, 25.5],
  [26.4, 25.3],
  [26.3, 25.6],
  [26.5, 25.4],
  [31.6, 26.0],
  [27.4, 25.7],
  [26.4, 25.5],
  [26.5, 25.6],
  [26.2, 25.3],
  [26.4, 25.6],
];

/** Every third day from the second on; the humidity each fourth time. */
const readings = swings.map(([high, low], i) => ({
  on: clutch.laid + 1 + 3 * i,
  high,
  low,
  humidity: i % 4 === 0 ? 90 : null,
}));

const deadly = `"Deadly over ${EGGS_DEADLY} °C: ask a reptile vet"`;
const tooHigh = `"Over ${EGGS_MOST} °C: look at the incubator"`;
const tooLow = `"Under ${EGGS_LEAST} °C: look at the incubator"`;
/** What the incubator showed, day by day. */
export const daily = log(
  "log",
  ROWS,
  {
    on: {
      title: "Read on",
      input: readings.map(({ on }) => on),
      format: "date",
      takes: date,
      note: "Readings of the one clutch named at the top.",
    },
    high: {
      title: "High",
      unit: "°C",
      input: readings.map(({ high }) => high),
      format: "tenth",
      takes: number([-10, 60]),
      note: "Of the eggs, not of the room.",
      rules: [over(figure(EGGS_DEADLY, "°C"), "stop"), over(figure(EGGS_MOST, "°C"), "care")],
    },
    low: {
      title: "Low",
      unit: "°C",
      input: readings.map(({ low }) => low),
      format: "tenth",
      takes: number([-10, 60]),
      rules: [under(figure(EGGS_LEAST, "°C"), "cold")],
    },
    mid: {
      title: "Mid",
      unit: "°C",
      each: ({ on, high, low }) => `=IF(OR(${on}="",${high}="",${low}=""),"",VIV.MEDIAN24(${high},${low}))`,
      format: "tenth",
      note: "Half-way between high and low: in an incubator close to the mean.",
    },
    warmth: {
      title: "Warmth",
      measures: "degree-days",
      each: ({ high, low }) => once`VIV.DEGREEDAYS(${high},${low},${threshold})`,
      format: "tenth",
      note: "Degree-days of that day above the temperature without growth.",
    },
    humidity: {
      title: "Humidity",
      unit: "%",
      input: readings.map(({ humidity }) => humidity),
      format: "whole",
      takes: number(HUMIDITY),
    },
    standsOut: {
      title: "What stands out",
      wide: 3,
      each: ({ on, high, low }) =>
        `=IF(N(${high})>${figure(EGGS_DEADLY, "°C")},${deadly},IF(N(${high})>${figure(EGGS_MOST, "°C")},${tooHigh},IF(AND(${low}<>"",N(${low})<${figure(EGGS_LEAST, "°C")}),${tooLow},IF(AND(COUNT(${on},${high},${low})>0,COUNT(${on},${high},${low})<3),"Not counted: day, high or low is blank",""))))`,
      rules: [begins("Deadly", "stop"), saysSomething("care")],
    },
    least: { title: "Least °C", each: ({ on }) => once`IF(${on}="","",${figure(EGGS_LEAST, "°C")})`, format: "tenth" },
    most: { title: "Most °C", each: ({ on }) => once`IF(${on}="","",${figure(EGGS_MOST, "°C")})`, format: "tenth" },
  },
  { grows: true },
);

const { on, high, low } = daily;
const said = words(
  "temperatures",
  [2, 11],
  f`IF(OR(COUNT(${on})=0,COUNT(${high})=0,COUNT(${low})=0),"",COUNT(${on})&" readings from "&${isoText(`MIN(${on})`)}&" to "&${isoText(`MAX(${on})`)}&": "&${rounded(`MIN(${low})`)}&" to "&${rounded(`MAX(${high})`)}&" °C. Above ${EGGS_MOST} °C: "&COUNTIF(${high},">${figure(EGGS_MOST, "°C")}")&" of them; below ${EGGS_LEAST} °C: "&COUNTIF(${low},"<${figure(EGGS_LEAST, "°C")}")&".")`,
);
/** What the eggs had, between what they take well. */
export const temperatures = [
  picture([12, 11], {
    title: "Temperature of the eggs",
    along: `${on}`,
    axis: "°C",
    series: [
      { draw: "band", name: "Low to high", low: `${low}`, high: `${high}` },
      { draw: "threshold", name: `Most, ${EGGS_MOST} °C`, values: `${daily.most}` },
      { draw: "threshold", name: `Least, ${EGGS_LEAST} °C`, values: `${daily.least}` },
    ],
    summary: `${said.said}`,
  }),
  said,
] as const;
