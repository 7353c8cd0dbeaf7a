import { limits, breeders } from "./breedingSeasonAnimals";
import { pairings as seen } from "./breedingSeasonExample";
import { f, once } from "./shared/formula";
import { log, LOG_ROWS } from "./shared/log";
import type { Cell } from "./shared/names";
import { begins } from "./shared/rules";
import { animals, clutch, day } from "./shared/scenario";
import { date, MASS, number, oneOf, whole } from "./shared/takes";

/** The clutches of the season, what they cost, and the pairings. */

const CLUTCH_ROWS = 10;
const { femaleAge, maleAge, clutches: mostClutches } = limits;
const { label: labels, sex: sexes, born: births, mass: nowMasses } = breeders;

/** The cell of the animals' table in the row of this animal. */
const ofAnimal = (column: unknown, label: unknown): string =>
  `INDEX(${String(column)},MATCH(${String(label)},${labels},0))`;

export const clutches = log(
  "clutches",
  CLUTCH_ROWS,
  {
    mother: { title: "Clutch of", input: [animals.juniper.label], note: "The female, as she is called above." },
    eggs: { title: "Eggs", input: [clutch.eggs], format: "whole", takes: whole([1, 100], "eggs") },
    laid: { title: "Laid", input: [clutch.laid], format: "date", takes: date },
    mass: {
      title: "Clutch,",
      unit: "g",
      input: [clutch.mass],
      format: "tenth",
      takes: number(MASS),
      note: "All the eggs, weighed when laid.",
    },
    before: {
      title: "Before,",
      unit: "g",
      input: [clutch.before],
      format: "tenth",
      takes: number(MASS),
      note: "Her mass before the pairing: what she has to come back to.",
    },
    after: {
      title: "After,",
      unit: "g",
      input: [clutch.after],
      format: "tenth",
      takes: number(MASS),
      note: "Her mass after laying.",
    },
    share: {
      title: "Share of mass",
      each: ({ mass, after }) => once`VIV.CLUTCHRATIO(${mass},${after})`,
      format: "percent",
      note: "Relative clutch mass: clutch ÷ (female after laying + clutch).",
    },
    egg: { title: "One egg,", unit: "g", each: ({ eggs, mass }) => once`${mass}/${eggs}`, format: "tenth" },
    recovery: {
      title: "Recovery",
      wide: 2,
      // Where she is not back it is cut, not rounded: 99.9 is not 100.
      each: ({ mother, before }) => {
        const now = ofAnimal(nowMasses, mother);
        const ofBefore = `100*${now}/${before}`;
        return f`IF(OR(${mother}="",${before}="",COUNTIF(${labels},${mother})=0),"",IF(${now}="","",IF(${now}<${before},"Not back to her weight: "&INT(${ofBefore}),"Back to her weight: "&ROUND(${ofBefore},0))&" %"))`;
      },
      rules: [begins("Not", "care"), begins("Back", "good")],
    },
  },
  { titleLines: 2, grows: true },
);

const monthsOn = (label: Cell, then: Cell): string =>
  f`IF(OR(${label}="",${then}="",COUNTIF(${labels},${label})=0),"",IF(${ofAnimal(births, label)}="","",VIV.AGE(${ofAnimal(births, label)},${then})))`;

/** Held against the limits of the day of the pairing, not of today; the gravest thing only. */
const pairingWords = (she: Cell, he: Cell, then: Cell, mating: Cell, herMonths: Cell, hisMonths: Cell): string => {
  const young = (months: Cell, least: Cell): string => `AND(ISNUMBER(${months}),${least}<>"",N(${months})<${least})`;
  const unknown = (label: Cell) => [`COUNTIF(${labels},${label})=0`, `"Not in the list above: "&${label}`] as const;
  const cases: readonly (readonly [when: string, words: string])[] = [
    [`OR(${she}="",${he}="")`, '""'],
    unknown(she),
    unknown(he),
    [`OR(${ofAnimal(sexes, she)}="male",${ofAnimal(sexes, he)}="female")`, '"Stop: not a female and a male"'],
    [`AND(${mating}="mated",NOT(ISNUMBER(${then})))`, '"Not dated: she counts as gravid"'],
    [young(herMonths, femaleAge), '"Stop: she was too young"'],
    [young(hisMonths, maleAge), '"Stop: he was too young"'],
    [
      `AND(${then}<>"",${mostClutches}<>"",COUNTIFS(${clutches.mother},${she},${clutches.laid},"<"&${then})>=${mostClutches})`,
      '"Stop: enough clutches already"',
    ],
    [`AND(${mating}="mated",${limits.on}<>"",${then}>${limits.on})`, '"Not counted: after the day of the check"'],
  ];
  return `=${cases.reduceRight((otherwise, [when, said]) => `IF(${when},${said},${otherwise})`, '""')}`;
};

export const pairings = log(
  "pairings",
  LOG_ROWS,
  {
    female: { title: "Female", input: seen.map(() => animals.juniper.label) },
    male: { title: "Male", input: seen.map(() => animals.rowan.label) },
    on: { title: "Together", input: seen.map(({ iso }) => day(iso)), format: "date", takes: date },
    seen: { title: "Seen", input: seen.map((one) => one.seen), takes: oneOf("mated", "together", "nothing") },
    herMonths: {
      title: "Her months",
      each: ({ female, on }) => monthsOn(female, on),
      format: "whole",
      note: "Age on that day.",
    },
    hisMonths: {
      title: "His months",
      each: ({ male, on }) => monthsOn(male, on),
      format: "whole",
      note: "Age on that day.",
    },
    standsOut: {
      title: "What stands out",
      wide: 4,
      each: ({ female, male, on, seen: mating, herMonths, hisMonths }) =>
        pairingWords(female, male, on, mating, herMonths, hisMonths),
      rules: [begins("Stop", "stop", 3), begins("Not", "care", 3)],
    },
    earliest: {
      title: "Due from",
      skip: 1,
      each: ({ on, seen }) =>
        f`IF(OR(${on}="",${seen}<>"mated",${limits.earliest}="",${limits.latest}=""),"",VIV.BIRTHDATES(${on},${limits.earliest},${limits.latest},IF(${limits.mode}="","eggs",${limits.mode})))`,
      format: "date",
      note: "Of a pairing that was seen to mate.",
    },
    latest: { title: "Due until", covered: true, format: "date" },
    shedFrom: { title: "Shed from", covered: true, format: "date" },
    shedTo: { title: "Shed until", covered: true, format: "date" },
    needs: { title: "What she needs until then", covered: true },
  },
  { titleLines: 2, grows: true },
);
