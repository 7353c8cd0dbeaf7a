import { EGGS_LEAST, EGGS_MOST } from "../../functions/breeding/shared/development";
import { once } from "./shared/formula";
import { log } from "./shared/log";
import { named } from "./shared/names";
import { saysSomething } from "./shared/rules";
import { clutch } from "./shared/scenario";
import { figure } from "./shared/systems";
import { date, HUMIDITY, number } from "./shared/takes";

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

const tooHigh = `"Over ${EGGS_MOST} °C: look at the incubator"`;
const tooLow = `"Under ${EGGS_LEAST} °C: look at the incubator"`;
/** What the incubator showed, day by day. */
export const daily = log("log", ROWS, {
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
  },
  low: { title: "Low", input: readings.map(({ low }) => low), format: "tenth", takes: number([-10, 60], "°C") },
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
      `=IF(OR(${on}="",${high}="",${low}=""),"",IF(${high}>${figure(EGGS_MOST, "°C")},${tooHigh},IF(${low}<${figure(EGGS_LEAST, "°C")},${tooLow},"")))`,
    rules: [saysSomething("care")],
  },
});
