import { young } from "./hatchlingsExample";
import { form } from "./shared/form";
import { f, once } from "./shared/formula";
import { log, LOG_ROWS } from "./shared/log";
import { through, type RowCell } from "./shared/names";
import { countOfOutcome, yesOrNo } from "./shared/outcomes";
import { begins } from "./shared/rules";
import { clutch, day, TODAY } from "./shared/scenario";
import { date, MASS, number, oneOf, whole } from "./shared/takes";
import { blanksKept, rounded } from "./shared/words";

/** The log of hatchlings, and the keeper's limits by which it is read. */

export const looked = form(
  "looked",
  "Looked at",
  {
    on: {
      label: "On",
      needed: "Day looked at",
      value: TODAY,
      format: "date",
      takes: date,
      from: "animals.reminders.today",
    },
    lateFrom: {
      label: "First meal late, day",
      value: 28,
      role: "setting",
      format: "whole",
      takes: whole([1, 365], "days"),
      note: "Days after hatching without a meal that call for a plan. Practice.",
    },
    patience: {
      label: "Plan from refusals",
      value: 4,
      role: "setting",
      format: "whole",
      takes: whole([1, 50]),
      note: "So many refused in a row. Practice.",
    },
    alarm: {
      label: "Plan at a loss of",
      value: 0.1,
      role: "setting",
      format: "percent",
      takes: number([0.01, 1]),
      note: "Share of the mass when hatched. Practice.",
    },
  },
  { across: 2 },
);
const { on, lateFrom, patience, alarm } = looked;

type Row = Readonly<Record<"label" | "hatched" | "shed" | "first" | "last" | "day" | "gain" | "refused", RowCell>>;
const mealsOf = ({ first, last }: Pick<Row, "first" | "last">): string => through(first, last);

/** The gravest thing first; every limit is the keeper's, from practice. */
const stands = (row: Row): string => {
  const { label, hatched, shed, day, gain, refused } = row;
  const eaten = countOfOutcome(mealsOf(row), "taken");
  const cases: readonly (readonly [when: string, say: string])[] = [
    [`OR(${label}="",${day}="")`, '""'],
    [`AND(${shed}<>"",N(${shed})<N(${hatched}))`, '"First shed before hatching: look at the dates"'],
    [
      `AND(ISNUMBER(${gain}),${alarm}<>"",N(${gain})<=-N(${alarm}))`,
      `"Plan: lost "&${rounded(`-100*N(${gain})`)}&" %"`,
    ],
    [`AND(ISNUMBER(${refused}),${patience}<>"",N(${refused})>=N(${patience}))`, `"Plan: "&${refused}&" refused"`],
    [`AND(${eaten}=0,${lateFrom}<>"",N(${day})>=N(${lateFrom}))`, `"Plan: no meal, day "&${day}`],
    [`OR(${alarm}="",${patience}="",${lateFrom}="")`, '"Not judged: a limit above is blank"'],
    [`AND(${eaten}=0,OR(${shed}="",N(${shed})>N(${on})))`, `"Waiting for the first shed, day "&${day}`],
    [`${eaten}=0`, `"Waiting, day "&${day}`],
  ];
  return `=${cases.reduceRight((otherwise, [when, say]) => `IF(${when},${say},${otherwise})`, '"Eats by itself"')}`;
};

const offered = (title: string, i: number) =>
  ({
    title,
    input: young.map(({ meals }) => meals[i] ?? null),
    takes: yesOrNo,
  }) as const;

export const all = log(
  "log",
  LOG_ROWS,
  {
    label: { title: "Label", needed: "A hatchling", input: young.map(({ label }) => label) },
    standsOut: {
      title: "What stands out",
      each: stands,
      rules: [begins("Plan", "care"), begins("Not", "care"), begins("Eats", "good")],
    },
    hatched: { title: "Hatched", input: young.map(() => clutch.hatched), format: "date", takes: date },
    shed: {
      title: "First shed",
      input: young.map(({ shed }) => (shed === null ? null : day(shed))),
      format: "date",
      takes: date,
      note: "Blank until it is done. The first meal is offered after it (practice).",
    },
    then: {
      title: "Then",
      unit: "g",
      input: young.map(({ then }) => then),
      format: "tenth",
      takes: number(MASS),
      note: "Mass when hatched.",
    },
    now: {
      title: "Now",
      unit: "g",
      input: young.map(({ now: mass }) => mass),
      format: "tenth",
      takes: number(MASS),
      note: "Mass on the day given above, before a meal.",
    },
    first: {
      ...offered("1st", 0),
      note: "The last six meals offered, oldest left. yes: taken and kept. no: refused, or brought up.",
    },
    second: offered("2nd", 1),
    third: offered("3rd", 2),
    fourth: offered("4th", 3),
    fifth: offered("5th", 4),
    last: offered("6th", 5),
    day: {
      title: "Day",
      each: ({ hatched }) => once`VIV.AGE(${hatched},${on},"days")`,
      format: "whole",
      note: "Days since hatching.",
    },
    gain: {
      title: "Gain",
      each: ({ then, now: mass }) => once`-VIV.MASSLOSS(${then},${mass})`,
      format: "percent",
      note: "Since hatching; a loss is negative.",
    },
    refused: {
      title: "Refused",
      each: (row) => f`IF(COUNTA(${mealsOf(row)})=0,"",VIV.REFUSALS(${blanksKept(mealsOf(row))}))`,
      format: "whole",
      note: "In a row, up to the last offered.",
    },
    winters: {
      title: "Winters",
      input: young.map(({ winters }) => winters),
      takes: oneOf("yes", "no"),
      note: "Its first winter. no: it is fed through, warm, as is usual. yes: only with your vet. Blank asks.",
    },
    firstWinter: {
      title: "First winter",
      wide: 2,
      each: ({ label, winters, standsOut }) =>
        f`IF(${label}="","",IF(${winters}="","Does it winter? no, or ask your vet: see below",IF(${winters}="no","Stays warm, fed all winter",IF(LEFT(${standsOut},4)<>"Eats","Stop: does not eat by itself, stays warm","With your vet only: see below"))))`,
      rules: [begins("Stop", "stop"), begins("Does", "care"), begins("With", "care")],
    },
  },
  { grows: true },
);
