import { depthsFrom, down, underGround } from "./nativeClimateDepths";
import { curves, firstProxy, rain, rainSummary, secondProxy, summary, years } from "./nativeClimatePictures";
import { cold, adjusted, here, own, records, year } from "./nativeClimateMonths";
import { choices, OWN, ownPlace, place, stations, town } from "./nativeClimatePlaces";
import { credits, how, legend, rainHow, WIDE } from "./nativeClimateSources";
import { INVENTED_WITH_RECORDS } from "./shared/assemble";
import { f } from "./shared/formula";
import { log } from "./shared/log";
import type { Cell, Column } from "./shared/names";
import { page } from "./shared/page";
import type { Format } from "./sheet";
import { gap } from "./shared/region";
import { title, words } from "./shared/running";
import { figure, metric } from "./shared/systems";

const WIDTHS = [20, 7, 7, 7, 7, 7, 7, 7, 7, 7, 1, 12, 12] as const;
/** What is asked of each source: its twelve middles, its rain, its latitude. */
interface Source {
  readonly middle: Column | string;
  readonly rain: Column;
  readonly latitude: Cell;
}
const estimate: Source = { middle: year.middle, rain: year.rain, latitude: place.latitude };
const sources: readonly Source[] = [
  estimate,
  { middle: adjusted.firstMiddle, rain: records.firstRain, latitude: stations.latitude.at(1) },
  { middle: adjusted.secondMiddle, rain: records.secondRain, latitude: stations.latitude.at(2) },
  { middle: adjusted.townMiddle, rain: records.townRain, latitude: town.latitude.at(1) },
];

/** Empty until the twelve months are there. A source that cannot be worked out says so in its own line below. */
const whole = (column: unknown, formula: string): string =>
  f`IF(COUNT(${String(column)})<12,"",IFERROR(${formula},"see below"))`;
const spell = ({ middle }: Source, part: 1 | 2 | 3): string =>
  f`IF(OR(COUNT(${middle})<12,${choices.cold}="",${choices.year}=""),"",IFNA(INDEX(VIV.COOLSPELL(${middle},${choices.cold},${choices.year}),1,${part}),"none"))`;

const lines: readonly (readonly [label: string, format: Format | undefined, of: (source: Source) => string])[] = [
  ["Warmest month, °C", "tenth", ({ middle }) => whole(middle, `MAX(${String(middle)})`)],
  ["Coldest month, °C", "tenth", ({ middle }) => whole(middle, `MIN(${String(middle)})`)],
  ["Cold spell from", "date", (source) => spell(source, 1)],
  ["to", "date", (source) => spell(source, 2)],
  ["days", "whole", (source) => spell(source, 3)],
  ["Rain a year, mm", "whole", ({ rain }) => whole(rain, `SUM(${rain})`)],
  [
    "Dry months",
    "whole",
    ({ middle, rain }) =>
      f`IF(OR(COUNT(${middle})<12,COUNT(${rain})<12),"",SUMPRODUCT(--(${metric(`${rain}`, "mm")}<2*${metric(String(middle), "°C")})))`,
  ],
  [
    "Climate class",
    undefined,
    ({ middle, rain, latitude }) =>
      f`IF(OR(COUNT(${middle})<12,COUNT(${rain})<12,${latitude}=""),"",IFERROR(VIV.KOPPEN(${middle},${rain},${latitude}),"see below"))`,
  ],
];
const column = (index: number, heading: string) => ({
  title: heading,
  wide: 2,
  joined: true,
  each: (row: Readonly<Record<string, { readonly row: number }>>): string => {
    const source = sources[index] as Source;
    return lines[(row.line?.row ?? 1) - 1]?.[2](source) ?? "";
  },
  formats: lines.map(([, format]) => format),
  measures: lines.map(([label]) => label),
});
const glance = log(
  "glance",
  lines.length,
  {
    line: { title: "At a glance", label: lines.map(([label]) => label) },
    here: column(0, "To plan by"),
    first: column(1, "1st station"),
    second: column(2, "2nd station"),
    town: column(3, "Your town"),
  },
  {
    note: "Warmest, coldest and cold spell: middles of high and low at the animal's elevation, the town as it stands. Köppen's letters, first: A hot, B dry, C mild winter, D cold winter, E polar. Second: s dry summer, w dry winter, f neither. Third: a hot, b warm, c cool summer.",
  },
);

/** One sentence for each thing that a reader must know before a figure is used. */
const note = words(
  "note",
  [6, WIDE],
  f`IF(OR(${place.latitude}="",${place.longitude}="",${place.elevation}=""),"",IFERROR(VIV.SITENOTE(${place.latitude},${place.longitude},${place.elevation}),"No estimate here: fewer than three stations within 1000 km, or the sea. Name stations of your own choice, or write your own record."))`,
);
const hemisphere = (name: Cell, { middle, latitude }: Source): string =>
  `IF(OR(COUNT(${String(middle)})<12,${latitude}=""),"",IF((AVERAGE(INDEX(${String(middle)},6),INDEX(${String(middle)},7),INDEX(${String(middle)},8))-AVERAGE(INDEX(${String(middle)},12),INDEX(${String(middle)},1),INDEX(${String(middle)},2)))*${latitude}<${figure(-23.5, "K")},${name}&": its warm half does not fit the sign of its latitude (south is negative). ",""))`;
const names = [stations.name.at(1), stations.name.at(2), town.name.at(1)] as const;
/** What is wrong with a source, and how the estimate was made: of the first nothing is said where all is well. */
const read = words(
  "read",
  [5, WIDE],
  f`IF(OR(${names.map((name) => `${name}="${OWN}"`).join(",")}),IF(OR(COUNT(${own.high})<12,COUNT(${own.low})<12,${ownPlace.elevation}=""),"Still needed for your own record: its elevation and twelve highs and lows. ",""),"")&${sources
    .slice(1)
    .map((source, i) => hemisphere(names[i] as Cell, source))
    .join("&")}&${note.said}`,
);

export const nativeClimate = page(
  {
    key: "nativeClimate",
    name: "Native climate",
    sentence: "The year at the animal's home, estimated from all stations around it, with real stations beside it.",
    cautions: ["estimatedSite", "proxy", "stationNetwork"],
    sources: [
      "siteEstimate",
      "kriging",
      "climatReports",
      "noaaNormals",
      "jmaNormals",
      "cwaNormals",
      "observedLapse",
      "midRange",
      "histospline",
      "peel2007",
      "walterLieth",
      "heatEquation",
    ],
    widths: WIDTHS,
    cautionColumns: ["L", "M"],
    years,
    example: INVENTED_WITH_RECORDS,
  },
  glance,
  gap(1),
  { A: [place], D: [choices] },
  gap(1),
  stations,
  town,
  gap(1),
  read,
  curves,
  summary,
  gap(1),
  year,
  underGround,
  gap(1),
  ...down,
  gap(1),
  here,
  gap(1),
  title("How far each station can be trusted", WIDE),
  firstProxy,
  secondProxy,
  adjusted,
  gap(1),
  records,
  gap(1),
  rain,
  rainSummary,
  gap(1),
  { A: [ownPlace] },
  own,
  gap(1),
  cold,
  gap(1),
  legend,
  how,
  rainHow,
  credits,
  note,
  depthsFrom,
);
