import { block, fixed } from "./shared/address";
import { assemble } from "./shared/assemble";
import { mealLimits } from "./shared/mealLimits";
import { cell, fields, heading, LOG_ROWS, table, text } from "./shared/part";
import { animals, day } from "./shared/scenario";
import { date, MASS, number, oneOf, whole } from "./shared/takes";
import { fastWords, hasPartOfPlan, hasPlan, insideFast, planDates, planFields } from "./shared/winterPlan";
import { blanksKept, lastFigure, once } from "./shared/words";

const TABLE = 20;
const FIRST = TABLE + 1;

const [interval, mealShare, itemShare, wait, patience] = ["$C$8", "$C$9", "$C$10", "$C$11", "$C$12"] as const;
const plan = planDates("E7", 2);

const column = (letter: string): string => fixed(block(`${letter}${FIRST}`, LOG_ROWS));
const [dates, bodies, items, masses, outcomes, nexts] = [
  column("A"),
  column("B"),
  column("D"),
  column("E"),
  column("G"),
  column("I"),
] as const;

/** Juniper, from her clutch to the last meal before the winter: body g, prey, items, prey g, outcome. */
const meals: readonly (readonly [
  iso: string,
  body: number,
  prey: string,
  items: number,
  mass: number,
  outcome: string,
])[] = [
  ["2026-06-29", 264, "Weaned mouse", 1, 14, "taken"],
  ["2026-07-06", 269, "Adult mouse", 1, 24, "taken"],
  ["2026-07-13", 275, "Adult mouse", 1, 26, "taken"],
  ["2026-07-20", 281, "Adult mouse", 1, 25, "taken"],
  ["2026-07-27", 289, "Adult mouse", 1, 26, "refused"],
  ["2026-08-03", 286, "Adult mouse", 1, 25, "refused"],
  ["2026-08-10", 284, "Weaned mouse", 1, 15, "taken"],
  ["2026-08-17", 289, "Adult mouse", 1, 26, "taken"],
  ["2026-08-24", 296, "Adult mouse", 1, 27, "taken"],
  ["2026-08-31", 303, "Adult mouse", 1, 26, "taken"],
  ["2026-09-07", 307, "Adult mouse", 1, 25, "taken"],
  ["2026-09-14", 310, "Adult mouse", 1, 26, "taken"],
  ["2026-09-21", 312, "Weaned mouse", 1, 15, "taken"],
];
const filled = <T>(pick: (meal: (typeof meals)[number]) => T): readonly T[] => meals.map(pick);

/** After a meal brought up the gut rests longer than between two others. */
const nextMeal = (row: number): string => {
  const days = `IF(AND(G${row}="regurgitated",${wait}<>""),MAX(${interval},${wait}),${interval})`;
  return once(
    [`A${row}`, interval],
    `IF(${hasPlan(plan)},VIV.NEXTMEAL(A${row},${days},${plan}),IF(${hasPartOfPlan(plan)},"",VIV.NEXTMEAL(A${row},${days})))`,
  );
};

/** The gravest thing first. Inside the fast it is said as soon as anything is written in the row. */
const stands = (row: number): string =>
  `=IF(A${row}="","",IF(${insideFast(`A${row}`, plan)},"Inside the fast: no food",IF(G${row}="regurgitated","Brought up: wait, ask a vet",` +
  `IF(AND(ISNUMBER(H${row}),${patience}<>"",N(H${row})>=${patience}),H${row}&" not kept in a row: look",` +
  `IF(OR(B${row}="",D${row}="",E${row}="",${itemShare}=""),"",IF(E${row}>${itemShare}*B${row}*D${row},"Item over "&ROUND(100*${itemShare},1)&" % of body",""))))))`;

export const feedingLog = assemble(
  {
    key: "feedingLog",
    name: "Feeding log",
    sentence: "What one animal was offered, what it kept, and when to feed it next.",
    cautions: ["noFoodInTheCold", "refusing", "meal", "feedTheAnimal", "noVet"],
    sources: ["practice", "definition"],
    widths: [11.5, 8, 13.5, 6.5, 8, 8, 12.5, 9.2, 11.5, 22.5],
    cautionColumns: ["I", "J"],
  },
  heading("A6", "The animal, one a sheet", null, null),
  fields(
    "A7",
    [
      { label: "Animal", value: animals.juniper.label },
      { label: "Days between meals", value: animals.juniper.interval, format: "whole", takes: whole([1, 366], "days") },
      ...mealLimits("Meal, share of body"),
      {
        label: "Days if brought up",
        value: 14,
        role: "setting",
        format: "whole",
        takes: whole([1, 120], "days"),
        note: "Days to wait after a meal that was brought up. Practice.",
      },
      {
        label: "Refusals to act on",
        value: 3,
        role: "setting",
        format: "whole",
        takes: whole([1, 50]),
        note: "So many refusals in a row call for a closer look. Practice.",
      },
    ],
    2,
  ),
  heading("E6", "Winter plan", null, null),
  planFields("E7", 2),
  text("E13", fastWords(plan), 2, 3),
  heading("A14", "Now", null, null),
  fields(
    "A15",
    [
      {
        label: "Not kept in a row",
        value: `=IF(COUNTA(${outcomes})=0,"",VIV.REFUSALS(${blanksKept(outcomes)}))`,
        format: "whole",
        note: "Meals refused or brought up since the last that was kept.",
      },
      {
        label: "Next meal",
        value: `=IF(COUNT(${dates})=0,"",INDEX(${nexts},MATCH(MAX(${dates}),${dates},0)))`,
        format: "date",
      },
      {
        label: "Prey for a meal, g",
        value: `=IF(OR(COUNT(${bodies})=0,${mealShare}=""),"",VIV.PREYMASS(${lastFigure(bodies)},${mealShare}))`,
        format: "tenth",
      },
      {
        label: "Items of that size",
        value:
          `=IF(OR(COUNT(${bodies})=0,COUNT(${items})=0,COUNT(${masses})=0,${mealShare}="",${itemShare}=""),"",` +
          `VIV.PREYITEMS(${lastFigure(bodies)},${lastFigure(masses)}/${lastFigure(items)},${mealShare},${itemShare}))`,
        format: "whole",
        note: "Items of the size given last that make such a meal, one at least.",
      },
    ],
    2,
  ),
  cell(
    "E15",
    "computed",
    `=IF(OR(C15="",${patience}=""),"",IF(C15>=${patience},"Look at warmth, hide, weight","Below your limit of "&${patience}))`,
  ),
  { rules: [{ range: "E15:G15", when: '=LEFT($E$15,4)="Look"', look: "care" }] },
  table({
    at: `A${TABLE}`,
    rows: LOG_ROWS,
    titleLines: 2,
    columns: [
      {
        title: "Date",
        input: filled(([iso]) => day(iso)),
        format: "date",
        takes: date,
        note: "Oldest first. A meal still to come has no outcome yet.",
      },
      {
        title: "Body, g",
        input: filled(([, body]) => body),
        format: "tenth",
        takes: number(MASS, "g"),
        note: "Weighed before the meal.",
      },
      { title: "Prey", input: filled(([, , prey]) => prey) },
      { title: "Items", input: filled(([, , , count]) => count), format: "whole", takes: whole([1, 100]) },
      {
        title: "Prey, g",
        input: filled(([, , , , mass]) => mass),
        format: "tenth",
        takes: number([0, 20_000], "g"),
        note: "All items of the meal together.",
      },
      {
        title: "Share",
        each: (row) => once([`E${row}`, `B${row}`], `VIV.PREYRATIO(E${row},B${row})`),
        format: "percent",
        note: "Prey mass as a share of body mass.",
      },
      {
        title: "Outcome",
        input: filled(([, , , , , outcome]) => outcome),
        takes: oneOf("taken", "refused", "regurgitated"),
      },
      {
        title: "Not kept in a row",
        each: (row) => {
          const sofar = `G$${FIRST}:G${row}`;
          return once([`G${row}`], `VIV.REFUSALS(${blanksKept(sofar)})`);
        },
        format: "whole",
        note: "Meals refused or brought up in a row, up to this one.",
      },
      { title: "Next meal", each: nextMeal, format: "date", note: "Inside the fast it becomes the plan's first meal." },
      { title: "What stands out", each: stands },
    ],
  }),
  {
    rules: [
      { range: block(`J${FIRST}`, LOG_ROWS), when: `=LEFT($J${FIRST},6)="Inside"`, look: "stop" },
      { range: block(`J${FIRST}`, LOG_ROWS), when: `=LEN($J${FIRST})>0`, look: "care" },
    ],
  },
);
