import { block, fixed } from "./shared/address";
import { assemble } from "./shared/assemble";
import { fields, heading, LOG_ROWS, table, text } from "./shared/part";
import { clutch, TODAY } from "./shared/scenario";
import { date, MASS, number, oneOf, whole } from "./shared/takes";
import { blanksKept, once, onceFilled, rounded } from "./shared/words";

const TABLE = 20;
const FIRST = TABLE + 1;

const [on, lateFrom, patience, alarm] = ["$C$8", "$C$9", "$C$10", "$C$11"] as const;
const labels = fixed(block(`A${FIRST}`, LOG_ROWS));
const words = fixed(block(`N${FIRST}`, LOG_ROWS));
const meals = (row: number): string => `E${row}:J${row}`;

/** Juniper's young: mass when hatched and now, and the meals offered since the first shed. */
const young: readonly (readonly [label: string, hatched: number, now: number, ...meals: ("yes" | "no")[]])[] = [
  ["J1", 8.4, 10.1, "yes", "yes", "yes"],
  ["J2", 8.1, 9.3, "no", "yes", "yes"],
  ["J3", 8.6, 10.4, "yes", "yes", "yes"],
  ["J4", 7.9, 7.4, "no", "no", "no"],
  ["J5", 8.2, 9.0, "no", "yes", "no"],
  ["J6", 7.6, 6.7, "no", "no", "no"],
];

/** The gravest thing first; every limit is the keeper's, from practice. */
const stands = (row: number): string => {
  const cases: readonly (readonly [when: string, say: string])[] = [
    [`OR(A${row}="",K${row}="")`, '""'],
    [
      `AND(ISNUMBER(L${row}),${alarm}<>"",N(L${row})<=-N(${alarm}))`,
      `"Plan: lost "&${rounded(`-100*N(L${row})`)}&" %"`,
    ],
    [`AND(ISNUMBER(M${row}),${patience}<>"",N(M${row})>=N(${patience}))`, `"Plan: "&M${row}&" refused"`],
    [`AND(COUNTIF(${meals(row)},"yes")=0,${lateFrom}<>"",N(K${row})>=N(${lateFrom}))`, `"Plan: no meal, day "&K${row}`],
    [`COUNTIF(${meals(row)},"yes")=0`, `"Waiting, day "&K${row}`],
  ];
  return `=${cases.reduceRight((otherwise, [when, say]) => `IF(${when},${say},${otherwise})`, '"Eats by itself"')}`;
};

const offered = ["1st", "2nd", "3rd", "4th", "5th", "6th"].map((title, i) => ({
  title,
  input: young.map(([, , , ...outcomes]) => outcomes[i] ?? null),
  takes: oneOf("yes", "no"),
  ...(i === 0
    ? { note: "The last six meals offered, oldest left. yes: taken and kept. no: refused, or brought up." }
    : {}),
}));

const plan = [
  "1. Warm end, cool end, tight hide, water, quiet: right first, then leave it alone for some days.",
  "2. Smaller prey, freshly thawed and warm, left overnight in the hide.",
  "3. Other prey or another scent, in a small box in the dark. Change one thing at a time.",
  "4. Losing mass, or weak: a reptile vet. Force-feed nothing without one or an experienced hand beside you.",
] as const;

export const hatchlings = assemble(
  {
    key: "hatchlings",
    name: "Hatchlings",
    sentence: "First meals, refusals and masses: who needs a plan.",
    cautions: ["refusing", "meal", "sameScales", "noVet"],
    sources: ["practice", "definition"],
    widths: [9, 11.5, 7, 7, 5.2, 5.2, 5.2, 5.2, 5.2, 5.2, 6, 8.5, 8, 19],
    cautionColumns: ["K", "N"],
  },
  heading("A7", "Looked at", null, null, null),
  fields(
    "A8",
    [
      { label: "On", value: TODAY, wide: 2, format: "date", takes: date },
      {
        label: "First meal late, day",
        value: 28,
        wide: 2,
        role: "setting",
        format: "whole",
        takes: whole([1, 365], "days"),
        note: "Days after hatching without a meal that call for a plan. Practice.",
      },
      {
        label: "Plan from refusals",
        value: 4,
        wide: 2,
        role: "setting",
        format: "whole",
        takes: whole([1, 50]),
        note: "So many refused in a row. Practice.",
      },
      {
        label: "Plan at a loss of",
        value: 0.1,
        wide: 2,
        role: "setting",
        format: "percent",
        takes: number([0.01, 1]),
        note: "Share of the mass when hatched. Practice.",
      },
    ],
    2,
  ),
  heading("F7", "Now", null, null, null),
  fields(
    "F8",
    [
      { label: "Hatchlings", value: onceFilled(labels, 1, `COUNTA(${labels})`), format: "whole" },
      ...(
        [
          ["Eat", "Eats*"],
          ["Wait", "Waiting*"],
          ["Need a plan", "Plan*"],
        ] as const
      ).map(([label, like]) => ({
        label,
        value: onceFilled(labels, 1, `COUNTIF(${words},"${like}")`),
        format: "whole" as const,
      })),
    ],
    3,
  ),
  { rules: [{ range: "F11:I11", when: "=N($I$11)>0", look: "care" }] },
  heading("A14", "A plan (practice): one step at a time", ...Array<null>(13).fill(null)),
  ...plan.map((line, i) => text(`A${15 + i}`, line, 1, 14)),
  table({
    at: `A${TABLE}`,
    rows: LOG_ROWS,
    columns: [
      { title: "Label", input: young.map(([label]) => label) },
      { title: "Hatched", input: young.map(() => clutch.hatched), format: "date", takes: date },
      {
        title: "Then g",
        input: young.map(([, hatched]) => hatched),
        format: "tenth",
        takes: number(MASS, "g"),
        note: "Mass when hatched.",
      },
      {
        title: "Now g",
        input: young.map(([, , now]) => now),
        format: "tenth",
        takes: number(MASS, "g"),
        note: "Mass on the day given above, before a meal.",
      },
      ...offered,
      {
        title: "Day",
        each: (row) => once([`B${row}`, on], `VIV.AGE(B${row},${on},"days")`),
        format: "whole",
        note: "Days since hatching.",
      },
      {
        title: "Gain",
        each: (row) => once([`C${row}`, `D${row}`], `-VIV.MASSLOSS(C${row},D${row})`),
        format: "percent",
        note: "Since hatching; a loss is negative.",
      },
      {
        title: "Refused",
        each: (row) => `=IF(COUNTA(${meals(row)})=0,"",VIV.REFUSALS(${blanksKept(meals(row))}))`,
        format: "whole",
        note: "In a row, up to the last offered.",
      },
      { title: "What stands out", each: stands },
    ],
  }),
  {
    rules: [
      { range: block(`N${FIRST}`, LOG_ROWS), when: `=LEFT($N${FIRST},4)="Plan"`, look: "care" },
      { range: block(`N${FIRST}`, LOG_ROWS), when: `=LEFT($N${FIRST},4)="Eats"`, look: "good" },
    ],
  },
);
