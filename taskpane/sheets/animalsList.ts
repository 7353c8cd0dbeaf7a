import { ELEVATION } from "../../functions/shared/limits";
import { fed, plans, settings } from "./animalsFigures";
import { askedAtRest, rests } from "./animalsBroughtUp";
import { askedOfGravid, mayBeGravid } from "./animalsGravid";
import { reminders } from "./animalsToday";
import { eachLine, f } from "./shared/formula";
import { log } from "./shared/log";
import type { Column } from "./shared/names";
import { animals, home, wintersOf, type Animal } from "./shared/scenario";
import { date, MASS, number, oneOf } from "./shared/takes";
import { followed, ofPlan } from "./shared/winterPlans";
import { blanksKept } from "./shared/words";

/** The animals: first what is done today, then the facts that it follows from. */

const ROWS = 30;
const all: readonly Animal[] = Object.values(animals);
const { youngUntil, youngEvery, adultEvery, weighEvery } = settings;
const { today } = reminders;

const named = (names: Column): string => `IF(${names}="","?",${names})`;
/** The day of each animal's last row of the log that holds something. */
const lastOf = (label: Column, values: Column): string =>
  `IFNA(INDEX(VIV.LATEST(${blanksKept(`${fed.date}`)},${blanksKept(`${values}`)},${today},${named(fed.animal)},${named(label)}),0,2),"")`;
/** The later of what was typed and what the log says; nothing where neither says anything. */
const later = (label: Column, typed: Column, values: Column): string => {
  const found = lastOf(label, values);
  const typedOrNot = blanksKept(`${typed}`);
  return f`IF(OR(COUNTA(${label})=0,${today}=""),"",IF(${label}="","",IF(COUNTA(${fed.animal})=0,${typedOrNot},IF(${found}="",${typedOrNot},IF(${typed}="",${found},IF(${typed}>${found},${typed},${found}))))))`;
};

/** Blanks of a plan as empty text, and what has become of a plan whose sheet is gone: no date. */
const datesKept = (dates: string): string => `IFERROR(${blanksKept(dates)},"")`;

export const list = log(
  "list",
  ROWS,
  {
    label: { title: "Animal", needed: "An animal", input: all.map(({ label }) => label) },
    stage: {
      title: "Stage",
      each: ({ label, ate, every, weighedLast, opened, openEvery, box, follows, wintersNow, asked }) => {
        const kept = [weighEvery, opened, openEvery].map((cell) => blanksKept(`${cell}`)).join(",");
        return f`IF(OR(${label}="",${today}=""),"",VIV.DUE(${today},${ofPlan(plans, `${follows}`, plans.dates.map(datesKept))},${ate},${every},${weighedLast},${kept},${blanksKept(`${wintersNow}`)},${blanksKept(`${box}`)},${blanksKept(`${asked}`)}))`;
      },
    },
    toDo: { title: "What to do", covered: true },
    never: {
      title: "What never to do",
      covered: true,
      rules: [{ when: (own) => `=LEFT(${own},7)="No food"`, look: "cold" }],
    },
    next: {
      title: "Next meal",
      covered: true,
      format: "date",
      rules: [{ when: (own) => `=AND(ISNUMBER(${own}),ISNUMBER(${today}),${own}<=${today})`, look: "care" }],
    },
    overdue: {
      title: "Overdue",
      covered: true,
      rules: [{ when: (own) => `=AND(LEN(${own})>0,${own}<>"Nothing.")`, look: "care" }],
    },
    winters: {
      title: "Winters",
      input: all.map(wintersOf),
      takes: oneOf("yes", "no"),
      note: "Whether it follows a winter plan. Blank asks. A gravid female, a live-bearer with young, a thin or an ill one: no.",
    },
    plan: {
      title: "Winter plan",
      input: all.map((one) => (wintersOf(one) === "yes" ? "Cooling plan" : null)),
      takes: plans.takes,
      note: "Its plan's name, from the winter plans below. Blank: the only one there is; of several it is asked.",
    },
    follows: {
      title: "Plan followed",
      spilled: ({ label, plan, winters }) => f`IF(COUNTA(${label})=0,"",${followed(plans, label, plan, winters)})`,
      note: "Empty where it does not winter.",
      rules: [
        {
          when: (own) => `=AND(${own}<>"",${plans.names.map((name) => `${own}<>${String(name)}`).join(",")})`,
          look: "care",
        },
      ],
    },
    gravid: {
      title: "Gravid",
      input: [],
      takes: oneOf("yes", "no"),
      from: "breedingSeason.animals.gravid",
      by: "list.label",
      note: "yes, or any word but no: she stays warm, out of every winter plan, whatever stands at Winters. From the sheet Breeding season: a mating seen, and nothing laid since.",
      rules: [{ when: (own) => `=${mayBeGravid(own)}`, look: "care" }],
    },
    fed: {
      title: "Last meal",
      input: all.map(({ fed }) => fed),
      format: "date",
      takes: date,
      note: "Where it is not in the Feeding log; the later of the two counts.",
    },
    weighed: {
      title: "Weighed on",
      input: all.map(({ weighed }) => weighed),
      format: "date",
      takes: date,
      note: "Where it is not in the Feeding log; the later of the two counts.",
    },
    box: {
      title: "Box",
      input: all.map((one) => (wintersOf(one) === "yes" ? "shut" : null)),
      takes: oneOf("shut", "vented"),
      note: "Of the winter box. shut: nothing but your hand lets air in. vented: holes or mesh, never covered; its openings are not asked for.",
    },
    opened: { title: "Box opened", input: [], format: "date", takes: date, note: "In the cold: the last time." },
    openEvery: {
      title: "Open every, days",
      input: [],
      format: "tenth",
      takes: number([0.001, 366]),
      note: "In the cold, for a shut box: see the sheet Cooling plan.",
    },
    sex: { title: "Sex", input: all.map(({ sex }) => sex), takes: oneOf("female", "male", "unknown") },
    born: { title: "Born", needed: "Its birth", input: all.map(({ born }) => born), format: "date", takes: date },
    mass: { title: "Mass", unit: "g", input: all.map(({ mass }) => mass), format: "whole", takes: number(MASS) },
    length: {
      title: "Length",
      unit: "cm",
      input: all.map(({ length }) => length),
      format: "whole",
      takes: number([1, 1000]),
      note: "From snout to tail tip.",
    },
    from: {
      title: "From",
      unit: "m",
      input: all.map(() => home.bandLow),
      format: "whole",
      takes: number(ELEVATION),
      note: "The elevation band where its kind lives.",
    },
    to: { title: "To", unit: "m", input: all.map(() => home.bandHigh), format: "whole", takes: number(ELEVATION) },
    age: {
      title: "Age",
      unit: "months",
      spilled: ({ born }) => eachLine`VIV.AGE(${born},${today})`,
      format: "whole",
      note: "Whole months.",
    },
    every: {
      title: "Every",
      unit: "days",
      spilled: ({ born, age }) =>
        f`IF(OR(COUNTA(${born})=0,${today}=""),"",IF(${born}="","",IF(${age}<${youngUntil},${youngEvery},${adultEvery})))`,
      format: "whole",
      note: "From meal to meal, by age: practice, see below.",
    },
    ate: {
      title: "Last meal counted",
      spilled: ({ label, fed: typed }) => later(label, typed, fed.taken),
      format: "date",
    },
    broughtUp: {
      title: "Brought up",
      spilled: ({ label }) =>
        f`IF(OR(COUNTA(${label})=0,COUNTA(${fed.animal})=0,${today}=""),"",IF(${label}="","",${lastOf(label, fed.broughtUp)}))`,
      format: "date",
      note: "The last meal that the Feeding log says came up again.",
    },
    weighedLast: {
      title: "Weighing counted",
      spilled: ({ label, weighed }) => later(label, weighed, fed.body),
      format: "date",
    },
    // Worked out once for the whole list, and not in each row's own formula: a list may have a thousand rows.
    wintersNow: {
      title: "Winters counted",
      spilled: ({ label, winters, follows, gravid, broughtUp, ate }) =>
        f`IF(COUNTA(${label})=0,"",IF(${label}="","",IF(${rests(broughtUp, ate)},"",IF(IF(${mayBeGravid(gravid)},${askedOfGravid(today, follows)},"?")="","no",${blanksKept(`${winters}`)}))))`,
      note: "no for a gravid female outside the fast, whatever plan she follows in other years: she is kept warm. Empty while something is asked of one that brought a meal up.",
    },
    asked: {
      title: "Asked first",
      spilled: ({ label, follows, gravid, broughtUp, ate }) =>
        f`IF(COUNTA(${label})=0,"",IF(${label}="","",IF(${rests(broughtUp, ate)},${askedAtRest(broughtUp)},"")&IF(${mayBeGravid(gravid)},${askedOfGravid(today, follows)},IF(${plans.names.map((name) => `(${follows}=${String(name)})`).join("+")}>0,"",${follows}))))`,
      note: "What has to be settled before food or cooling is told.",
    },
  },
  { titleLines: 2, rowLines: 4, grows: true },
);
