import { block, fixed } from "./shared/address";
import { assemble } from "./shared/assemble";
import { mealLimits } from "./shared/mealLimits";
import { fields, heading, LOG_ROWS, table, text } from "./shared/part";
import { animals, clutch, day, TODAY } from "./shared/scenario";
import { date, MASS, number, oneOf, whole } from "./shared/takes";
import { fastWords, hasPlan, planDates, planFields } from "./shared/winterPlan";
import { once, rounded } from "./shared/words";

const SIZES = 16;
const SIZE_ROWS = 8;
const EATERS = SIZES + SIZE_ROWS + 3;
const EATER_ROWS = 15;
const LOG = EATERS + EATER_ROWS + 3;

const [from, until, mealShare, itemShare] = ["$B$7", "$B$8", "$B$9", "$B$10"] as const;
/** Labels of the plan stand in D, its dates in the merged cells G:H. */
const plan = planDates("D7", 3);

const column = (letter: string, top: number, rows: number): string => fixed(block(`${letter}${top + 1}`, rows));
const [sizes, grams] = ["A", "C"].map((letter) => column(letter, SIZES, SIZE_ROWS)) as [string, string];
const [eaten, toCome] = ["B", "I"].map((letter) => column(letter, EATERS, EATER_ROWS)) as [string, string];
const [moved, into, out] = ["B", "C", "D"].map((letter) => column(letter, LOG, LOG_ROWS)) as [string, string, string];

const prey = [
  ["Pinky mouse", 1.2],
  ["Fuzzy mouse", 3.5],
  ["Hopper mouse", 7],
  ["Weaned mouse", 14],
  ["Adult mouse", 26],
] as const;

const { juniper, rowan, heather, bracken, sorrel } = animals;
const eaters: readonly (readonly [
  who: string,
  prey: string,
  many: number,
  body: number,
  days: number,
  winters: string,
])[] = [
  [juniper.label, "Adult mouse", 1, juniper.mass, juniper.interval, "yes"],
  [rowan.label, "Adult mouse", 1, rowan.mass, rowan.interval, "yes"],
  [heather.label, "Weaned mouse", 1, heather.mass, heather.interval, "yes"],
  [bracken.label, "Weaned mouse", 1, bracken.mass, bracken.interval, "yes"],
  [sorrel.label, "Hopper mouse", 1, sorrel.mass, sorrel.interval, "no"],
  ["J1 to J6", "Pinky mouse", clutch.hatchlings, 8.8, 5, "no"],
];

const moves: readonly (readonly [iso: string, size: string, into: number | null, out: number | null])[] = [
  ["2026-09-12", "Adult mouse", 50, null],
  ["2026-09-12", "Weaned mouse", 40, null],
  ["2026-09-12", "Hopper mouse", 30, null],
  ["2026-09-12", "Pinky mouse", 100, null],
  ["2026-09-14", "Adult mouse", null, 2],
  ["2026-09-14", "Weaned mouse", null, 1],
  ["2026-09-16", "Pinky mouse", null, 6],
  ["2026-09-17", "Hopper mouse", null, 1],
  ["2026-09-19", "Weaned mouse", null, 1],
  ["2026-09-21", "Weaned mouse", null, 2],
];

/** The mass of one item of the size that stands in column B of the row. */
const itemMass = (row: number): string => `INDEX(${grams},MATCH(B${row},${sizes},0))`;
const known = (row: number): string => `COUNTIF(${sizes},B${row})>0`;

const stands = (row: number): string =>
  `=IF(B${row}="","",IF(NOT(${known(row)}),"No such size above",IF(AND(F${row}="yes",NOT(${hasPlan(plan)})),"Winters, but no whole plan",` +
  `IF(OR(D${row}="",${itemShare}="",N(${itemMass(row)})=0),"",IF(N(${itemMass(row)})>N(D${row})*N(${itemShare}),"Item "&${rounded(`100*N(${itemMass(row)})/N(D${row})`, 0)}&" % of body: too big","")))))`;

export const preyStock = assemble(
  {
    key: "preyStock",
    name: "Prey stock",
    sentence: "Meals still to come, by size of prey, and what the freezer must hold for them.",
    cautions: ["noFoodInTheCold", "meal", "noVet"],
    sources: ["practice", "definition"],
    widths: [15.5, 13.5, 7.5, 10, 7, 8, 7, 7.5, 8.5, 1, 12, 12],
    cautionColumns: ["K", "L"],
  },
  heading("A6", "The time", null),
  fields("A7", [
    { label: "From", value: TODAY + 1, format: "date", takes: date },
    { label: "Until", value: day("2027-06-30"), format: "date", takes: date, note: "Ten years at most." },
    ...mealLimits("Meal of body mass"),
  ]),
  text("A12", "Bodies grow: look again at the sizes every two months.", 2, 2),
  heading("D6", "Winter plan", null, null, null, null),
  planFields("D7", 3, 2),
  text("D13", fastWords(plan), 2, 5),
  table({
    at: `A${SIZES}`,
    rows: SIZE_ROWS,
    columns: [
      { title: "Size of prey", input: prey.map(([size]) => size) },
      { title: "What to do", each: (row) => once([`F${row}`], `IF(F${row}<0,"Buy "&-F${row},"Enough")`) },
      { title: "g each", input: prey.map(([, mass]) => mass), format: "tenth", takes: number([0.1, 5000], "g") },
      {
        title: "In stock",
        each: (row) => `=IF(A${row}="","",SUMIFS(${into},${moved},A${row})-SUMIFS(${out},${moved},A${row}))`,
        format: "whole",
        note: "What went into the freezer less what came out, from the log below.",
      },
      {
        title: "To come",
        each: (row) => `=IF(A${row}="","",SUMIFS(${toCome},${eaten},A${row}))`,
        format: "whole",
        note: "Items of this size still to be fed.",
      },
      { title: "Spare", each: (row) => once([`D${row}`, `E${row}`], `D${row}-E${row}`), format: "whole" },
    ],
  }),
  {
    rules: [
      { range: block(`B${SIZES + 1}`, SIZE_ROWS), when: `=LEFT($B${SIZES + 1},3)="Buy"`, look: "care" },
      { range: block(`B${SIZES + 1}`, SIZE_ROWS), when: `=$B${SIZES + 1}="Enough"`, look: "good" },
    ],
  },
  table({
    at: `A${EATERS}`,
    rows: EATER_ROWS,
    columns: [
      { title: "Who eats", input: eaters.map(([who]) => who) },
      { title: "Size of prey", input: eaters.map(([, size]) => size), note: "As it is called in the table above." },
      { title: "Animals", input: eaters.map(([, , many]) => many), format: "whole", takes: whole([1, 500]) },
      { title: "Body g", input: eaters.map(([, , , body]) => body), format: "tenth", takes: number(MASS, "g") },
      {
        title: "Days",
        input: eaters.map(([, , , , days]) => days),
        format: "whole",
        takes: whole([1, 366], "days"),
        note: "Between two meals.",
      },
      {
        title: "Winters",
        input: eaters.map(([, , , , , winters]) => winters),
        takes: oneOf("yes", "no"),
        note: "Whether it fasts by the plan above.",
      },
      {
        title: "Items",
        each: (row) =>
          `=IF(OR(B${row}="",D${row}="",${mealShare}="",${itemShare}=""),"",IF(NOT(${known(row)}),"",IF(${itemMass(row)}="","",VIV.PREYITEMS(D${row},${itemMass(row)},${mealShare},${itemShare}))))`,
        format: "whole",
        note: "Each meal, for one animal.",
      },
      {
        title: "Meals",
        each: (row) =>
          once(
            [`B${row}`, `E${row}`, from, until],
            `IF(AND(F${row}="yes",${hasPlan(plan)}),VIV.MEALCOUNT(${from},${until},E${row},${plan}),VIV.MEALCOUNT(${from},${until},E${row}))`,
          ),
        format: "whole",
        note: "For one animal, the first on the day From.",
      },
      {
        title: "To come",
        each: (row) => once([`C${row}`, `G${row}`, `H${row}`], `C${row}*G${row}*H${row}`),
        format: "whole",
        note: "Items, for all animals of the row.",
      },
    ],
  }),
  heading(`K${EATERS}`, "What stands out", null),
  {
    blocks: [
      {
        at: `K${EATERS + 1}`,
        role: "computed",
        rows: Array.from({ length: EATER_ROWS }, (_, i) => [stands(EATERS + 1 + i)]),
      },
    ],
    rules: [{ range: block(`K${EATERS + 1}`, EATER_ROWS, 2), when: `=LEN($K${EATERS + 1})>0`, look: "care" }],
  },
  table({
    at: `A${LOG}`,
    rows: LOG_ROWS,
    columns: [
      { title: "Freezer log, date", input: moves.map(([iso]) => day(iso)), format: "date", takes: date },
      { title: "Size of prey", input: moves.map(([, size]) => size) },
      { title: "In", input: moves.map(([, , count]) => count), format: "whole", takes: whole([0, 10_000]) },
      { title: "Out", input: moves.map(([, , , count]) => count), format: "whole", takes: whole([0, 10_000]) },
      { title: "Sign", each: (row) => `=IF(B${row}="","",IF(COUNTIF(${sizes},B${row})=0,"No such size above",""))` },
    ],
  }),
  { rules: [{ range: block(`E${LOG + 1}`, LOG_ROWS, 3), when: `=LEN($E${LOG + 1})>0`, look: "care" }] },
);
