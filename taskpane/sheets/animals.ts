import { ELEVATION } from "../../functions/shared/limits";
import { PLAN_ROWS } from "../../functions/shared/plan";
import { block } from "./shared/address";
import { assemble } from "./shared/assemble";
import { fields, heading, table, together } from "./shared/part";
import { hasPlan } from "./shared/winterPlan";
import { animals as invented, home, TODAY, winter, type Animal } from "./shared/scenario";
import { date, MASS, number, oneOf, whole } from "./shared/takes";

const ROWS = 30;
const TABLE = 15;
const FIRST = TABLE + 1;

const [today, youngUntil, youngEvery, adultEvery, weighEvery] = ["$C$7", "$C$8", "$C$9", "$C$10", "$C$11"] as const;
const plan = "$I$7:$I$12";

const list: readonly Animal[] = Object.values(invented);
const column = (letter: string): string => block(`${letter}${FIRST}`, ROWS);
const [labels, born, winters, last, ages, every, next, weighed] = [
  column("A"),
  column("C"),
  column("H"),
  column("I"),
  column("J"),
  column("K"),
  column("L"),
  column("M"),
] as const;

/** A young animal feeds through its first winter; an adult's last meal before the plan is the plan's. */
const wintersOf = ({ interval }: Animal): string => (interval < 7 ? "no" : "yes");

export const animals = assemble(
  {
    key: "animals",
    name: "Animals",
    sentence: "One row an animal: age, feeding interval, next meal and reminders.",
    cautions: ["noFoodInTheCold", "feedTheAnimal", "noVet"],
    sources: ["practice", "definition"],
    widths: [9, 9.4, 11, 5.8, 6.8, 5.2, 5.2, 7.4, 11, 6.6, 5.6, 11, 11, 10],
    cautionColumns: ["K", "M"],
  },
  heading("A6", "Reminders", null, null),
  fields(
    "A7",
    [
      {
        label: "Today",
        value: TODAY,
        format: "date",
        takes: date,
        note: "Type the date, or =TODAY() to follow the calendar.",
      },
      { label: "Young below, months", value: 18, role: "setting", format: "whole", takes: whole([1, 120], "months") },
      { label: "Young every, days", value: 5, role: "setting", format: "whole", takes: whole([1, 60], "days") },
      { label: "Adults every, days", value: 7, role: "setting", format: "whole", takes: whole([1, 60], "days") },
      { label: "Weigh every, days", value: 28, role: "setting", format: "whole", takes: whole([1, 366], "days") },
    ],
    2,
  ),
  heading("E6", "Winter plan", null, null, null, null),
  fields(
    "E7",
    PLAN_ROWS.map((words, i) => ({ label: words, value: winter.dates[i] ?? null, format: "date", takes: date })),
    4,
  ),
  {
    notes: [
      {
        at: "E6",
        text: "The six dates of the sheet Cooling plan, for the animals that winter. A cell may point there: type = and click its date.",
      },
    ],
  },
  table({
    at: `A${TABLE}`,
    rows: ROWS,
    titleLines: 2,
    columns: [
      { title: "Animal", input: list.map(({ label }) => label) },
      { title: "Sex", input: list.map(({ sex }) => sex), takes: oneOf("female", "male", "unknown") },
      { title: "Born", input: list.map((one) => one.born), format: "date", takes: date },
      { title: "Mass g", input: list.map(({ mass }) => mass), format: "whole", takes: number(MASS, "g") },
      {
        title: "Length cm",
        input: list.map(({ length }) => length),
        format: "whole",
        takes: number([1, 1000], "cm"),
        note: "From snout to tail tip.",
      },
      {
        title: "From m",
        input: list.map(() => home.bandLow),
        format: "whole",
        takes: number(ELEVATION, "m"),
        note: "The elevation band where its kind lives.",
      },
      { title: "To m", input: list.map(() => home.bandHigh), format: "whole", takes: number(ELEVATION, "m") },
      {
        title: "Winters",
        input: list.map(wintersOf),
        takes: oneOf("yes", "no"),
        note: "Whether it follows the winter plan above.",
      },
      { title: "Last meal", input: list.map(({ fed }) => fed), format: "date", takes: date },
      {
        title: "Age months",
        spilled: `=IF(OR(COUNTA(${born})=0,${today}=""),"",IF(${born}="","",VIV.AGE(${born},${today})))`,
        format: "whole",
        note: "Whole months.",
      },
      {
        title: "Every days",
        spilled: `=IF(OR(COUNTA(${born})=0,${today}=""),"",IF(${born}="","",IF(${ages}<${youngUntil},${youngEvery},${adultEvery})))`,
        format: "whole",
        note: "From meal to meal, by age: practice, see above.",
      },
      {
        title: "Next meal",
        spilled:
          `=IF(OR(COUNTA(${last})=0,COUNTA(${born})=0,${today}=""),"",IF((${last}="")+(${born}=""),"",` +
          `IF(${winters}="yes",IF(${hasPlan(plan)},VIV.NEXTMEAL(${last},${every},${plan}),""),VIV.NEXTMEAL(${last},${every}))))`,
        format: "date",
      },
      { title: "Weighed on", input: list.map((one) => one.weighed), format: "date", takes: date },
      {
        title: "Reminder",
        spilled:
          `=IF(OR(COUNTA(${labels})=0,${today}=""),"",IF(${labels}="","",IF((${winters}="yes")*NOT(${hasPlan(plan)}),"Winters, but no whole plan. ","")&IF(ISNUMBER(${next}),IF(${next}<=${today},"feed ",""),"")` +
          `&IF(${weighed}="","weigh",IF(${today}-${weighed}>=${weighEvery},"weigh",""))))`,
      },
    ],
  }),
  together({
    rules: [
      { range: block(`N${FIRST}`, ROWS), when: `=AND(ISTEXT($N${FIRST}),LEN($N${FIRST})>0)`, look: "care" },
      {
        range: block(`L${FIRST}`, ROWS),
        when: `=AND(ISNUMBER($L${FIRST}),ISNUMBER(${today}),$L${FIRST}<=${today})`,
        look: "care",
      },
    ],
  }),
);
