import { OWN, ownPlace, place, stations, town } from "./nativeClimatePlaces";
import { f } from "./shared/formula";
import { log } from "./shared/log";
import { rounded } from "./shared/words";

/** What is said of the sources under the pictures of Native climate: names, ways, credits. */

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
export const SOURCE_NAMES = ["Estimate", "1st station", "2nd station", "Your town"];
const nameOf = (row: number): string =>
  row === 1 ? `IF(${elevation}="","","Estimate, "&${elevation}&" m")` : called(sources[row - 2]);
const creditOf = (row: number): string =>
  row === 1
    ? `IF(${noPlace},"",IFERROR(VIV.SITENOTE(${latitude},${longitude},${elevation},"","credit"),""))`
    : credited(sources[row - 2]);

/** The words beside the lines: a place is called by its name. */
export const legend = log("legend", 1 + sources.length, {
  source: { title: "In the pictures", label: SOURCE_NAMES },
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
});
export const [ESTIMATE, FIRST, SECOND, TOWN] = [1, 2, 3, 4] as const;

/** The elevation of a source's own figures. */
const heights = [stations.elevation.at(1), stations.elevation.at(2), town.elevation.at(1)];
const heightOf = (row: number): string => rounded(String(heights[row - 2]), 0);
const isKnown = (row: number): string =>
  `AND(${legend.name.at(row)}<>"",ISNUMBER(${String(heights[row - 2])}),ISNUMBER(${elevation}))`;
const howOf = (row: number): string =>
  row === ESTIMATE
    ? `IF(${elevation}="","",${elevation}&" m, estimated from the stations around")`
    : row === TOWN
      ? `IF(${isKnown(row)},${heightOf(row)}&" m, as it stands","")`
      : `IF(${isKnown(row)},"corrected from "&${heightOf(row)}&" to "&${elevation}&" m","")`;
const rainOf = (row: number): string =>
  row === ESTIMATE
    ? `IF(${elevation}="","","Its rain is worked out from that of the stations around.")`
    : `IF(${isKnown(row)},"Rain of "&${legend.name.at(row)}&" as recorded at "&${heightOf(row)}&" m, not corrected.","")`;

/** A line a source, all over the page: the captions take it from here. */
const lineEach = (name: string, heading: string, of: (row: number) => string) =>
  log(name, 1 + sources.length, {
    source: { title: heading, label: SOURCE_NAMES },
    words: { title: null, wide: WIDE - 1, each: ({ words: { row } }) => f`${of(row)}` },
  });
export const how = lineEach("how", "Under the pictures", howOf);
export const rainHow = lineEach("rainHow", "Of the rain", rainOf);
export const credits = lineEach("credits", "Whose records", creditOf);
