import { ELEVATION, TEMPERATURE } from "../../functions/shared/limits";
import { block, fixed } from "./shared/address";
import { assemble, INVENTED_WITH_RECORDS } from "./shared/assemble";
import {
  cell,
  fields,
  heading,
  labels,
  MONTH_NUMBERS,
  MONTHS,
  monthLabels,
  spilled,
  text,
  together,
  type Part,
} from "./shared/part";
import { home, lower, STATION_TERMS, town, TOWN_TERMS, upper } from "./shared/scenario";
import { LATITUDE, number, whole, validationOf } from "./shared/takes";
import { isoText, onceFilled, rounded } from "./shared/words";

/** The three places side by side, three columns each. */
const places = [
  { title: "Site 1", first: "B", middle: "C", last: "D", km: 10, record: upper },
  { title: "Site 2", first: "E", middle: "F", last: "G", km: 11, record: lower },
  { title: "Your own town", first: "H", middle: "I", last: "J", km: null, record: town },
] as const;
type Place = (typeof places)[number];
const sites = places.slice(0, 2);

// The first row of each part.
const PLACES = 6;
const ANIMAL = 12;
const CHART = 17;
const RECORDS = 35;
const GLANCE = 50;
const MIDPOINTS = 68;
const ADJUSTED = 83;
const BAND = 98;
const RAIN = 113;

const bandLow = "$B$13";
const bandHigh = "$C$13";
const home$ = "$H$13";
const threshold = "$B$14";
const year = "$H$14";
const [highRate, lowRate] = ["$B$15", "$C$15"];
/** The mid-point falls at the mean of the two rates: 5.5 of 6.5 and 4.5 where they are words. */
const middleRate = `IF(COUNT(${highRate}:${lowRate})=2,AVERAGE(${highRate}:${lowRate}),"median")`;

const months = (column: string, from: number): string => block(`${column}${from + 2}`, 12);
const elevation = ({ first }: Place): string => `$${first}$${PLACES + 2}`;
const latitude = ({ first }: Place): string => `$${first}$${PLACES + 3}`;
const high = ({ first }: Place): string => months(first, RECORDS);
const low = ({ middle }: Place): string => months(middle, RECORDS);
const rain = ({ last }: Place): string => months(last, RECORDS);
const midPoint = ({ middle }: Place): string => months(middle, MIDPOINTS);
const top = (range: string): string => range.split(":")[0] as string;

/** Over a part: its name, and the name of each place over its three columns. */
const placed = (row: number, words: string, shown: readonly Place[] = places): Part =>
  together(
    heading(`A${row}`, words),
    ...shown.map(({ title, first }) =>
      cell(`${first}${row}`, "heading", `=IF(${first}$${PLACES + 1}="","${title}",${first}$${PLACES + 1})`, {
        wide: 3,
      }),
    ),
  );

/** Three titles over the columns of each place. */
const titled = (row: number, ...words: readonly (string | null)[]): Part => heading(`A${row}`, "Month", ...words);

const twice = <T>(...words: readonly T[]): readonly T[] => [...words, ...words];

/** Where the middle of a place is read at the animal's elevation; a town is read as it stands. */
const curveOf = (place: Place): string =>
  place.title === "Your own town" ? midPoint(place) : months(place.last, ADJUSTED);

const spellOf = (place: Place, part: 1 | 2 | 3): string => {
  const curve = curveOf(place);
  return `=IF(OR(${top(curve)}="",${threshold}="",${year}=""),"",IFNA(INDEX(VIV.COOLSPELL(${curve},${threshold},${year}),1,${part}),"none"))`;
};

const placeFields = together(
  heading(`A${PLACES}`, "Places", ...places.flatMap(({ title }) => [title, null, null])),
  labels(`A${PLACES + 1}`, ["Name", "Elevation, m", "Latitude, °", "Km to the animal", "Years of record"]),
  ...places.map(({ first, record, km }) =>
    together(
      cell(`${first}${PLACES + 1}`, "input", record.name, { wide: 3 }),
      cell(`${first}${PLACES + 2}`, "input", record.elevation, { format: "whole", takes: number(ELEVATION, "m") }),
      cell(`${first}${PLACES + 3}`, "input", record.latitude, { format: "hundredth", takes: number(LATITUDE, "°") }),
      km === null
        ? {}
        : cell(`${first}${PLACES + 4}`, "input", km, { format: "whole", takes: number([0, 20_000], "km") }),
      cell(`${first}${PLACES + 5}`, "input", record.period, { wide: 3 }),
    ),
  ),
);

const animalFields = together(
  heading(`A${ANIMAL}`, "The animal", ...Array<null>(9).fill(null)),
  fields("A13", [
    { label: "Lives from, to, m", value: home.bandLow, format: "whole", takes: number(ELEVATION, "m") },
    {
      label: "Cold below, °C",
      value: home.coldThreshold,
      role: "setting",
      format: "tenth",
      takes: number(TEMPERATURE, "°C"),
    },
    {
      label: "Fall, highs / lows",
      value: "high",
      role: "setting",
      note: 'How much colder it gets with elevation: a number in K per km, or "standard" 6.5, "high" 6.5, "low" 4.5, "median" 5.5, "dry" 9.8.',
    },
  ]),
  cell("C13", "input", home.bandHigh, { format: "whole", takes: number(ELEVATION, "m") }),
  cell("C15", "setting", "low"),
  labels("E13", ["Corrected to, m", "Spell begins in year"], 3),
  cell("H13", "input", home.elevation, { format: "whole", takes: number(ELEVATION, "m") }),
  cell("H14", "setting", 2026, { format: "whole", takes: whole([1901, 9997]) }),
  text("E15", "K (degrees) per km, or high 6.5, low 4.5", 1, 6),
);

const records = together(
  placed(RECORDS, "Monthly records"),
  titled(RECORDS + 1, ...twice("High °C", "Low °C", "Rain mm"), "High °C", "Low °C", "Rain mm"),
  monthLabels(`A${RECORDS + 2}`),
  ...places.flatMap(({ first, middle, last, record }) =>
    (
      [
        [first, record.high, "°C", TEMPERATURE],
        [middle, record.low, "°C", TEMPERATURE],
        [last, record.rain, "mm", [0, 3000]],
      ] as const
    ).map(([column, values, unit, limits]) => {
      const range = months(column, RECORDS);
      return together({
        blocks: [{ at: top(range), role: "input", rows: MONTHS.map((_, i) => [values[i] ?? null]) }],
        formats: [{ range, format: "tenth" }],
        validation: [validationOf(range, number(limits, unit))],
      });
    }),
  ),
);

const midPoints = together(
  placed(MIDPOINTS, "Fluctuation, K"),
  titled(MIDPOINTS + 1, ...twice("Fluct.", "Mid °C", "Dry?"), "Fluct.", "Mid °C", "Dry?"),
  monthLabels(`A${MIDPOINTS + 2}`),
  ...places.map((place) => {
    const both = `${top(high(place))}:${low(place).split(":")[1]}`;
    const all = `${top(high(place))}:${rain(place).split(":")[1]}`;
    return together(
      spilled(
        top(months(place.first, MIDPOINTS)),
        onceFilled(both, 24, `VIV.FLUCTUATION(${high(place)},${low(place)})`),
        [12, 1],
        "tenth",
      ),
      spilled(
        top(midPoint(place)),
        onceFilled(both, 24, `VIV.MEDIAN24(${high(place)},${low(place)})`),
        [12, 1],
        "tenth",
      ),
      spilled(
        top(months(place.last, MIDPOINTS)),
        onceFilled(all, 36, `IF(VIV.DRYMONTH(${midPoint(place)},${rain(place)}),"dry","no")`),
        [12, 1],
      ),
    );
  }),
);

/** The record of one kind at the animal's elevation. */
const lapsed = (place: Place, record: string, rate: string): string =>
  `=IF(OR(COUNTA(${record})<12,${elevation(place)}="",${home$}=""),"",VIV.LAPSE(${record},${elevation(place)},${home$},${rate}))`;

const adjusted = together(
  placed(ADJUSTED, "At that elevation"),
  titled(ADJUSTED + 1, ...twice("High °C", "Low °C", "Mid °C"), "Cold °C", "Town −1", "Site 2−1"),
  {
    notes: [
      {
        at: `I${ADJUSTED + 1}`,
        text: "Mid-point of your own town less that of site 1 at the animal's elevation, in degrees (K).",
      },
    ],
  },
  {
    notes: [
      {
        at: `J${ADJUSTED + 1}`,
        text: "Mid-point of site 2 less that of site 1, both at the animal's elevation, in degrees (K): how far two honest proxies differ.",
      },
    ],
  },
  monthLabels(`A${ADJUSTED + 2}`),
  ...sites.map((place) => {
    const [highs, lows] = [months(place.first, ADJUSTED), months(place.middle, ADJUSTED)];
    return together(
      spilled(top(highs), lapsed(place, high(place), highRate), [12, 1], "tenth"),
      spilled(top(lows), lapsed(place, low(place), lowRate), [12, 1], "tenth"),
      spilled(
        top(months(place.last, ADJUSTED)),
        `=IF(OR(${top(highs)}="",${top(lows)}=""),"",VIV.MEDIAN24(${highs},${lows}))`,
        [12, 1],
        "tenth",
      ),
    );
  }),
  ...(
    [
      ["H", () => `=IF(${threshold}="","",${threshold})`],
      [
        "I",
        (row: number) =>
          `=IF(OR(D${row}="",I${row - ADJUSTED + MIDPOINTS}=""),"",I${row - ADJUSTED + MIDPOINTS}-D${row})`,
      ],
      ["J", (row: number) => `=IF(OR(D${row}="",G${row}=""),"",G${row}-D${row})`],
    ] as const
  ).map(([column, each]) =>
    together({
      blocks: [
        { at: `${column}${ADJUSTED + 2}`, role: "computed", rows: MONTHS.map((_, i) => [each(ADJUSTED + 2 + i)]) },
      ],
      formats: [{ range: months(column, ADJUSTED), format: "tenth" }],
    }),
  ),
  {
    rules: [
      ...["D", "G"].map((column) => ({
        range: months(column, ADJUSTED),
        when: `=AND(ISNUMBER(${column}${ADJUSTED + 2}),ISNUMBER($H${ADJUSTED + 2}),${column}${ADJUSTED + 2}<$H${ADJUSTED + 2})`,
        look: "cold" as const,
      })),
    ],
  },
);

const band = together(
  placed(BAND, "Middle, band, °C", sites),
  heading(`H${BAND}`, "How sure", null, null),
  titled(BAND + 1, ...twice("Least", "Likely", "Most"), null, null, null),
  monthLabels(`A${BAND + 2}`),
  ...sites.map((place) => {
    const middle = midPoint(place);
    return spilled(
      `${place.first}${BAND + 2}`,
      `=IF(OR(${top(middle)}="",${elevation(place)}="",${home$}="",${latitude(place)}=""),"",` +
        `VIV.LAPSEBAND(${middle},${elevation(place)},${home$},"median",${MONTH_NUMBERS},${latitude(place)}))`,
      [12, 3],
      "tenth",
    );
  }),
  text(
    `H${BAND + 2}`,
    "Eight months in nine at mountain stations that had no part in it lay inside such a band, four in five in western North America.",
    7,
    3,
  ),
);

const glance = together(
  placed(GLANCE, "At a glance"),
  labels(`A${GLANCE + 1}`, [
    "Climate class",
    "Dry months",
    "Rain a year, mm",
    "Warmest month, °C",
    "Coldest month, °C",
    "Cold spell from",
    "to",
    "days",
    "m outside the band",
  ]),
  ...places.map((place) => {
    const { first, last } = place;
    const at = (row: number): string => `${first}${GLANCE + row}`;
    const curve = curveOf(place);
    return together(
      cell(
        at(1),
        "computed",
        `=IF(OR(${top(midPoint(place))}="",COUNTA(${rain(place)})<12,${latitude(place)}=""),"",VIV.KOPPEN(${midPoint(place)},${rain(place)},${latitude(place)}))`,
      ),
      cell(at(2), "computed", `=IF(${top(months(last, MIDPOINTS))}="","",COUNTIF(${months(last, MIDPOINTS)},"dry"))`, {
        format: "whole",
      }),
      cell(at(3), "computed", onceFilled(rain(place), 12, `SUM(${rain(place)})`), { format: "whole" }),
      cell(at(4), "computed", `=IF(${top(curve)}="","",MAX(${curve}))`, { format: "tenth" }),
      cell(at(5), "computed", `=IF(${top(curve)}="","",MIN(${curve}))`, { format: "tenth" }),
      cell(at(6), "computed", spellOf(place, 1), { format: "date" }),
      cell(at(7), "computed", spellOf(place, 2), { format: "date" }),
      cell(at(8), "computed", spellOf(place, 3), { format: "whole" }),
      { merges: [6, 7].map((row) => `${at(row)}:${last}${GLANCE + row}`) },
      place.title === "Your own town"
        ? {}
        : cell(
            at(9),
            "computed",
            `=IF(OR(${elevation(place)}="",${bandLow}="",${bandHigh}=""),"",VIV.STATIONGAP(${elevation(place)},${bandLow},${bandHigh}))`,
            { format: "whole" },
          ),
    );
  }),
  {
    notes: [
      {
        at: `A${GLANCE + 1}`,
        text: "Köppen's letters, of the record as it stands. First: A hot, B dry, C mild winter, D cold winter, E polar. Second: s dry summer, w dry winter, f neither. Third: a hot, b warm, c cool summer.",
      },
    ],
  },
  text(
    `A${GLANCE + 10}`,
    "Warmest, coldest and cold spell: the sites at the animal's elevation, the town as it stands.",
    1,
    10,
  ),
  ...sites.map(({ first }, i) =>
    text(
      `A${GLANCE + 11 + 3 * i}`,
      `=IF(OR(${first}${PLACES + 1}="",${first}${PLACES + 2}="",${bandLow}="",${bandHigh}=""),"",` +
        `VIV.PROXYNOTE(${first}${PLACES + 1},${first}${PLACES + 2},${bandLow},${bandHigh},${first}${PLACES + 4},${middleRate}))`,
      3,
      10,
    ),
  ),
);

/** Where the proxy notes stand: which station, how far away, how corrected. */
const provenance = sites.map((_, i) => `A${GLANCE + 11 + 3 * i}`);
const [site1, site2] = sites as [Place, Place];
const adjustedTop = `B${ADJUSTED + 2}`;
const summary =
  `=IF(OR(${adjustedTop}="",${threshold}=""),"",` +
  `"At "&${home$}&" m, site 1: warmest days "&${rounded(`MAX(${months("B", ADJUSTED)})`)}&" °C, coldest nights "&${rounded(`MIN(${months("C", ADJUSTED)})`)}` +
  `&" °C; "&COUNTIF(${months("D", ADJUSTED)},"<"&${threshold})&" months with a mid-point below "&${threshold}&" °C"` +
  `&IF(ISNUMBER(${site1.first}${GLANCE + 6}),", cold from "&${isoText(`${site1.first}${GLANCE + 6}`)}&" to "&${isoText(`${site1.first}${GLANCE + 7}`)},"")&"."` +
  `&IF(J${ADJUSTED + 2}="",""," The two sites differ by up to "&${rounded(`MAX(MAX(${months("J", ADJUSTED)}),-MIN(${months("J", ADJUSTED)}))`)}&" K."))`;

const rainWords = (place: Place): string =>
  `IF(COUNTA(${rain(place)})<12,"",${place.first}$${PLACES + 1}&": "&ROUND(SUM(${rain(place)}),0)&" mm a year, driest "` +
  `&INDEX(${fixed(`A${RECORDS + 2}:A${RECORDS + 13}`)},MATCH(MIN(${rain(place)}),${rain(place)},0))&". ")`;

export const nativeClimate = assemble(
  {
    key: "nativeClimate",
    name: "Native climate",
    sentence: "Two stations side by side, corrected to the animal's elevation, and your own town.",
    cautions: ["proxy", "lapseBand", "midPoint"],
    sources: ["observedLapse", "standardAtmosphere", "midRange", "histospline", "peel2007", "walterLieth"],
    widths: [17, 7, 7, 7, 7, 7, 7, 7, 7, 7, 1, 13.5, 13.5],
    cautionColumns: ["L", "M"],
    example: INVENTED_WITH_RECORDS,
    foot: [STATION_TERMS, TOWN_TERMS],
  },
  placeFields,
  animalFields,
  {
    charts: [
      {
        title: "Highs and lows at the animal's elevation",
        area: `A${CHART}:J${CHART + 15}`,
        along: `A${ADJUSTED + 2}:A${ADJUSTED + 13}`,
        axis: "°C",
        series: [
          { draw: "band", name: "Site 1, lows to highs", low: months("C", ADJUSTED), high: months("B", ADJUSTED) },
          { draw: "band", name: "Site 2, lows to highs", low: months("F", ADJUSTED), high: months("E", ADJUSTED) },
          { draw: "threshold", name: "Cold", values: months("H", ADJUSTED) },
        ],
        summary: `A${CHART + 16}`,
        provenance,
      },
      {
        title: "Rain",
        area: `A${RAIN}:J${RAIN + 13}`,
        along: `A${RECORDS + 2}:A${RECORDS + 13}`,
        axis: "mm a month",
        series: places.map((place) => ({ draw: "bar" as const, name: place.title, values: rain(place) })),
        summary: `A${RAIN + 14}`,
        provenance,
      },
    ],
  },
  text(`A${CHART + 16}`, summary, 2, 10),
  records,
  glance,
  midPoints,
  adjusted,
  band,
  text(`A${RAIN + 14}`, `=${rainWords(site1)}&${rainWords(site2)}&${rainWords(places[2])}`, 2, 10),
);
