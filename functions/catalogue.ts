import type { AnyDefinition } from "./define";
import { dewPoint } from "./air/dewPoint";
import { humidityAfter } from "./air/humidityAfter";
import { pressure } from "./air/pressure";
import { vapourDeficit } from "./air/vapourDeficit";
import { waterInAir } from "./air/waterInAir";
import { coolSpell } from "./climate/coolSpell";
import { daily } from "./climate/daily";
import { dryMonth } from "./climate/dryMonth";
import { fluctuation } from "./climate/fluctuation";
import { hourCurve } from "./climate/hourCurve";
import { koppen } from "./climate/koppen";
import { lapse } from "./climate/lapse";
import { lapseBand } from "./climate/lapseBand";
import { lapseFit } from "./climate/lapseFit";
import { median24 } from "./climate/median24";
import { onDate } from "./climate/onDate";
import { seasonShift } from "./climate/seasonShift";
import { siteClimate } from "./climate/siteClimate";
import { siteNote } from "./climate/siteNote";
import { stationGap } from "./climate/stationGap";
import { stationPlace } from "./climate/stationPlace";
import { stationRank } from "./climate/stationRank";
import { stationRecord } from "./climate/stationRecord";
import { stations } from "./climate/stations";
import { underground } from "./climate/underground";
import { dayLength } from "./daylight/dayLength";
import { cautionOf } from "./sharing/caution";
import { proxyNote } from "./sharing/proxyNote";
import { release } from "./sharing/release";
import { sourceOf } from "./sharing/source";
import { clutchRatio } from "./breeding/clutchRatio";
import { degreeDays } from "./breeding/degreeDays";
import { hatchDates } from "./breeding/hatchDates";
import { hatchForecast } from "./breeding/hatchForecast";
import { incubationDays } from "./breeding/incubationDays";
import { pairingCheck } from "./breeding/pairingCheck";
import { birthDates } from "./breeding/birthDates";
import { age } from "./condition/age";
import { growthRate } from "./condition/growthRate";
import { massTrend } from "./condition/massTrend";
import { scaledMass } from "./condition/scaledMass";
import { mealCheck } from "./feeding/mealCheck";
import { mealCount } from "./feeding/mealCount";
import { mealDates } from "./feeding/mealDates";
import { nextMeal } from "./feeding/nextMeal";
import { preyItems } from "./feeding/preyItems";
import { preyMass } from "./feeding/preyMass";
import { preyRatio } from "./feeding/preyRatio";
import { refusals } from "./feeding/refusals";
import { boxAir } from "./winter/boxAir";
import { lossTrend } from "./winter/lossTrend";
import { massLoss } from "./winter/massLoss";
import { metabolicLoss } from "./winter/metabolicLoss";
import { oxygenUse } from "./winter/oxygenUse";
import { q10Rate } from "./winter/q10Rate";
import { figuresOf } from "./tables/figures";
import { latest } from "./tables/latest";
import { rollCall } from "./tables/rollCall";
import { dayTable } from "./readings/dayTable";
import { readingGaps } from "./readings/readingGaps";
import { timeOutside } from "./readings/timeOutside";
import { tracking } from "./readings/tracking";
import { weeksBelow } from "./readings/weeksBelow";
import { ramp } from "./winter/ramp";
import { rampCheck } from "./winter/rampCheck";
import { rampDates } from "./winter/rampDates";
import { rampDatesTo } from "./winter/rampDatesTo";
import { setPoint } from "./winter/setPoint";
import { stage } from "./winter/stage";
import { stageCare } from "./winter/stageCare";
import { due } from "./winter/due";
import { endEarly } from "./winter/endEarly";
import { openEvery } from "./winter/openEvery";
import { winterReady } from "./winter/winterReady";
import { winterSigns } from "./winter/winterSigns";

/** A group of functions of the reference. */
export interface Topic {
  readonly title: string;
  readonly functions: readonly AnyDefinition[];
}

// These two speak of every function, themselves included, so they ask for the list when they are called.
const source = sourceOf(() => catalogue);
const caution = cautionOf(() => catalogue);

/** Every function, in the order of the reference. */
export const topics: readonly Topic[] = [
  {
    title: "Climate: reading a native climate from station records",
    functions: [
      fluctuation,
      median24,
      lapse,
      lapseBand,
      lapseFit,
      stationGap,
      stationRank,
      onDate,
      daily,
      coolSpell,
      seasonShift,
      dryMonth,
      koppen,
      hourCurve,
      stations,
      stationRecord,
      stationPlace,
      siteClimate,
      siteNote,
      underground,
    ],
  },
  {
    title: "Air and daylight",
    functions: [pressure, dewPoint, vapourDeficit, waterInAir, humidityAfter, dayLength],
  },
  {
    title: "Winter: into the cold and back",
    functions: [
      ramp,
      rampDates,
      rampDatesTo,
      setPoint,
      stage,
      stageCare,
      due,
      rampCheck,
      winterReady,
      endEarly,
      massLoss,
      lossTrend,
      oxygenUse,
      boxAir,
      openEvery,
      winterSigns,
      metabolicLoss,
      q10Rate,
    ],
  },
  {
    title: "Feeding",
    functions: [preyRatio, preyMass, preyItems, nextMeal, mealDates, mealCount, mealCheck, refusals],
  },
  {
    title: "Condition",
    functions: [growthRate, massTrend, scaledMass, age],
  },
  {
    title: "Breeding",
    functions: [hatchDates, incubationDays, hatchForecast, degreeDays, clutchRatio, pairingCheck, birthDates],
  },
  {
    title: "Readings: what a data logger saw",
    functions: [dayTable, timeOutside, readingGaps, tracking, weeksBelow],
  },
  {
    title: "Tables: a log of your own, of one animal or of many",
    functions: [latest, rollCall, figuresOf],
  },
  {
    title: "Sharing: saying where a figure comes from",
    functions: [proxyNote, source, caution, release],
  },
];

export const catalogue: readonly AnyDefinition[] = topics.flatMap(({ functions }) => functions);
