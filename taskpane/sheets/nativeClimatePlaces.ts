import { grounds, USUAL_GROUND } from "../../functions/climate/shared/ground";
import { ELEVATION, TEMPERATURE } from "../../functions/shared/limits";
import { form } from "./shared/form";
import { f, once } from "./shared/formula";
import { log } from "./shared/log";
import { namedColumn, through, type RowCell } from "./shared/names";
import { home, lower, TOWN_STATION, upper } from "./shared/scenario";
import { LATITUDE, LONGITUDE, number, oneOf, whole } from "./shared/takes";

/** What stands in place of a station's name where the keeper's own record is meant. */
export const OWN = "own";

/** The sources that the year to plan by may be taken from. */
export const SOURCES = ["estimate", "first station", "second station"] as const;

/** Stations alone, corrected to the elevation, need no place. */
const noPlaceNeeded = (): string => `${namedColumn("stations.name").at(1)}<>""`;

export const place = form(
  "place",
  "Where the animal lives",
  {
    latitude: {
      label: "Lat. ° (south −)",
      needed: "Latitude",
      unless: noPlaceNeeded,
      value: home.latitude,
      from: "stationShortlist.home.latitude",
      format: "hundredth",
      takes: number(LATITUDE, "°"),
    },
    longitude: {
      label: "Long. ° (west −)",
      needed: "Longitude",
      unless: noPlaceNeeded,
      value: home.longitude,
      from: "stationShortlist.home.longitude",
      format: "hundredth",
      takes: number(LONGITUDE, "°"),
    },
    elevation: {
      label: "Elevation",
      needed: true,
      unit: "m",
      value: home.elevation,
      format: "whole",
      takes: number(ELEVATION),
    },
    bandLow: {
      label: "Lives from",
      unit: "m",
      value: home.bandLow,
      from: "stationShortlist.home.bandLow",
      format: "whole",
      takes: number(ELEVATION),
    },
    bandHigh: {
      label: "to",
      unit: "m",
      value: home.bandHigh,
      from: "stationShortlist.home.bandHigh",
      format: "whole",
      takes: number(ELEVATION),
    },
  },
  { across: 1 },
);

export const choices = form(
  "choices",
  "How to read it",
  {
    planBy: {
      label: "Plan the year by the",
      value: SOURCES[0],
      role: "setting",
      wide: 2,
      takes: oneOf(...SOURCES),
      note: "Which year the table to plan by holds: the estimate, or a station corrected to the animal's elevation. A record of your own comes first where you trust it: write own as the first station.",
    },
    cold: {
      label: "Cold below",
      unit: "°C",
      value: home.coldThreshold,
      role: "setting",
      wide: 2,
      format: "tenth",
      takes: number(TEMPERATURE),
    },
    year: {
      label: "Cold spell begins in",
      value: 2026,
      role: "setting",
      wide: 2,
      format: "whole",
      takes: whole([1901, 9997]),
    },
    depth: {
      label: "Depth under ground, cm",
      value: 30,
      role: "setting",
      wide: 2,
      format: "whole",
      takes: number([0, 500], "cm"),
      note: "Where the animal hides: bare, even ground. Canopy, snow, slope and water are not in it.",
    },
    ground: {
      label: "Ground there",
      value: USUAL_GROUND,
      role: "setting",
      wide: 2,
      takes: oneOf(...Object.keys(grounds)),
      note: "What the ground is made of: it decides how deep a warm day reaches.",
    },
  },
  { across: 3 },
);

/** What a keeper wrote down elsewhere: a station of a visit, a logger on site. */
export const ownPlace = form("ownPlace", "Your own record", {
  name: { label: "Name", value: null, wide: 4 },
  elevation: { label: "Elevation", unit: "m", value: null, format: "whole", takes: number(ELEVATION) },
  latitude: { label: "Lat. ° (south −)", value: null, format: "hundredth", takes: number(LATITUDE, "°") },
  longitude: { label: "Long. ° (west −)", value: null, format: "hundredth", takes: number(LONGITUDE, "°") },
  years: { label: "Years", value: null, wide: 4 },
});

/** The part of the network's answer on a station, or the cell of the keeper's own record. */
const known = (name: RowCell, part: number, own: unknown): string =>
  once`IF(${name}="${OWN}",IF(${String(own)}="","",${String(own)}),INDEX(VIV.STATIONPLACE(${name}),1,${part}))`;

const [near, far] = [upper.name, lower.name];
const columns = {
  name: {
    title: "Station",
    note: "A name or a WMO number of the network (VIV.STATIONS, the sheet Station shortlist), or own for the record that you type at the bottom.",
  },
  elevation: { title: "Elev. m", format: "whole" },
  latitude: { title: "Lat. °", format: "hundredth" },
  longitude: { title: "Long. °", format: "hundredth" },
} as const;

export const stations = log(
  "stations",
  2,
  {
    name: { ...columns.name, input: [near, far] },
    elevation: { ...columns.elevation, each: ({ name }) => known(name, 3, ownPlace.elevation) },
    latitude: { ...columns.latitude, each: ({ name }) => known(name, 1, ownPlace.latitude) },
    longitude: { ...columns.longitude, each: ({ name }) => known(name, 2, ownPlace.longitude) },
    gap: {
      title: "Gap m",
      each: ({ elevation }) => once`VIV.STATIONGAP(${elevation},${place.bandLow},${place.bandHigh})`,
      format: "whole",
      note: "Metres outside the elevation band: 0 inside, negative below, positive above.",
    },
    km: {
      title: "Km",
      // The row is handed over as one: a blank in it is looked for cell by cell.
      each: ({ name, elevation, latitude, longitude }) =>
        f`IF(OR(${[elevation, latitude, longitude, place.bandLow, place.bandHigh, place.latitude, place.longitude].map((one) => `${one}=""`).join(",")}),"",INDEX(VIV.STATIONRANK(${through(name, longitude)},${place.bandLow},${place.bandHigh},${place.latitude},${place.longitude}),1,3))`,
      format: "whole",
    },
    credit: {
      title: "Whose figures",
      wide: 4,
      each: ({ name }) => known(name, 7, ownPlace.years),
    },
  },
  { title: "Real stations beside it" },
);

export const town = log(
  "town",
  1,
  {
    name: { title: null, input: [TOWN_STATION] },
    elevation: { title: null, measures: "m", format: "whole", each: ({ name }) => known(name, 3, ownPlace.elevation) },
    latitude: { title: null, format: "hundredth", each: ({ name }) => known(name, 1, ownPlace.latitude) },
    longitude: { title: null, format: "hundredth", each: ({ name }) => known(name, 2, ownPlace.longitude) },
    credit: { title: null, skip: 2, wide: 4, each: ({ name }) => known(name, 7, ownPlace.years) },
  },
  { title: "Your own town, as it stands: what winter and summer outside your door offer", titleLines: 0 },
);
