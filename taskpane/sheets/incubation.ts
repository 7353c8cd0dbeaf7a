import { EGGS_LEAST, EGGS_MOST } from "../../functions/breeding/shared/development";
import { block, fixed } from "./shared/address";
import { assemble } from "./shared/assemble";
import { fields, heading, table, text } from "./shared/part";
import { clutch, day } from "./shared/scenario";
import { date, HUMIDITY, number, whole } from "./shared/takes";
import { blanksKept, isoText, once } from "./shared/words";

const CLUTCHES = 18;
const CLUTCH_ROWS = 10;
const READINGS = CLUTCHES + CLUTCH_ROWS + 3;
const FIRST = READINGS + 1;
/** A reading a day for as long as cool eggs take: more than the sixty rows of other logs. */
const ROWS = 90;

const [base, baseTemperature, threshold, soonest, latest] = ["$C$8", "$C$9", "$C$10", "$C$11", "$C$12"] as const;
const chosen = "$F$8";
const laidOn = "$F$9";

const clutchColumn = (letter: string): string => fixed(block(`${letter}${CLUTCHES + 1}`, CLUTCH_ROWS));
const column = (letter: string): string => fixed(block(`${letter}${FIRST}`, ROWS));
const [dates, means] = [column("A"), column("D")] as const;

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
/** Every third day from the second on. */
const readingDays = swings.map((_, i) => clutch.laid + 1 + 3 * i);

/** Of the chosen clutch; an error where it is not in the table, which `laidOn` says first. */
const hatchedOn = `INDEX(${clutchColumn("I")},MATCH(${chosen},${clutchColumn("A")},0))`;

const forecast = (part: 1 | 2 | 3): string =>
  `=IF(OR(${laidOn}="",COUNT(${means})=0,${base}="",${baseTemperature}="",${threshold}=""),"",` +
  `INDEX(VIV.HATCHFORECAST(${laidOn},IF(${means}="","",${dates}),${blanksKept(means)},${base},${baseTemperature},${threshold}),1,${part}))`;

/** The practice range, longer or shorter where the eggs are held cooler or warmer than the keeper's own figure. */
const expected = (row: number, part: 1 | 2): string => {
  const scaled = (days: string): string => `ROUND(${days}*E${row}/${base},0)`;
  return once(
    [`B${row}`, `E${row}`, base, soonest, latest],
    `INDEX(VIV.HATCHDATES(B${row},${scaled(soonest)},${scaled(latest)}),1,${part})`,
  );
};

export const incubation = assemble(
  {
    key: "incubation",
    name: "Incubation",
    sentence: "Clutches, when they should hatch, and a forecast.",
    cautions: ["hatchingSuccess", "eggSpecies", "lateEggs", "noVet"],
    sources: ["duJi", "eggThresholds", "singleSine", "practice"],
    widths: [13.5, 11.5, 7, 8, 8, 11.5, 11.5, 11.5, 11.5, 8, 8],
    cautionColumns: ["H", "K"],
  },
  heading("A7", "Your own figures", null, null),
  fields(
    "A8",
    [
      {
        label: "Days that your eggs took",
        value: clutch.baseDays,
        format: "whole",
        takes: whole([20, 200], "days"),
        note: "Of your own clutches of this kind, held steady.",
      },
      { label: "at, °C", value: clutch.incubator, format: "tenth", takes: number([EGGS_LEAST, EGGS_MOST], "°C") },
      {
        label: "No growth below, °C",
        value: 14,
        role: "setting",
        format: "tenth",
        takes: number([5, 20], "°C"),
        note: "14 °C was fitted to Asian ratsnakes.",
      },
      {
        label: "Soonest, days",
        value: 55,
        role: "setting",
        format: "whole",
        takes: whole([20, 200], "days"),
        note: "At the temperature above; 55 to 65 days at 26 °C is practice, no source.",
      },
      { label: "Latest, days", value: 65, role: "setting", format: "whole", takes: whole([20, 200], "days") },
    ],
    2,
  ),
  heading("D7", "Forecast, one clutch", null, null),
  fields(
    "D8",
    [
      { label: "Clutch", value: clutch.label, note: "As it is called in the table: its readings stand at the bottom." },
      {
        label: "Laid",
        value: `=IF(${chosen}="","",IFNA(IF(INDEX(${clutchColumn("B")},MATCH(${chosen},${clutchColumn("A")},0))="","",INDEX(${clutchColumn("B")},MATCH(${chosen},${clutchColumn("A")},0))),"not in the table"))`,
        format: "date",
      },
      { label: "Developed", value: forecast(1), format: "percent", note: "By the end of the last day read." },
      { label: "Hatching", value: forecast(2), format: "date", note: "If the mean of the last seven days goes on." },
      {
        label: "Days outside",
        value: forecast(3),
        format: "whole",
        note: `Days with a mean outside ${EGGS_LEAST}-${EGGS_MOST} °C.`,
      },
      { label: "Read until", value: `=IF(COUNT(${means})=0,"",MAX(${dates}))`, format: "date" },
    ],
    2,
  ),
  text(
    "A15",
    `=IF(OR(${laidOn}="",F10="",F11=""),"",${chosen}&": "&ROUND(100*F10,0)&" % developed when last read. "&IF(N(${hatchedOn})>0,"Hatched on "&${isoText(hatchedOn)}&".",` +
      `IF(F10>=1,"Should have hatched by now: wait, never open an egg.","Read on, every eighth day at least.")))`,
    2,
    6,
  ),
  table({
    at: `A${CLUTCHES}`,
    rows: CLUTCH_ROWS,
    columns: [
      { title: "Clutch", input: ["Juniper 2025", clutch.label] },
      { title: "Laid", input: [day("2025-06-24"), clutch.laid], format: "date", takes: date },
      { title: "Eggs", input: [6, clutch.eggs], format: "whole", takes: whole([1, 100], "eggs") },
      {
        title: "Held °C",
        input: [clutch.incubator, clutch.incubator],
        format: "tenth",
        takes: number([EGGS_LEAST, EGGS_MOST], "°C"),
      },
      {
        title: "Days",
        each: (row) =>
          once(
            [`D${row}`, base, baseTemperature, threshold],
            `VIV.INCUBATIONDAYS(D${row},${base},${baseTemperature},${threshold})`,
          ),
        format: "tenth",
        note: "At that temperature, from your own figure.",
      },
      { title: "Expected", each: (row) => once([`B${row}`, `E${row}`], `B${row}+ROUND(E${row},0)`), format: "date" },
      { title: "Soonest", each: (row) => expected(row, 1), format: "date" },
      { title: "Latest", each: (row) => expected(row, 2), format: "date" },
      { title: "Hatched on", input: [day("2025-08-23"), clutch.hatched], format: "date", takes: date },
      { title: "Hatched", input: [5, clutch.hatchlings], format: "whole", takes: whole([0, 100]) },
      { title: "Share", each: (row) => once([`C${row}`, `J${row}`], `J${row}/C${row}`), format: "percent" },
    ],
  }),
  table({
    at: `A${READINGS}`,
    rows: ROWS,
    columns: [
      {
        title: "Read on",
        input: readingDays,
        format: "date",
        takes: date,
        note: "Readings of the one clutch named at the top.",
      },
      {
        title: "High °C",
        input: swings.map(([high]) => high),
        format: "tenth",
        takes: number([-10, 60], "°C"),
        note: "Of the eggs, not of the room.",
      },
      { title: "Low", input: swings.map(([, low]) => low), format: "tenth", takes: number([-10, 60], "°C") },
      {
        title: "Mid °C",
        each: (row) => once([`A${row}`, `B${row}`, `C${row}`], `VIV.MEDIAN24(B${row},C${row})`),
        format: "tenth",
        note: "Half-way between high and low: in an incubator close to the mean.",
      },
      {
        title: "Warmth",
        each: (row) => once([`B${row}`, `C${row}`, threshold], `VIV.DEGREEDAYS(B${row},C${row},${threshold})`),
        format: "tenth",
        note: "Degree-days of that day above the temperature without growth.",
      },
      {
        title: "Humidity %",
        input: swings.map((_, i) => (i % 4 === 0 ? 90 : null)),
        format: "whole",
        takes: number(HUMIDITY, "%"),
      },
      {
        title: "What stands out",
        each: (row) =>
          `=IF(OR(A${row}="",B${row}="",C${row}=""),"",IF(B${row}>${EGGS_MOST},"Over ${EGGS_MOST} °C: look at the incubator",IF(C${row}<${EGGS_LEAST},"Under ${EGGS_LEAST} °C: look at the incubator","")))`,
      },
    ],
  }),
  heading(`H${READINGS}`, null, null),
  { rules: [{ range: block(`G${FIRST}`, ROWS, 3), when: `=LEN($G${FIRST})>0`, look: "care" }] },
);
