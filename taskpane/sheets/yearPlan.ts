import { PLAN_ROWS } from "../../functions/shared/plan";
import { block, fixed } from "./shared/address";
import { assemble, EXAMPLE } from "./shared/assemble";
import { cell, fields, heading, labels, monthLabels, spilled, table, text, together } from "./shared/part";
import { home, planYear, STATION_TERMS, upper, winter } from "./shared/scenario";
import { date, LATITUDE, number, whole, validationOf } from "./shared/takes";
import { isoText, rounded } from "./shared/words";

const WEEKS = 52;
const MONTHS_ROW = 7;
const CHART = 27;
const TABLE = 47;
const FIRST = TABLE + 1;

/** The station's figures at the animals' elevation, as the sheet "Native climate" works them out: 6.5 and 4.5 K per km. */
const corrected = (values: readonly number[], rate: number): readonly number[] =>
  values.map((value) => Math.round((value + (rate * (upper.elevation - home.elevation)) / 1000) * 10) / 10);

const highs = block(`B${MONTHS_ROW + 1}`, 12);
const lows = block(`C${MONTHS_ROW + 1}`, 12);
const rains = block(`D${MONTHS_ROW + 1}`, 12);
const plan = "$J$8:$J$13";
const [start, warm, cold, dayLeast, dayMost, nightLeast, nightMost, latitude, interval] = [
  "$J$7",
  "$J$14",
  "$J$15",
  "$J$16",
  "$J$17",
  "$J$18",
  "$J$19",
  "$J$20",
  "$J$21",
] as const;
const [dry, wet] = ["$D$22", "$D$23"] as const;

const dates = block(`A${FIRST}`, WEEKS);
const stages = block(`B${FIRST}`, WEEKS);
const days = block(`E${FIRST}`, WEEKS);
const nights = block(`F${FIRST}`, WEEKS);
const rain = block(`H${FIRST}`, WEEKS);
const meals = block(`J${FIRST}`, WEEKS);
const mealDates = block(`O${FIRST}`, 130);

const ready = (...more: readonly string[]): string => [`COUNTA(${plan})<6`, `${start}=""`, ...more].join(",");
const whenReady = (more: readonly string[], formula: string): string => `=IF(OR(${ready(...more)}),"",${formula})`;

/** A curve held between two limits, and in the winter plan no warmer than its set-point. */
const setPoint = (curve: string, least: string, most: string): string => {
  const held = `IF(${curve}<${least},${least},IF(${curve}>${most},${most},${curve}))`;
  const planned = `VIV.SETPOINT(${dates},${plan},${warm},${cold})`;
  const inPlan = ["Cooling", "Cold", "Warming"].map((stage) => `(${stages}="${stage}")`).join("+");
  return `IF(${inPlan},IF(${planned}<${held},${planned},${held}),${held})`;
};

const inputs = together(
  heading(`A${MONTHS_ROW}`, "At home", "High °C", "Low °C", "Rain mm"),
  monthLabels(`A${MONTHS_ROW + 1}`),
  ...(
    [
      ["B", corrected(upper.high, 6.5), "°C", [-60, 60]],
      ["C", corrected(upper.low, 4.5), "°C", [-60, 60]],
      ["D", upper.rain, "mm", [0, 3000]],
    ] as const
  ).map(([column, values, unit, limits]) =>
    together({
      blocks: [{ at: `${column}${MONTHS_ROW + 1}`, role: "input", rows: values.map((value) => [value]) }],
      formats: [{ range: block(`${column}${MONTHS_ROW + 1}`, 12), format: "tenth" }],
      validation: [validationOf(block(`${column}${MONTHS_ROW + 1}`, 12), number(limits, unit))],
    }),
  ),
  {
    notes: [
      {
        at: `A${MONTHS_ROW}`,
        text: "Highs and lows at the animal's elevation and rain, from the sheet Native climate. A cell may point there: ='Native climate'!B88.",
      },
    ],
  },
  fields(
    "F7",
    [
      { label: "First week begins on", value: planYear.firstWeek, format: "date", takes: date },
      ...PLAN_ROWS.map((words, i) => ({
        label: words,
        value: winter.dates[i] ?? null,
        format: "date" as const,
        takes: date,
      })),
      { label: "Warm set-point, °C", value: winter.warmSetPoint, format: "tenth", takes: number([5, 40], "°C") },
      { label: "Cold set-point, °C", value: winter.coldSetPoint, format: "tenth", takes: number([0, 30], "°C") },
      { label: "By day at least, °C", value: 22, format: "tenth", takes: number([0, 40], "°C") },
      { label: "By day at most, °C", value: 27, format: "tenth", takes: number([0, 40], "°C") },
      { label: "By night at least, °C", value: 12, format: "tenth", takes: number([0, 40], "°C") },
      { label: "By night at most, °C", value: 20, format: "tenth", takes: number([0, 40], "°C") },
      {
        label: "Latitude for day length, °",
        value: planYear.latitude,
        format: "hundredth",
        takes: number(LATITUDE, "°"),
      },
      { label: "Days between meals", value: 7, format: "whole", takes: whole([3, 60], "days") },
    ],
    4,
  ),
  {
    notes: [{ at: "F8", text: "The six dates of the sheet Cooling plan. A cell may point there: ='Cooling plan'!E7." }],
  },
  labels("A22", ["Dry below, mm a week", "Wet above, mm a week", "Cold below, °C"], 3),
  cell("D22", "setting", 10, { format: "whole", takes: number([0, 1000], "mm") }),
  cell("D23", "setting", 30, { format: "whole", takes: number([0, 1000], "mm") }),
  cell("D24", "setting", home.coldThreshold, { format: "tenth", takes: number([-20, 30], "°C") }),
  text(
    "A25",
    "Day and night follow the home's curve within your limits, in the winter plan never above its set-point. Moisture follows the rain there; bedding is never wet in the cold.",
    2,
    10,
  ),
);

/** The months' rain as rain a day. The 0th day of a month is the last of the one before. */
const rainADay = `${rains}/DAY(DATE(YEAR(${start}),ROW(${rains})-${MONTHS_ROW - 1},0))`;
const curve = (months: string): string => `VIV.ONDATE(${months},${dates})`;

const weeks = table({
  at: `A${TABLE}`,
  rows: WEEKS,
  columns: [
    {
      title: "Week of",
      each: (row) => (row === FIRST ? `=IF(${start}="","",${start})` : `=IF(A${row - 1}="","",A${row - 1}+7)`),
      format: "date",
    },
    { title: "Stage", spilled: whenReady([], `VIV.STAGE(${dates},${plan})`) },
    {
      title: "High °C",
      spilled: `=IF(OR(COUNTA(${highs})<12,${start}=""),"",${curve(highs)})`,
      format: "tenth",
      note: "Of the home's curve on that day.",
    },
    {
      title: "Low °C",
      spilled: `=IF(OR(COUNTA(${lows})<12,${start}=""),"",${curve(lows)})`,
      format: "tenth",
      note: "Of the home's curve on that day.",
    },
    {
      title: "Day °C",
      spilled: whenReady(
        [`C${FIRST}=""`, ...[warm, cold, dayLeast, dayMost].map((one) => `${one}=""`)],
        setPoint(block(`C${FIRST}`, WEEKS), dayLeast, dayMost),
      ),
      format: "tenth",
    },
    {
      title: "Night °C",
      spilled: whenReady(
        [`D${FIRST}=""`, ...[warm, cold, nightLeast, nightMost].map((one) => `${one}=""`)],
        setPoint(block(`D${FIRST}`, WEEKS), nightLeast, nightMost),
      ),
      format: "tenth",
    },
    {
      title: "Light h",
      spilled: `=IF(OR(${start}="",${latitude}=""),"",VIV.DAYLENGTH(${latitude},${dates}))`,
      format: "tenth",
      note: "Sunrise to sunset at the latitude given.",
    },
    {
      title: "Rain mm",
      // Negative for a day or two in a desert's curve: not below 0.
      spilled: `=IF(OR(COUNTA(${rains})<12,${start}=""),"",IF(${curve(rainADay)}<0,0,7*${curve(rainADay)}))`,
      format: "whole",
      note: "Of the home's curve, mm a week.",
    },
    {
      title: "Moisture",
      spilled: `=IF(OR(H${FIRST}="",${dry}="",${wet}=""),"",IF(${rain}<${dry},"dry",IF(${rain}>${wet},"wet","moist")))`,
    },
    {
      title: "Meals",
      each: (row) =>
        `=IF(OR($O$${FIRST}="",A${row}=""),"",COUNTIFS(${fixed(mealDates)},">="&A${row},${fixed(mealDates)},"<"&A${row}+7))`,
      format: "whole",
    },
  ],
});

const summary =
  `=IF(OR(E${FIRST}="",F${FIRST}=""),"","By day "&${rounded(`MIN(${days})`)}&" to "&${rounded(`MAX(${days})`)}&" °C, by night "&${rounded(`MIN(${nights})`)}&" to "` +
  `&${rounded(`MAX(${nights})`)}&" °C. Cold from "&${isoText("J10")}&" to "&${isoText("J11")}&", no food from "&${isoText("J8")}&" to "&${isoText("J13")}` +
  `&IF(O${FIRST}="","",". "&SUM(${meals})&" meals in the year")&".")`;

export const yearPlan = assemble(
  {
    key: "yearPlan",
    name: "Year plan",
    sentence: "Fifty-two weeks: set-points, stage, light, moisture and meals.",
    cautions: ["coldKills", "noFoodInTheCold", "smoothCurve", "noVet"],
    sources: ["histospline", "meeus", "practice"],
    widths: [11, 9, 7, 7, 7, 7.5, 7, 7, 8, 11, 1, 13, 12, 1, 11, 9],
    cautionColumns: ["L", "M"],
    example: `${EXAMPLE} invented limits and plan; the station is real, terms at the foot.`,
    foot: [STATION_TERMS],
  },
  inputs,
  {
    charts: [
      {
        title: "The year: day and night set-points, stages and meals",
        area: `A${CHART}:J${CHART + 16}`,
        along: dates,
        axis: "°C",
        series: [
          { draw: "band", name: "Set-points, night to day", low: nights, high: days },
          { draw: "threshold", name: "Cold", values: block(`P${FIRST}`, WEEKS) },
          { draw: "stages", name: "Stage", values: stages },
          { draw: "ticks", name: "Meals", values: meals },
        ],
        summary: `A${CHART + 17}`,
      },
    ],
  },
  text(`A${CHART + 17}`, summary, 2, 10),
  weeks,
  heading(`O${TABLE}`, "Meals on"),
  spilled(
    `O${FIRST}`,
    whenReady([`${interval}=""`], `VIV.MEALDATES(${start},${start}+363,${interval},${plan})`),
    [130, 1],
    "date",
  ),
  table({
    at: `P${TABLE}`,
    rows: WEEKS,
    columns: [{ title: "Cold °C", each: () => '=IF($D$24="","",$D$24)', format: "tenth" }],
  }),
);
