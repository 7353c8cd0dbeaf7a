import { VERSION } from "../../functions/release";
import { ELEVATION } from "../../functions/shared/limits";
import { EXAMPLE } from "./shared/assemble";
import { setPointFields } from "./shared/commonFields";
import { form } from "./shared/form";
import { f, once } from "./shared/formula";
import { log } from "./shared/log";
import { page } from "./shared/page";
import { gap } from "./shared/region";
import { begins } from "./shared/rules";
import { title, words } from "./shared/running";
import { lower, STATION_TERMS, TODAY, town, TOWN_TERMS, upper } from "./shared/scenario";
import { either } from "./shared/systems";
import { date, number } from "./shared/takes";
import { datesIn, hasPlan, planDateFields } from "./shared/winterPlan";
import { isoText } from "./shared/words";

const WIDTHS = [25, 11, 11, 22, 16, 1, 13, 12] as const;
const LEFT = 5;
const RIGHT = WIDTHS.length - 1;
/** The lines that the sources and the cautions of a function take at most. */
const SOURCE_ROWS = 8;
const CAUTION_ROWS = 4;

const workbook = form("workbook", "This workbook", {
  keeper: { label: "Kept by", value: "A keeper (invented)", wide: 4 },
  animals: { label: "Animals", value: "Five montane snakes (invented)", wide: 4 },
  changed: { label: "Last changed on", value: TODAY, format: "date", takes: date },
  version: { label: "Version of the add-in", value: "=VIV.RELEASE()" },
  madeWith: {
    label: "Version when it was made",
    value: VERSION,
    note: "Type it once. Where it differs from the line above, look at the figures again.",
  },
  verdict: {
    value: ({ version, madeWith }) =>
      once`IF(${version}=${madeWith},"same version","another version: look at the figures again")`,
    rules: [begins("another", "care")],
  },
});

const today = form(
  "today",
  "Today's plan",
  {
    on: { label: "On", value: TODAY, format: "date", takes: date, from: "animals.reminders.today" },
    ...planDateFields(),
    ...setPointFields("coolingPlan.plan", 1, false),
  },
  { across: 1 },
);
const dates = datesIn(today);
const isReady = `AND(${today.on}<>"",${hasPlan(dates)})`;
const asks = (title: string, part: number): string =>
  `"${title}: "&INDEX(VIV.STAGECARE(${today.on},${dates}),1,${part})&". "`;
/** For who winters by it; an animal that does not is told on the sheet Today. */
const planned = words(
  "planned",
  [10, 3],
  f`IF(${isReady},"For animals that winter by this plan, on "&${isoText(`${today.on}`)}&": "&VIV.STAGE(${today.on},${dates})&". "&IF(OR(${today.warmSet}="",${today.coldSet}=""),"",IF(VIV.STAGE(${today.on},${dates})="Feeding","","Set-point "&ROUND(VIV.SETPOINT(${today.on},${dates},${today.warmSet},${today.coldSet}),1)&" °C. "))&${[asks("Food", 1), asks("Light", 2), asks("Moisture", 3), asks("Nights", 4), asks("Soaking", 5)].join("&")}&"What each animal needs today stands on the sheet Today.","No whole plan, or no day: what is done today is not told here.")`,
);

/** What somebody reads who opens the workbook without the add-in. */
const reading = [
  "For everyone: the figures were worked out with worksheet functions whose names begin with VIV. Without the add-in they stay as they were saved, until something is changed.",
  "A cell that shows #NAME? was worked out again without the add-in. Close without saving and open the workbook again, or ask the keeper for a frozen copy, which holds values alone.",
  `${either("Temperatures in °C, differences of temperature in K (one K is one degree), elevations in m, masses in g, rain in mm", "Temperatures and their differences in °F, elevations in feet, masses in ounces, rain in inches")}; dates as year-month-day. A share of 0.05 is 5 %.`,
  "A station shows the year's curve in the open air, not the place where an animal sits. Schedules are practice unless a source is given. Ask a reptile vet before an animal is cooled; follow local law on keeping, trade and release.",
] as const;

const records = [
  { ...upper, takenFrom: "DWD, CLIMAT reports", terms: "CC BY 4.0" },
  { ...lower, takenFrom: "DWD, CLIMAT reports", terms: "CC BY 4.0" },
  { ...town, takenFrom: "NOAA NCEI, normals", terms: "US Government" },
] as const;

const stations = log(
  "stations",
  8,
  {
    name: { title: "Station", input: records.map(({ name }) => name) },
    elevation: {
      title: "Elevation",
      unit: "m",
      input: records.map(({ elevation }) => elevation),
      format: "whole",
      takes: number(ELEVATION),
    },
    years: { title: "Years", input: records.map(({ period }) => period) },
    takenFrom: { title: "Taken from", input: records.map(({ takenFrom }) => takenFrom) },
    terms: { title: "Terms", input: records.map(({ terms }) => terms) },
  },
  { title: "Where the station records come from", grows: true },
);

/** Sentences as running words: a cell of a table would cut them off. */
const joined = (sentences: string): string => `TEXTJOIN(CHAR(10),TRUE,${sentences})`;
/** A function's name, and beside it what it rests on. */
const asked = (example: string, i: number) => {
  const name = log(`asked${i + 1}`, 1, { function: { title: null, input: [example] } }, { titleLines: 0 });
  const about = name.function.at(1);
  const cautions = form(`cautionsOf${i + 1}`, null, { label: { label: "and its cautions" } });
  return {
    A: [name, gap(SOURCE_ROWS - 1), cautions],
    B: [
      words(`sources${i + 1}`, [SOURCE_ROWS, RIGHT], `=IF(OR(${about}=""),"",${joined(`VIV.SOURCE(${about})`)})`),
      words(
        `cautions${i + 1}`,
        [CAUTION_ROWS, RIGHT],
        `=IF(OR(${about}=""),"",IFNA(${joined(`VIV.CAUTION(${about})`)},"No caution of its own."))`,
      ),
    ],
  };
};

export const aboutThisWorkbook = page(
  {
    key: "aboutThisWorkbook",
    name: "About this workbook",
    sentence: "What was used, by whom and where it comes from, for a reader without the add-in.",
    cautions: ["noVet", "noFoodInTheCold", "proxy"],
    sources: ["practice", "definition"],
    widths: WIDTHS,
    cautionColumns: ["G", "H"],
    example: `${EXAMPLE} an invented keeper; the station records are real, terms at the foot.`,
    foot: [STATION_TERMS, TOWN_TERMS],
  },
  workbook,
  gap(1),
  { A: [today], C: [planned] },
  gap(1),
  title("To read it", LEFT),
  ...reading.map((line, i) => words(`reading${i + 1}`, [i === reading.length - 1 ? 3 : 2, LEFT], line)),
  gap(1),
  stations,
  gap(2),
  title("What a function rests on: type its name", WIDTHS.length),
  ...["LAPSE", "RAMPDATES", "BOXAIR"].map(asked),
);
