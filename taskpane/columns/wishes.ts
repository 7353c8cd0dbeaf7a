import { clutchRatio } from "../../functions/breeding/clutchRatio";
import { hatchDates } from "../../functions/breeding/hatchDates";
import { birthDates } from "../../functions/breeding/birthDates";
import { dewPoint } from "../../functions/air/dewPoint";
import { vapourDeficit } from "../../functions/air/vapourDeficit";
import { fluctuation } from "../../functions/climate/fluctuation";
import { lapse } from "../../functions/climate/lapse";
import { median24 } from "../../functions/climate/median24";
import { stationGap } from "../../functions/climate/stationGap";
import { age } from "../../functions/condition/age";
import { growthRate } from "../../functions/condition/growthRate";
import { massTrend } from "../../functions/condition/massTrend";
import { dayLength } from "../../functions/daylight/dayLength";
import type { AnyDefinition, Parameter } from "../../functions/define";
import { nextMeal } from "../../functions/feeding/nextMeal";
import { preyMass } from "../../functions/feeding/preyMass";
import { preyRatio } from "../../functions/feeding/preyRatio";
import { refusals } from "../../functions/feeding/refusals";
import { figuresOf } from "../../functions/tables/figures";
import { latest } from "../../functions/tables/latest";
import { massLoss } from "../../functions/winter/massLoss";
import { setPoint } from "../../functions/winter/setPoint";
import { stage } from "../../functions/winter/stage";
import type { Expression } from "./expression";
import { wantOf, wishOf, type Has, type Told, type Want, type Wish } from "./wish";

const parameterOf = (definition: AnyDefinition, name: string): Parameter => definition.parameters[name] as Parameter;

const wholeLog: readonly Want[] = [
  wantOf("dates", parameterOf(latest, "dates"), "column"),
  wantOf("animals", parameterOf(latest, "animals"), "column", {
    label: "Whose row it is",
    concept: "animal",
    optional: true,
  }),
];
const masses = wantOf("masses", parameterOf(massTrend, "masses"), "column");

const whose = (has: Has): string | undefined => (has("animals") ? "animals" : undefined);
/** The last entry so far, on or before a day: 0 is what was entered, 1 its day. */
const lastEntry = (has: Has, of: string, on: Expression, pick: number): Expression => ({
  call: latest,
  given: [
    { toHere: "dates" },
    { toHere: of },
    on,
    ...(has("animals") ? [{ toHere: "animals" }, { cell: "animals" }] : []),
  ],
  pick,
});
const dayBefore: Expression = { less: [{ cell: "dates" }, 1] };
const blanks = (names: readonly string[], has: Has) => names.filter(has).map((name) => ({ blank: name }));

const growth: Wish = {
  key: "growth",
  words: "How fast it has grown since the weighing before, % of its mass a day",
  heading: "Growth, % per day",
  definition: growthRate,
  answer: 0,
  unit: "percentPerDay",
  wants: [...wholeLog, masses],
  looksBack: true,
  guards: (has) => [
    ...blanks(["dates", "masses", "animals"], has),
    { firstOf: { dates: "dates", animal: whose(has) } },
  ],
  body: (has) => ({
    call: growthRate,
    given: [
      lastEntry(has, "masses", dayBefore, 0),
      lastEntry(has, "masses", dayBefore, 1),
      { cell: "masses" },
      { cell: "dates" },
    ],
  }),
};

const daysSince: Wish = {
  key: "daysSince",
  words: "Days since the entry before",
  heading: "Days since the entry before",
  definition: latest,
  answer: 0,
  unit: "day",
  wants: wholeLog,
  looksBack: true,
  guards: (has) => [...blanks(["dates", "animals"], has), { firstOf: { dates: "dates", animal: whose(has) } }],
  body: (has) => ({ less: [{ cell: "dates" }, lastEntry(has, "dates", dayBefore, 1)] }),
};

const lost: Wish = {
  key: "lost",
  words: "What it has lost since the cold began, as a share of its mass then",
  heading: "Lost since the cold began",
  definition: massLoss,
  answer: 0,
  unit: "share",
  wants: [
    ...wholeLog,
    masses,
    wantOf("since", parameterOf(latest, "on"), "once", { label: "Day the cold began", optional: false }),
  ],
  looksBack: true,
  guards: (has) => [...blanks(["dates", "masses", "animals"], has), { before: "since", date: "dates" }],
  body: (has) => ({
    call: massLoss,
    given: [lastEntry(has, "masses", { once: "since" }, 0), { cell: "masses" }],
  }),
};

/** Every definition that is named here answers row by row. */
const told = (definition: AnyDefinition, more: Told): Wish => wishOf(definition, more) as Wish;

/** What keepers want of a column, in the order in which it is offered. */
export const wishes: readonly Wish[] = [
  told(preyRatio, {
    words: "How large a meal was, as a share of the animal's mass",
    heading: "Meal, share of the animal",
  }),
  told(nextMeal, { words: "When the next meal is due", heading: "Next meal", with: ["plan"] }),
  told(refusals, { words: "How often in a row food was refused", heading: "Refused in a row" }),
  daysSince,
  growth,
  told(massTrend, {
    words: "The trend of its mass so far, g a week",
    heading: "Trend, g a week",
    atLeast: { rows: 3, of: "masses" },
  }),
  told(latest, {
    words: "The last mass known on the day, where not every row has one",
    heading: "Last mass, g",
    mayBeBlank: ["values"],
    wants: { values: { label: "Mass", concept: "mass" } },
  }),
  lost,
  told(preyMass, { words: "The mass of a meal of a share that I choose", heading: "Meal, g" }),
  told(age, { words: "How old it was on the day, months", heading: "Age, months", columns: ["on"] }),
  told(setPoint, { words: "The temperature of my winter plan on the day", heading: "Set-point, °C" }),
  told(stage, { words: "The stage of my winter plan on the day", heading: "Stage" }),
  told(fluctuation, { words: "By how much day and night differ", heading: "High less low, K" }),
  told(median24, { words: "The middle of high and low", heading: "Middle, °C" }),
  told(lapse, { words: "A station's temperature at my animal's elevation", heading: "At my elevation, °C" }),
  told(stationGap, {
    words: "How far a station lies from my animal's band of elevations",
    heading: "Gap to the band, m",
  }),
  told(dayLength, { words: "How long the day was", heading: "Day length, h" }),
  told(dewPoint, { words: "The dew point: below it water settles", heading: "Dew point, °C" }),
  told(vapourDeficit, { words: "How strongly the air dries", heading: "Vapour deficit, kPa" }),
  told(hatchDates, { words: "When a clutch should hatch", heading: "Hatch, likely", answer: 2 }),
  told(birthDates, { words: "When young should be laid or born", heading: "Due from" }),
  told(clutchRatio, {
    words: "How large a clutch was, as a share of the female",
    heading: "Clutch, share of the female",
  }),
  told(figuresOf, {
    words: "The figures of a column in which words stand too",
    heading: "Figures",
    columns: ["range"],
  }),
];
