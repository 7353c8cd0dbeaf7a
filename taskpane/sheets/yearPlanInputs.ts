import { setPointFields } from "./shared/commonFields";
import { form } from "./shared/form";
import { log } from "./shared/log";
import { MONTHS } from "./shared/part";
import { home, homeYear, planYear } from "./shared/scenario";
import { date, LATITUDE, number, oneOf, whole } from "./shared/takes";
import { planDateFields } from "./shared/winterPlan";

/** What the keeper fills in on the Year plan. */

/** The curve of the animals' home. */
export const months = log(
  "home",
  MONTHS.length,
  {
    month: { title: "At home", label: MONTHS },
    high: {
      title: "High",
      unit: "°C",
      needed: "Highs",
      input: homeYear.high,
      from: "nativeClimate.year.high",
      format: "tenth",
      takes: number([-60, 60]),
    },
    low: {
      title: "Low",
      unit: "°C",
      needed: "Lows",
      input: homeYear.low,
      from: "nativeClimate.year.low",
      format: "tenth",
      takes: number([-60, 60]),
    },
    rain: {
      title: "Rain",
      unit: "mm",
      needed: "Rain",
      input: homeYear.rain,
      from: "nativeClimate.year.rain",
      format: "whole",
      takes: number([0, 3000]),
    },
    ground: {
      title: "Ground",
      measures: "°C",
      input: homeYear.groundLow,
      from: "nativeClimate.year.groundLow",
      format: "tenth",
      takes: number([-60, 60]),
      note: "Low of each month at the animal's depth, from the sheet Native climate, or none. It counts only where the nights are to follow it.",
    },
  },
  {
    note: "Highs and lows at the animal's elevation and rain, from the sheet Native climate. A cell may point there: type = and click its figure.",
  },
);

/** What keeps the nights from getting colder: the keeper's own limit, or the ground's low at the animal's depth too. */
export const NIGHTS_BY = ["own limit", "ground too"] as const;

const limit = (label: string, value: number) =>
  ({ label, needed: true, unit: "°C", value, format: "tenth", takes: number([0, 40]) }) as const;
const dates = planDateFields();
/** The keeper's year: its first week, the winter plan, the limits of day and night. */
export const year = form(
  "year",
  null,
  {
    start: {
      label: "First week begins on",
      needed: "First week",
      value: planYear.firstWeek,
      format: "date",
      takes: date,
    },
    ...dates,
    lastMeal: { ...dates.lastMeal, needed: "Winter plan" },
    ...setPointFields("coolingPlan.plan"),
    dayLeast: limit("By day at least", 22),
    dayMost: limit("By day at most", 27),
    nightLeast: limit("By night at least", 16),
    nightMost: limit("By night at most", 20),
    nightsFrom: {
      label: "Nights no colder than",
      value: NIGHTS_BY[0],
      role: "setting",
      takes: oneOf(...NIGHTS_BY),
      note: "own limit: the line above alone. ground too: also not below the ground's low at the animal's depth; your own limits stay.",
    },
    latitude: {
      label: "Latitude for day length",
      needed: "Latitude",
      unit: "°",
      value: home.latitude,
      from: "nativeClimate.place.latitude",
      format: "hundredth",
      takes: number(LATITUDE),
    },
    interval: {
      label: "Days between meals",
      value: 7,
      role: "setting",
      format: "whole",
      takes: whole([3, 60], "days"),
      from: "animals.settings.adultEvery",
    },
  },
  { across: 4 },
);
/** From when on a week is called dry, wet or cold. */
export const limits = form(
  "limits",
  null,
  {
    dry: {
      label: "Dry below",
      unit: "mm a week",
      value: 10,
      role: "setting",
      format: "whole",
      takes: number([0, 1000]),
    },
    wet: {
      label: "Wet above",
      unit: "mm a week",
      value: 30,
      role: "setting",
      format: "whole",
      takes: number([0, 1000]),
    },
    cold: {
      label: "Cold below",
      unit: "°C",
      value: home.coldThreshold,
      from: "nativeClimate.choices.cold",
      role: "setting",
      format: "tenth",
      takes: number([-20, 30]),
    },
  },
  { across: 3 },
);
