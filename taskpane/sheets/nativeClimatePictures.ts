import { cautions } from "../../functions/cautions";
import { RATES } from "../../functions/climate/shared/rate";
import { adjusted, cold, here, records, year } from "./nativeClimateMonths";
import { choices, OWN, ownPlace, place, SOURCES, stations, town } from "./nativeClimatePlaces";
import { f } from "./shared/formula";
import { log } from "./shared/log";
import { named, type Column } from "./shared/names";
import { picture } from "./shared/picture";
import { words } from "./shared/running";
import { isoText, rounded } from "./shared/words";

/** Columns of running words and pictures. */
export const WIDE = 10;

/** What a station is called in the pictures; a number of the network becomes its name. */
const called = (name: unknown): string =>
  `IF(${String(name)}="","",IF(${String(name)}="${OWN}",IF(${ownPlace.name}="","Own record",${ownPlace.name}),IFERROR(INDEX(VIV.STATIONPLACE(${String(name)}),1,8),${String(name)})))`;
/** Whose figures they are, and on which terms. */
const credited = (name: unknown): string =>
  `IF(${String(name)}="","",IF(${String(name)}="${OWN}","The keeper's own record"&IF(${ownPlace.years}="","",", "&${ownPlace.years}),IFERROR(INDEX(VIV.STATIONPLACE(${String(name)}),1,9),"")))`;
const { latitude, longitude, elevation } = place;
const noPlace = `OR(${latitude}="",${longitude}="",${elevation}="")`;

const sources = [stations.name.at(1), stations.name.at(2), town.name.at(1)];
const nameOf = (row: number): string =>
  row === 1 ? `IF(${elevation}="","","Estimate, "&${elevation}&" m")` : called(sources[row - 2]);
const creditOf = (row: number): string =>
  row === 1
    ? `IF(${noPlace},"",IFERROR(VIV.SITENOTE(${latitude},${longitude},${elevation},"","credit"),""))`
    : credited(sources[row - 2]);

/** The words beside the lines and under the pictures: a place is called by its name. */
export const legend = log("legend", 1 + sources.length, {
  source: { title: "In the pictures", label: ["Estimate", "1st station", "2nd station", "Your town"] },
  name: { title: "Called", wide: 3, each: ({ name }) => f`${nameOf(name.row)}` },
  highs: {
    title: "Highs",
    wide: 3,
    each: ({ name }) => f`IF(${name}="","",${name}&", highs${name.row === 1 ? ": nine months in ten" : ""}")`,
  },
  lows: {
    title: "Lows",
    wide: 3,
    each: ({ name }) => f`IF(${name}="","",${name}&", lows${name.row === 1 ? ": nine months in ten" : ""}")`,
  },
  credit: { title: "Credit", skip: 1, each: ({ name }) => f`${creditOf(name.row)}` },
});
const [ESTIMATE, FIRST, SECOND] = [1, 2, 3] as const;

/** Whether twelve figures are there to be drawn, inside a formula. */
const drawn = (column: unknown): string => `COUNT(${String(column)})=12`;
/** Words while a column is drawn, inside a formula. */
const where = (column: unknown, said: string): string => `IF(${drawn(column)},${said},"")`;

export const summary = words(
  "summary",
  [2, WIDE],
  f`IF(COUNT(${year.middle})<12,"","At "&${elevation}&" m, by the "&${choices.planBy}&IF(${choices.planBy}="${SOURCES[1]}"," ("&${legend.name.at(FIRST)}&")",IF(${choices.planBy}="${SOURCES[2]}"," ("&${legend.name.at(SECOND)}&")",""))&": daily highs of "&${rounded(`MAX(${year.high})`)}&" °C in the warmest month, daily lows of "&${rounded(`MIN(${year.low})`)}&" °C in the coldest, on average"&IF(${choices.cold}="","","; in "&COUNTIF(${year.low},"<"&${choices.cold})&" months the lows are below "&${choices.cold}&" °C on average")&IF(ISNUMBER(${named("glance.here[3]")}),". Half-way between highs and lows, it is colder than that from "&${isoText("⟦glance.here[3]⟧")}&" to "&${isoText("⟦glance.here[4]⟧")},"")&".")`,
);

/** How a station was corrected: its own sentence, or where the band is not given the plain fact. */
const correctedTo = (row: 1 | 2): string => {
  const proxy = named(`proxy${row}.said`);
  const name = legend.name.at(row + 1);
  const above = rounded(`${stations.elevation.at(row)}`, 0);
  return `IF(${proxy}="",${name}&", "&${above}&" m: highs are corrected at ${RATES.high} K per km and lows at ${RATES.low} K per km",LEFT(${proxy},LEN(${proxy})-1))&"; drawn as corrected to "&${elevation}&" m. "`;
};
/** A credit, where it has not been given before. */
const credit = (row: number, ...before: readonly string[]): string => {
  const cell = legend.credit.at(row);
  return `IF(${cell}="","",IF(ISNUMBER(FIND(${cell},${before.map(String).join("&")})),"",${cell}&". "))`;
};
const note = named("note.said");

/** Where a year of one source comes from, inside a formula. */
export const fromOf = {
  estimate: `${note}&" ${cautions.estimatedSite}"`,
  first: `${correctedTo(1)}&${credit(FIRST, '"-"')}`,
  second: `${correctedTo(2)}&${credit(SECOND, '"-"')}`,
} as const;

/** Where the lines of the picture come from, and how they were corrected. */
export const curvesFrom = words(
  "curvesFrom",
  [5, WIDE],
  f`${[
    where(here.high, `${note}&" ${cautions.estimatedSite} "`),
    where(adjusted.firstHigh, `${correctedTo(1)}&${credit(FIRST, where(here.high, `${note}`))}`),
    where(
      adjusted.secondHigh,
      `${correctedTo(2)}&${credit(SECOND, where(here.high, `${note}`), where(adjusted.firstHigh, `${legend.credit.at(FIRST)}`))}`,
    ),
  ].join("&")}`,
);
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
    },
    {
      draw: "band",
      name: "Estimate, lows: nine months in ten",
      nameFrom: `${legend.lows.at(ESTIMATE)}`,
      low: `${here.lowLeast}`,
      high: `${here.lowMost}`,
      likely: `${here.low}`,
    },
    ...(
      [
        ["1st station", FIRST, adjusted.firstHigh, adjusted.firstLow],
        ["2nd station", SECOND, adjusted.secondHigh, adjusted.secondLow],
      ] as const
    ).flatMap(
      ([name, row, high, low]) =>
        [
          { draw: "line", name: `${name}, highs`, nameFrom: `${legend.highs.at(row)}`, values: `${high}` },
          { draw: "line", name: `${name}, lows`, nameFrom: `${legend.lows.at(row)}`, values: `${low}` },
        ] as const,
    ),
    { draw: "threshold", name: "Cold", values: `${cold.threshold}` },
  ],
  summary: `${summary.said}`,
  provenance: [`${curvesFrom.said}`],
  cautions: ["proxy"],
});

const rainWords = (row: number, rain: Column): string =>
  where(
    rain,
    `${legend.name.at(row)}&": "&${rounded(`SUM(${rain})`, 0, "mm")}&" mm a year, driest "&INDEX(${year.month},MATCH(MIN(${rain}),${rain},0))&". "`,
  );
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
/** Rain is drawn as it was recorded. */
export const rainFrom = words(
  "rainFrom",
  [4, WIDE],
  f`${[
    where(here.rain, `"The estimate is worked out from the stations around. "&${credit(ESTIMATE, `"-"`)}`),
    ...[FIRST, SECOND].map((row) => {
      const rain = row === FIRST ? records.firstRain : records.secondRain;
      const before = rains
        .slice(0, row - 1)
        .map(([earlier, figures]) => where(figures, `${legend.credit.at(earlier)}`));
      return where(
        rain,
        `${legend.name.at(row)}&" as recorded at "&${rounded(`${stations.elevation.at(row - 1)}`, 0)}&" m, not corrected. "&${credit(row, ...before)}`,
      );
    }),
  ].join("&")}`,
);
export const rain = picture([12, WIDE], {
  title: "Rain and melted snow, as recorded and as estimated",
  along: `${year.month}`,
  axis: "mm a month",
  series: rains.map(([row, values]) => ({
    draw: "bar",
    name: row === ESTIMATE ? "Estimate" : row === FIRST ? "1st station" : "2nd station",
    nameFrom: `${legend.name.at(row)}`,
    values: `${values}`,
  })),
  summary: `${rainSummary.said}`,
  provenance: [`${rainFrom.said}`],
  cautions: ["stationNetwork"],
});
