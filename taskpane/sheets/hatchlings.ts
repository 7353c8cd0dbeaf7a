import { young } from "./hatchlingsExample";
import { firstWinter, winterLines, winterSaid } from "./hatchlingsWinter";
import { form } from "./shared/form";
import { f, once } from "./shared/formula";
import { log, LOG_ROWS } from "./shared/log";
import { namedColumn, through, type RowCell } from "./shared/names";
import { countOfOutcome, yesOrNo } from "./shared/outcomes";
import { page } from "./shared/page";
import { gap } from "./shared/region";
import { begins, moreThanNone } from "./shared/rules";
import { title, words } from "./shared/running";
import { clutch, day, TODAY } from "./shared/scenario";
import { date, MASS, number, oneOf, whole } from "./shared/takes";
import { blanksKept, onceFilled, rounded } from "./shared/words";

const looked = form(
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

const labels = namedColumn("log.label");
const standsOut = namedColumn("log.standsOut");
const countOf = (like: string): string => onceFilled(`${labels}`, 1, `COUNTIF(${standsOut},"${like}*")`);

const now = form(
  "now",
  "Now",
  {
    all: { label: "Hatchlings", value: onceFilled(`${labels}`, 1, `COUNTA(${labels})`), format: "whole" },
    eat: { label: "Eat", value: countOf("Eats"), format: "whole" },
    wait: { label: "Wait", value: countOf("Waiting"), format: "whole" },
    plan: { label: "Need a plan", value: countOf("Plan"), format: "whole", rules: [moreThanNone("care")] },
    undecided: {
      label: "Winter open",
      value: onceFilled(`${labels}`, 1, `COUNTIF(${namedColumn("log.firstWinter")},"Does*")`),
      format: "whole",
      note: "Young ones whose first winter is not decided.",
      rules: [moreThanNone("care")],
    },
  },
  { across: 1 },
);

const plan = [
  "0. Before the first shed no meal: damp hide, water, quiet; most shed within their second week. Later than that: look at damp and warmth.",
  "1. Warm end, cool end, tight hide, water, quiet: right first, then leave it alone for some days.",
  "2. Smaller prey, freshly thawed and warm, left overnight in the hide.",
  "3. Other prey or another scent, in a small box in the dark. Change one thing at a time.",
  "4. Losing mass, or weak: a reptile vet. Force-feed nothing without one or an experienced hand beside you.",
] as const;
const WIDTHS = [9, 29, 11.5, 11.5, 7, 7, 5.2, 5.2, 5.2, 5.2, 5.2, 5.2, 6, 8.5, 8, 8, 20, 20] as const;
/** The columns beside the cautions. */
const LEFT = 5;

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

const all = log(
  "log",
  LOG_ROWS,
  {
    label: { title: "Label", needed: "A hatchling", input: young.map(({ label }) => label) },
    standsOut: { title: "What stands out", each: stands, rules: [begins("Plan", "care"), begins("Eats", "good")] },
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

export const hatchlings = page(
  {
    key: "hatchlings",
    name: "Hatchlings",
    sentence: "First shed, first meals, refusals and masses, the first winter: who needs a plan.",
    cautions: ["refusing", "meal", "coldKills", "sameScales", "noVet"],
    sources: ["practice", "definition"],
    widths: WIDTHS,
    inView: [all],
    cautionColumns: ["G", "L"],
  },
  { A: [looked], D: [now] },
  gap(1),
  title("A plan (practice): one step at a time", LEFT),
  ...plan.map((line, i) => words(`plan${i + 1}`, [2, LEFT], line)),
  gap(1),
  all,
  gap(2),
  { A: [firstWinter], D: [winterSaid] },
  gap(1),
  winterLines,
);
