import { cautions } from "../../functions/cautions";
import { RATES } from "../../functions/climate/shared/rate";
import { adjusted, cold, here, records, year } from "./nativeClimateMonths";
import { choices, place, SOURCES, stations } from "./nativeClimatePlaces";
import {
  credits,
  ESTIMATE,
  FIRST,
  how,
  legend,
  rainHow,
  SECOND,
  SOURCE_NAMES,
  TOWN,
  WIDE,
} from "./nativeClimateSources";
import { f } from "./shared/formula";
import { named, type Column } from "./shared/names";
import { picture } from "./shared/picture";
import { words } from "./shared/running";
import type { Year } from "./sheet";
import { isoText, rounded } from "./shared/words";

const { elevation } = place;

export const summary = words(
  "summary",
  [3, WIDE],
  f`IF(COUNT(${year.middle})<12,"","At "&${elevation}&" m, by the "&${choices.planBy}&IF(${choices.planBy}="${SOURCES[1]}"," ("&${legend.name.at(FIRST)}&")",IF(${choices.planBy}="${SOURCES[2]}"," ("&${legend.name.at(SECOND)}&")",""))&": daily highs of "&${rounded(`MAX(${year.high})`)}&" °C in the warmest month, daily lows of "&${rounded(`MIN(${year.low})`)}&" °C in the coldest, on average"&IF(${choices.cold}="","","; in "&COUNTIF(${year.low},"<"&${choices.cold})&" months the lows are below "&${choices.cold}&" °C on average")&IF(ISNUMBER(${named("glance.here[3]")}),". Half-way between highs and lows, it is colder than that from "&${isoText("⟦glance.here[3]⟧")}&" to "&${isoText("⟦glance.here[4]⟧")},"")&".")`,
);

/** What is said of a station's lines: its own sentence, or where the band is not given the plain fact. */
const proxy = (row: 1 | 2) => {
  const [high, km] = [row === 1 ? adjusted.firstHigh : adjusted.secondHigh, stations.km.at(row)];
  const name = legend.name.at(row + 1);
  const height = stations.elevation.at(row);
  const sentence = `VIV.PROXYNOTE(${name},${height},${place.bandLow},${place.bandHigh},${km},"high","low")`;
  const fact = `${name}&", "&${rounded(`${height}`, 0)}&" m: its highs are corrected at ${RATES.high} K per km and its lows at ${RATES.low} K per km."`;
  return words(
    `proxy${row}`,
    [3, WIDE],
    f`IF(COUNT(${high})<12,"",IF(OR(${place.bandLow}="",${place.bandHigh}="",${km}=""),${fact},${sentence})&" Corrected to "&${elevation}&" m.")`,
  );
};
export const [firstProxy, secondProxy] = [proxy(1), proxy(2)];

const estimated = {
  from: `${named("note.said")}`,
  credit: `${credits.words.at(ESTIMATE)}`,
  caution: "estimatedSite",
} as const;
export const curves = picture([16, WIDE], {
  title: "The year where the animal lives",
  along: `${year.month}`,
  axis: "°C",
  series: [
    {
      draw: "band",
      name: "Estimate, highs: nine months in ten",
      nameFrom: `${legend.highs.at(ESTIMATE)}`,
      low: `${here.highLeast}`,
      high: `${here.highMost}`,
      likely: `${here.high}`,
      ...estimated,
    },
    {
      draw: "band",
      name: "Estimate, lows: nine months in ten",
      nameFrom: `${legend.lows.at(ESTIMATE)}`,
      low: `${here.lowLeast}`,
      high: `${here.lowMost}`,
      likely: `${here.low}`,
      ...estimated,
    },
    ...(
      [
        [FIRST, firstProxy, adjusted.firstHigh, adjusted.firstLow],
        [SECOND, secondProxy, adjusted.secondHigh, adjusted.secondLow],
      ] as const
    ).flatMap(([row, proxy, high, low]) => {
      const told = { from: `${proxy.said}`, credit: `${credits.words.at(row)}` };
      const name = SOURCE_NAMES[row - 1] ?? "";
      return [
        { draw: "line", name: `${name}, highs`, nameFrom: `${legend.highs.at(row)}`, values: `${high}`, ...told },
        { draw: "line", name: `${name}, lows`, nameFrom: `${legend.lows.at(row)}`, values: `${low}`, ...told },
      ] as const;
    }),
    { draw: "threshold", name: "Cold", values: `${cold.threshold}` },
  ],
  summary: `${summary.said}`,
  cautions: ["proxy"],
});

const rainWords = (row: number, rain: Column): string =>
  `IF(COUNT(${rain})<12,"",${legend.name.at(row)}&": "&${rounded(`SUM(${rain})`, 0, "mm")}&" mm a year, driest "&INDEX(${year.month},MATCH(MIN(${rain}),${rain},0))&". ")`;
const rains = [
  [ESTIMATE, here.rain],
  [FIRST, records.firstRain],
  [SECOND, records.secondRain],
] as const;
export const rainSummary = words(
  "rainSummary",
  [2, WIDE],
  f`${rains.map(([row, rain]) => rainWords(row, rain)).join("&")}`,
);
export const rain = picture([12, WIDE], {
  title: "Rain and melted snow, as recorded and as estimated",
  along: `${year.month}`,
  axis: "mm a month",
  series: rains.map(([row, values]) => ({
    draw: "bar",
    name: SOURCE_NAMES[row - 1] ?? "",
    nameFrom: `${legend.name.at(row)}`,
    values: `${values}`,
    from: `${rainHow.words.at(row)}`,
    credit: `${credits.words.at(row)}`,
  })),
  summary: `${rainSummary.said}`,
  cautions: ["stationNetwork"],
});

/** What is told of the year of one source, inside a formula. */
export const fromOf = {
  estimate: `${named("note.said")}&" ${cautions.estimatedSite}"`,
  first: `${firstProxy.said}&" "&${credits.words.at(FIRST)}&"."`,
  second: `${secondProxy.said}&" "&${credits.words.at(SECOND)}&"."`,
} as const;

/** The years that are pictured whole: the animal's home first, what may stand beside it after it. */
const kinds = [
  [ESTIMATE, here.high, here.low, here.rain, estimated],
  [FIRST, adjusted.firstHigh, adjusted.firstLow, records.firstRain, { from: `${firstProxy.said}` }],
  [SECOND, adjusted.secondHigh, adjusted.secondLow, records.secondRain, { from: `${secondProxy.said}` }],
  [TOWN, records.townHigh, records.townLow, records.townRain, {}],
] as const;
export const years: readonly Year[] = kinds.map(([row, high, low, rain, told]) => ({
  title: row === ESTIMATE ? "Where the animal lives" : (SOURCE_NAMES[row - 1] ?? ""),
  ...(row === ESTIMATE ? {} : { nameFrom: `${legend.name.at(row)}` }),
  subtitle: `${how.words.at(row)}`,
  lines:
    row === ESTIMATE
      ? [
          { name: "daily highs", likely: `${high}`, least: `${here.highLeast}`, most: `${here.highMost}` },
          { name: "daily lows", likely: `${low}`, least: `${here.lowLeast}`, most: `${here.lowMost}` },
        ]
      : [
          { name: "daily highs", likely: `${high}` },
          { name: "daily lows", likely: `${low}` },
        ],
  cold: `${choices.cold}`,
  counted: "lows",
  rain: `${rain}`,
  rainFrom: `${rainHow.words.at(row)}`,
  credit: `${credits.words.at(row)}`,
  cautions: ["proxy"],
  ...told,
}));
