import { TEMPERATURE } from "../../functions/shared/limits";
import { choices, OWN, place, SOURCES, stations, town } from "./nativeClimatePlaces";
import { eachLine, f } from "./shared/formula";
import { log, type LogColumn } from "./shared/log";
import { namedColumn, type Cell } from "./shared/names";
import { MONTHS } from "./shared/part";
import { under } from "./shared/rules";
import { metric } from "./shared/systems";
import { number } from "./shared/takes";

const month: LogColumn = { title: "Month", label: MONTHS };
const [first, second, home] = [stations.name.at(1), stations.name.at(2), town.name.at(1)];

/** The whole estimate is one formula: every month rests on the same stations. */
export const here = log(
  "here",
  12,
  {
    month,
    highLeast: {
      title: "High least",
      measures: "°C",
      spilled: f`IF(OR(${place.latitude}="",${place.longitude}="",${place.elevation}=""),"",VIV.SITECLIMATE(${place.latitude},${place.longitude},${place.elevation}))`,
      format: "tenth",
    },
    high: { title: "High likely", measures: "°C", covered: true, format: "tenth" },
    highMost: { title: "High most", measures: "°C", covered: true, format: "tenth" },
    lowLeast: { title: "Low least", measures: "°C", covered: true, format: "tenth" },
    low: { title: "Low likely", measures: "°C", covered: true, format: "tenth" },
    lowMost: { title: "Low most", measures: "°C", covered: true, format: "tenth" },
    rain: { title: "Rain mm", covered: true, format: "whole" },
    humidity: { title: "Humid. %", covered: true, format: "whole" },
  },
  { title: "The estimate, °C: nine months in ten lie between least and most", titleLines: 2 },
);

/** The keeper's own record, typed. */
const typed = (title: string, limits: readonly [number, number], unit: string): LogColumn => ({
  title,
  input: [],
  format: "tenth",
  takes: number(limits, unit),
});
export const own = log("own", 12, {
  month,
  high: typed("High °C", TEMPERATURE, "°C"),
  low: typed("Low °C", TEMPERATURE, "°C"),
  rain: typed("Rain mm", [0, 3000], "mm"),
});

/** One column of a station's year: the network's, or the keeper's own. */
const recorded = (name: Cell, part: number, from: unknown): string =>
  f`IF(${name}="","",IF(${name}="${OWN}",IF(${String(from)}="","",${String(from)}),INDEX(VIV.STATIONRECORD(${name}),0,${part})))`;

const kinds = (name: Cell, prefix: string) =>
  ({
    [`${prefix}High`]: { title: "High °C", spilled: recorded(name, 1, own.high), format: "tenth" },
    [`${prefix}Low`]: { title: "Low °C", spilled: recorded(name, 2, own.low), format: "tenth" },
    [`${prefix}Rain`]: { title: "Rain mm", spilled: recorded(name, 3, own.rain), format: "whole" },
  }) as Record<string, LogColumn>;

export const records = log(
  "records",
  12,
  { month, ...kinds(first, "first"), ...kinds(second, "second"), ...kinds(home, "town") } as Record<
    "month" | `${"first" | "second" | "town"}${"High" | "Low" | "Rain"}`,
    LogColumn
  >,
  { title: "As they stand: first station, second station, your own town" },
);

/** The record of a station at the animal's elevation. A fall of highs is steeper than one of lows. */
const corrected = (column: unknown, row: 1 | 2, kind: "high" | "low"): string =>
  f`IF(OR(COUNT(${String(column)})<12,${stations.elevation.at(row)}="",${place.elevation}=""),"",VIV.LAPSE(${String(column)},${stations.elevation.at(row)},${place.elevation},"${kind}"))`;
/** Half-way between two columns, once both are there. */
const between = (high: unknown, low: unknown): string =>
  f`IF(OR(COUNT(${String(high)})<12,COUNT(${String(low)})<12),"",VIV.MEDIAN24(${String(high)},${String(low)}))`;

export const adjusted = log(
  "adjusted",
  12,
  {
    month,
    firstHigh: { title: "High °C", spilled: corrected(records.firstHigh, 1, "high"), format: "tenth" },
    firstLow: { title: "Low °C", spilled: corrected(records.firstLow, 1, "low"), format: "tenth" },
    firstMiddle: {
      title: "Middle °C",
      spilled: ({ firstHigh, firstLow }) => between(firstHigh, firstLow),
      format: "tenth",
      rules: [under(choices.cold, "cold")],
    },
    secondHigh: { title: "High °C", spilled: corrected(records.secondHigh, 2, "high"), format: "tenth" },
    secondLow: { title: "Low °C", spilled: corrected(records.secondLow, 2, "low"), format: "tenth" },
    secondMiddle: {
      title: "Middle °C",
      spilled: ({ secondHigh, secondLow }) => between(secondHigh, secondLow),
      format: "tenth",
      rules: [under(choices.cold, "cold")],
    },
    townMiddle: {
      title: "Town °C",
      spilled: between(records.townHigh, records.townLow),
      format: "tenth",
      note: "Half-way between high and low of your own town, as it stands.",
    },
  },
  { title: "The stations corrected to the animal's elevation: first, second; your town as it stands", titleLines: 2 },
);

/** One of the three sources, as the keeper has chosen. */
const chosen = (estimate: unknown, one: unknown, other: unknown): string =>
  f`IF(${choices.planBy}="${SOURCES[1]}",IF(${String(one)}="","",${String(one)}),IF(${choices.planBy}="${SOURCES[2]}",IF(${String(other)}="","",${String(other)}),IF(${String(estimate)}="","",${String(estimate)})))`;
const [high, low] = [namedColumn("year.high"), namedColumn("year.low")];
const underGround = f`IF(OR(COUNT(${high})<12,COUNT(${low})<12,${choices.depth}="",${choices.ground}=""),"",VIV.UNDERGROUND(${high},${low},${metric(`${choices.depth}`, "cm")},${choices.ground}))`;

export const year = log(
  "year",
  12,
  {
    month,
    high: { title: "High °C", spilled: chosen(here.high, adjusted.firstHigh, adjusted.secondHigh), format: "tenth" },
    low: { title: "Low °C", spilled: chosen(here.low, adjusted.firstLow, adjusted.secondLow), format: "tenth" },
    middle: {
      title: "Middle °C",
      spilled: between(high, low),
      format: "tenth",
      rules: [under(choices.cold, "cold")],
      note: "Half-way between high and low: the 24-hour median as keepers use the word.",
    },
    fluctuation: {
      title: "Swing K",
      spilled: f`IF(OR(COUNT(${high})<12,COUNT(${low})<12),"",VIV.FLUCTUATION(${high},${low}))`,
      format: "tenth",
      note: "Diurnal fluctuation: the day's high less its low.",
    },
    rain: { title: "Rain mm", spilled: chosen(here.rain, records.firstRain, records.secondRain), format: "whole" },
    dry: {
      title: "Dry?",
      spilled: ({ middle, rain }) => eachLine`IF(VIV.DRYMONTH(${middle},${rain}),"dry","no")`,
    },
    groundHigh: {
      title: "Ground high",
      measures: "°C",
      spilled: underGround,
      format: "tenth",
      note: "At the depth given above, in bare, even ground.",
    },
    groundLow: { title: "Ground low", measures: "°C", covered: true, format: "tenth" },
    groundMean: { title: "Ground mean", measures: "°C", covered: true, format: "tenth" },
  },
  { title: "The year to plan by: Year plan and Cooling plan use it", titleLines: 2 },
);

/** The threshold once a month, for the picture. */
export const cold = log(
  "cold",
  12,
  {
    month,
    threshold: { title: "Cold °C", each: () => f`IF(${choices.cold}="","",${choices.cold})`, format: "tenth" },
  },
  { title: "For the picture" },
);
