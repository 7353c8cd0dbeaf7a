import { ELEVATION } from "../../functions/shared/limits";
import { form } from "./shared/form";
import { eachLine, f } from "./shared/formula";
import { log } from "./shared/log";
import { page } from "./shared/page";
import { gap } from "./shared/region";
import { animals as invented, home, TODAY, type Animal } from "./shared/scenario";
import { date, MASS, number, oneOf, whole } from "./shared/takes";
import { hasPlan, winterPlan } from "./shared/winterPlan";

const ROWS = 30;

const list: readonly Animal[] = Object.values(invented);
/** A young animal feeds through its first winter; an adult's last meal before the plan is the plan's. */
const wintersOf = ({ interval }: Animal): string => (interval < 7 ? "no" : "yes");

const every = (label: string, value: number, most: number) =>
  ({ label, unit: "days", value, role: "setting", format: "whole", takes: whole([1, most]) }) as const;
const reminders = form(
  "reminders",
  "Reminders",
  {
    today: {
      label: "Today",
      value: TODAY,
      format: "date",
      takes: date,
      note: "Type the date, or =TODAY() to follow the calendar.",
    },
    youngUntil: {
      label: "Young below",
      unit: "months",
      value: 18,
      role: "setting",
      format: "whole",
      takes: whole([1, 120]),
    },
    youngEvery: every("Young every", 5, 60),
    adultEvery: every("Adults every", 7, 60),
    weighEvery: every("Weigh every", 28, 366),
  },
  { across: 2 },
);
const { today, youngUntil, youngEvery, adultEvery, weighEvery } = reminders;

const plan = winterPlan(4);
const planned = hasPlan(plan.dates);

const animalsList = log(
  "list",
  ROWS,
  {
    label: { title: "Animal", input: list.map(({ label }) => label) },
    sex: { title: "Sex", input: list.map(({ sex }) => sex), takes: oneOf("female", "male", "unknown") },
    born: { title: "Born", input: list.map(({ born }) => born), format: "date", takes: date },
    mass: { title: "Mass", unit: "g", input: list.map(({ mass }) => mass), format: "whole", takes: number(MASS) },
    length: {
      title: "Length",
      unit: "cm",
      input: list.map(({ length }) => length),
      format: "whole",
      takes: number([1, 1000]),
      note: "From snout to tail tip.",
    },
    from: {
      title: "From",
      unit: "m",
      input: list.map(() => home.bandLow),
      format: "whole",
      takes: number(ELEVATION),
      note: "The elevation band where its kind lives.",
    },
    to: { title: "To", unit: "m", input: list.map(() => home.bandHigh), format: "whole", takes: number(ELEVATION) },
    winters: {
      title: "Winters",
      input: list.map(wintersOf),
      takes: oneOf("yes", "no"),
      note: "Whether it follows the winter plan above.",
    },
    fed: { title: "Last meal", input: list.map(({ fed }) => fed), format: "date", takes: date },
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
      note: "From meal to meal, by age: practice, see above.",
    },
    next: {
      title: "Next meal",
      spilled: ({ fed, born, winters, every }) =>
        f`IF(OR(COUNTA(${fed})=0,COUNTA(${born})=0,${today}=""),"",IF((${fed}="")+(${born}=""),"",IF(${winters}="yes",IF(${planned},VIV.NEXTMEAL(${fed},${every},${plan.dates}),""),VIV.NEXTMEAL(${fed},${every}))))`,
      format: "date",
      rules: [{ when: (own) => `=AND(ISNUMBER(${own}),ISNUMBER(${today}),${own}<=${today})`, look: "care" }],
    },
    weighed: { title: "Weighed on", input: list.map(({ weighed }) => weighed), format: "date", takes: date },
    reminder: {
      title: "Reminder",
      spilled: ({ label, winters, next, weighed }) =>
        f`IF(OR(COUNTA(${label})=0,${today}=""),"",IF(${label}="","",IF((${winters}="yes")*NOT(${planned}),"Winters, but no whole plan. ","")&IF(ISNUMBER(${next}),IF(${next}<=${today},"feed ",""),"")&IF(${weighed}="","weigh",IF(${today}-${weighed}>=${weighEvery},"weigh",""))))`,
      rules: [{ when: (own) => `=AND(ISTEXT(${own}),LEN(${own})>0)`, look: "care" }],
    },
  },
  { titleLines: 2 },
);

export const animals = page(
  {
    key: "animals",
    name: "Animals",
    sentence: "One row an animal: age, feeding interval, next meal and reminders.",
    cautions: ["noFoodInTheCold", "feedTheAnimal", "noVet"],
    sources: ["practice", "definition"],
    widths: [9, 9.4, 11, 5.8, 6.8, 5.2, 5.2, 7.4, 11, 6.6, 5.6, 11, 11, 10],
    cautionColumns: ["K", "M"],
  },
  { A: [reminders], E: [plan] },
  gap(2),
  animalsList,
);
