import { ELEVATION, TEMPERATURE } from "../../functions/shared/limits";
import { answers } from "./shared/answers";
import { EXAMPLE } from "./shared/assemble";
import { form } from "./shared/form";
import { f, once } from "./shared/formula";
import { log } from "./shared/log";
import { through } from "./shared/names";
import { page } from "./shared/page";
import { gap, type Rule } from "./shared/region";
import { begins } from "./shared/rules";
import { candidates, home } from "./shared/scenario";
import { LATITUDE, LONGITUDE, number } from "./shared/takes";
import { blanksKept } from "./shared/words";

const ROWS = 12;

const place = form("home", "The animal's home", {
  bandLow: {
    label: "Lives from",
    needed: "Elevation from",
    unit: "m",
    value: home.bandLow,
    format: "whole",
    takes: number(ELEVATION),
  },
  bandHigh: { label: "to", needed: "to", unit: "m", value: home.bandHigh, format: "whole", takes: number(ELEVATION) },
  latitude: {
    label: "Latitude, ° (south −)",
    needed: "Latitude",
    value: home.latitude,
    format: "hundredth",
    takes: number(LATITUDE, "°"),
  },
  longitude: {
    label: "Longitude, ° (west −)",
    needed: "Longitude",
    value: home.longitude,
    format: "hundredth",
    takes: number(LONGITUDE, "°"),
  },
});
const { bandLow, bandHigh, latitude, longitude } = place;

/** A station in the band is marked, and one that needs its band shown. */
const inTheBand: Rule<"gap"> = {
  when: (_, { gap: metres }) => `=AND(ISNUMBER(${metres}),${metres}=0)`,
  look: "good",
  over: 4,
};

const network = log(
  "network",
  ROWS,
  {
    station: {
      title: "Best first",
      spilled: once`VIV.STATIONS(${latitude},${longitude},${bandLow},${bandHigh},${ROWS})`,
      rules: [inTheBand],
    },
    id: {
      title: "Number",
      covered: true,
      note: "WMO number, or the number in its own network: Native climate takes it.",
    },
    elevation: { title: "Elev. m", covered: true, format: "whole" },
    gap: {
      title: "Gap m",
      covered: true,
      format: "whole",
      note: "Metres outside the elevation band: 0 inside, negative below, positive above.",
    },
    km: { title: "Km", covered: true, format: "whole" },
    years: { title: "Years", covered: true, format: "whole", note: "Fewest years behind a month's mean." },
    verdict: { title: "Verdict", covered: true, rules: [begins("Well", "care"), begins("Far", "care")] },
    figures: { title: "Source", covered: true },
  },
  { title: "Stations of the built-in network", rowLines: 3 },
);

const own = log(
  "own",
  ROWS,
  {
    name: { title: "Candidates", input: candidates.map(({ name }) => name) },
    elevation: {
      title: "Elev. m",
      input: candidates.map(({ elevation }) => elevation),
      format: "whole",
      takes: number(ELEVATION, "m"),
      note: "Elevation of the station, m.",
    },
    latitude: {
      title: "Lat. °",
      input: candidates.map((one) => one.latitude),
      format: "hundredth",
      takes: number(LATITUDE, "°"),
    },
    longitude: {
      title: "Long. °",
      input: candidates.map((one) => one.longitude),
      format: "hundredth",
      takes: number(LONGITUDE, "°"),
    },
    mean: {
      title: "Mean °C",
      input: candidates.map(({ mean }) => mean),
      format: "tenth",
      takes: number(TEMPERATURE, "°C"),
      note: "Only for your own fall of temperature: the year's mean, of the stations of one mountain.",
    },
  },
  { title: "Stations that you know of yourself", grows: true },
);
const all = through(own.name, own.longitude);

const ranked = log("ranked", ROWS, {
  station: {
    title: "Your own, best first",
    spilled: f`IF(OR(COUNTA(${all})=0,${[bandLow, bandHigh, latitude, longitude].map((one) => `${one}=""`).join(",")}),"",VIV.STATIONRANK(${blanksKept(all)},${bandLow},${bandHigh},${latitude},${longitude}))`,
    rules: [{ ...inTheBand, over: 3 }],
  },
  gap: { title: "Gap m", covered: true, format: "whole" },
  km: { title: "Km", covered: true, format: "whole" },
  verdict: { title: "Verdict", covered: true, rules: [begins("Well", "care"), begins("Far", "care")] },
});

const fall = answers(
  "fall",
  "Your own fall of temperature",
  f`IF(COUNTA(${own.mean})<3,"",IFNA(INDEX(VIV.LAPSEFIT(${blanksKept(`${own.mean}`)},IF(${own.mean}="","",${own.elevation})),0,2),"too few"))`,
  {
    rate: { label: "Fall, K (degrees) per km", format: "tenth" },
    seaLevel: { label: "At sea level, °C", format: "tenth" },
    fit: { label: "Fit (r²; 1 is a straight line)", format: "thousandth" },
    used: { label: "Stations used", format: "whole" },
    spread: { label: "Spread about the line, K", format: "tenth" },
    least: { label: "Fall, least, K per km", format: "tenth" },
    most: { label: "Fall, most, K per km", format: "tenth" },
  },
  {
    across: 3,
    note: "From the stations whose mean is filled in, three or more. Take stations of one mountain, and one kind of mean for all.",
  },
);

export const stationShortlist = page(
  {
    key: "stationShortlist",
    name: "Station shortlist",
    sentence: "Which weather station may speak for the animal's home: best first, out of the built-in network.",
    cautions: ["ruleOfThumb", "proxy", "stationNetwork"],
    sources: ["climatReports", "noaaNormals", "jmaNormals", "cwaNormals", "practice", "definition"],
    widths: [22.5, 8, 7.2, 7, 6, 6, 27.4, 9.6, 1, 8, 8.2],
    cautionColumns: ["J", "K"],
    example: `${EXAMPLE} an invented home; the stations are real, terms at the foot.`,
  },
  place,
  gap(1),
  network,
  gap(2),
  own,
  gap(1),
  ranked,
  gap(2),
  fall,
);
