import { block, fixed } from "./shared/address";
import { assemble } from "./shared/assemble";
import { cell, fields, heading, LOG_ROWS, table, text, together } from "./shared/part";
import { animals, clutch, day, TODAY, type Animal } from "./shared/scenario";
import { date, MASS, number, oneOf, whole, validationOf } from "./shared/takes";
import { once } from "./shared/words";

const ANIMALS = 13;
const ANIMAL_ROWS = 8;
const CHECK = ANIMALS + ANIMAL_ROWS + 2;
const CLUTCHES = CHECK + 11;
const CLUTCH_ROWS = 10;
const PAIRINGS = CLUTCHES + CLUTCH_ROWS + 3;

const [on, leastAge, leastMass, mostClutches, maleAge, maleMass] = [
  "$C$7",
  "$D$8",
  "$D$9",
  "$D$10",
  "$E$8",
  "$E$9",
] as const;

const animalColumn = (letter: string): string => fixed(block(`${letter}${ANIMALS + 1}`, ANIMAL_ROWS));
const [labels, sexes, births, nowMasses] = ["A", "B", "C", "D"].map(animalColumn) as [string, string, string, string];
const clutchColumn = (letter: string): string => fixed(block(`${letter}${CLUTCHES + 1}`, CLUTCH_ROWS));
const [mothers, laid, befores] = ["A", "C", "E"].map(clutchColumn) as [string, string, string];

const list: readonly Animal[] = Object.values(animals);

/** The cell of the animals' table in the row of this animal. */
const ofAnimal = (range: string, label: string): string => `INDEX(${range},MATCH(${label},${labels},0))`;

/** An animal of unknown sex is held against the limits of a female, the stricter ones. */
const check = (row: number): string => {
  const [age, mass, clutches, share] = [`E${row}`, `D${row}`, `F${row}`, `G${row}`];
  const female = `${age},${mass},${leastAge},${leastMass},${clutches},${mostClutches}`;
  return (
    `IF(B${row}="male",VIV.PAIRINGCHECK(${age},${mass},${maleAge},${maleMass}),` +
    `IF(${share}="",VIV.PAIRINGCHECK(${female}),VIV.PAIRINGCHECK(${female},${share})))`
  );
};
const checked = (row: number, formula: string): string =>
  once([`B${row}`, `D${row}`, `E${row}`, leastAge, leastMass, mostClutches, maleAge, maleMass], formula);

const animalTable = table({
  at: `A${ANIMALS}`,
  rows: ANIMAL_ROWS,
  titleLines: 2,
  columns: [
    { title: "Animal", input: list.map(({ label }) => label) },
    { title: "Sex", input: list.map(({ sex }) => sex), takes: oneOf("female", "male", "unknown") },
    { title: "Born", input: list.map(({ born }) => born), format: "date", takes: date },
    {
      title: "Mass, g",
      input: list.map(({ mass }) => mass),
      format: "tenth",
      takes: number(MASS, "g"),
      note: "Weighed on the day of the check, or close to it.",
    },
    {
      title: "Age, months",
      each: (row) => once([`C${row}`, on], `VIV.AGE(C${row},${on})`),
      format: "whole",
      note: "Age on the day of the check.",
    },
    {
      title: "Clutches",
      each: (row) => `=IF(OR(A${row}="",B${row}="",B${row}="male"),"",COUNTIF(${mothers},A${row}))`,
      format: "whole",
      note: "Laid this season, counted in the table of clutches.",
    },
    {
      title: "Of mass before",
      each: (row) =>
        `=IF(OR(A${row}="",D${row}="",B${row}="male",COUNTIFS(${mothers},A${row},${befores},">0")=0),"",` +
        `D${row}/LOOKUP(2,1/((${mothers}=A${row})*(${befores}<>"")),${befores}))`,
      format: "percent",
      note: "Mass now as a share of her mass before her last clutch.",
    },
    {
      title: "Check",
      each: (row) => checked(row, `INDEX(${check(row)},1,1)&IF(ROWS(${check(row)})>1," +"&(ROWS(${check(row)})-1),"")`),
      note: "stop: do not pair. care: know why you do it. +2: two more things stand out.",
    },
    {
      title: "The gravest thing",
      each: (row) => checked(row, `INDEX(${check(row)},1,2)`),
    },
  ],
});

const checks = [
  ["yes", "She is back to her weight, and eats"],
  ["yes", "Both came well through the winter and have fed since"],
  ["yes", "Droppings checked, no mites, skin and mouth clean"],
  ["no", "A reptile vet asked where anything is in doubt"],
  ["yes", "Laying box ready: damp, dark, warm"],
  ["yes", "Incubator held steady for a week"],
  ["no", "Homes for the young, and what the law here asks"],
] as const;
const done = block(`A${CHECK + 1}`, checks.length);

const checkList = together(
  heading(`A${CHECK}`, "Done", "Before the first pairing (practice)", ...Array<null>(8).fill(null)),
  { blocks: [{ at: `A${CHECK + 1}`, role: "input", rows: checks.map(([yes]) => [yes]) }] },
  { validation: [validationOf(done, oneOf("yes", "no"))] },
  { blocks: [{ at: `B${CHECK + 1}`, role: "label", rows: checks.map(([, words]) => [words]) }] },
  cell(
    `B${CHECK + 1 + checks.length}`,
    "computed",
    `=IF(COUNTA(${done})=0,"",COUNTIF(${done},"yes")&" of ${checks.length} done")`,
  ),
  {
    rules: [
      { range: done, when: `=$A${CHECK + 1}="no"`, look: "care" },
      { range: done, when: `=$A${CHECK + 1}="yes"`, look: "good" },
    ],
  },
);

/** Her mass now in percent of her mass before. Where she is not back it is cut, not rounded: 99.9 is not 100. */
const ofBefore = (row: number): string => `100*${ofAnimal(nowMasses, `A${row}`)}/E${row}`;

const clutches = together(
  table({
    at: `A${CLUTCHES}`,
    rows: CLUTCH_ROWS,
    titleLines: 2,
    columns: [
      { title: "Clutch of", input: [animals.juniper.label], note: "The female, as she is called above." },
      { title: "Eggs", input: [clutch.eggs], format: "whole", takes: whole([1, 100], "eggs") },
      { title: "Laid", input: [clutch.laid], format: "date", takes: date },
      {
        title: "Clutch, g",
        input: [clutch.mass],
        format: "tenth",
        takes: number(MASS, "g"),
        note: "All the eggs, weighed when laid.",
      },
      {
        title: "Before, g",
        input: [clutch.before],
        format: "tenth",
        takes: number(MASS, "g"),
        note: "Her mass before the pairing: what she has to come back to.",
      },
      {
        title: "After, g",
        input: [clutch.after],
        format: "tenth",
        takes: number(MASS, "g"),
        note: "Her mass after laying.",
      },
      {
        title: "Share of mass",
        each: (row) => once([`D${row}`, `F${row}`], `VIV.CLUTCHRATIO(D${row},F${row})`),
        format: "percent",
        note: "Relative clutch mass: clutch ÷ (female after laying + clutch).",
      },
      { title: "One egg, g", each: (row) => once([`B${row}`, `D${row}`], `D${row}/B${row}`), format: "tenth" },
      {
        title: "Recovery",
        each: (row) =>
          `=IF(OR(A${row}="",E${row}="",COUNTIF(${labels},A${row})=0),"",IF(${ofAnimal(nowMasses, `A${row}`)}="","",` +
          `IF(${ofAnimal(nowMasses, `A${row}`)}<E${row},"Not back to her weight: "&INT(${ofBefore(row)}),"Back to her weight: "&ROUND(${ofBefore(row)},0))&" %"))`,
      },
    ],
  }),
  heading(`J${CLUTCHES}`, null),
  {
    rules: [
      { range: block(`I${CLUTCHES + 1}`, CLUTCH_ROWS, 2), when: `=LEFT($I${CLUTCHES + 1},3)="Not"`, look: "care" },
      { range: block(`I${CLUTCHES + 1}`, CLUTCH_ROWS, 2), when: `=LEFT($I${CLUTCHES + 1},4)="Back"`, look: "good" },
    ],
  },
);

const monthsOn = (label: string, on: string): string =>
  `=IF(OR(${label}="",${on}="",COUNTIF(${labels},${label})=0),"",IF(${ofAnimal(births, label)}="","",VIV.AGE(${ofAnimal(births, label)},${on})))`;

/** Held against the limits of the day of the pairing, not of today; the gravest thing only. */
const pairingWords = (row: number): string => {
  const [she, he, on] = [`A${row}`, `B${row}`, `C${row}`];
  const young = (months: string, least: string): string =>
    `AND(ISNUMBER(${months}),${least}<>"",N(${months})<${least})`;
  const unknown = (label: string) => [`COUNTIF(${labels},${label})=0`, `"Not in the list above: "&${label}`] as const;
  const cases: readonly (readonly [when: string, words: string])[] = [
    [`OR(${she}="",${he}="")`, '""'],
    unknown(she),
    unknown(he),
    [`OR(${ofAnimal(sexes, she)}="male",${ofAnimal(sexes, he)}="female")`, '"Stop: not a female and a male"'],
    [young(`E${row}`, leastAge), '"Stop: she was too young"'],
    [young(`F${row}`, maleAge), '"Stop: he was too young"'],
    [
      `AND(${on}<>"",${mostClutches}<>"",COUNTIFS(${mothers},${she},${laid},"<"&${on})>=${mostClutches})`,
      '"Stop: enough clutches already"',
    ],
  ];
  return `=${cases.reduceRight((otherwise, [when, words]) => `IF(${when},${words},${otherwise})`, '""')}`;
};

const pairings: readonly (readonly [iso: string, seen: string])[] = [
  ["2026-05-03", "together"],
  ["2026-05-05", "mated"],
  ["2026-05-09", "mated"],
  ["2026-05-14", "nothing"],
];

export const breedingSeason = assemble(
  {
    key: "breedingSeason",
    name: "Breeding season",
    sentence: "Pairings, clutches and what they cost, so that no female is worn out.",
    cautions: ["spentFemale", "noVetCheck", "noVet"],
    sources: ["practice", "ownLimit", "seigelFitch"],
    widths: [11.8, 9.8, 11.5, 9, 7.5, 8, 9, 8, 20, 17.4],
    cautionColumns: ["I", "J"],
  },
  heading("A6", "Your limits", null, null, "Female", "Male", null, null),
  fields("A7", [{ label: "Checked on", value: TODAY, format: "date", takes: date }], 2),
  {
    blocks: [{ at: "A8", role: "label", rows: [["Least age, months"], ["Least mass, g"], ["Most clutches a season"]] }],
  },
  cell("D8", "setting", 36, { format: "whole", takes: whole([1, 600], "months") }),
  cell("D9", "setting", 250, { format: "tenth", takes: number(MASS, "g") }),
  cell("D10", "setting", 1, { format: "whole", takes: whole([0, 12], "clutches") }),
  cell("E8", "setting", 18, {
    format: "whole",
    takes: whole([1, 600], "months"),
    note: "18 months for males is common practice, no source.",
  }),
  cell("E9", "setting", 150, { format: "tenth", takes: number(MASS, "g") }),
  text("A11", "One clutch, then let her feed up. A female not back to her weight is not paired.", 2, 7),
  animalTable,
  heading(`J${ANIMALS}`, null),
  {
    rules: (["stop", "care", "note"] as const).map((look) => ({
      range: block(`H${ANIMALS + 1}`, ANIMAL_ROWS),
      when: `=LEFT($H${ANIMALS + 1},4)="${look}"`,
      look,
    })),
  },
  checkList,
  clutches,
  table({
    at: `A${PAIRINGS}`,
    rows: LOG_ROWS,
    titleLines: 2,
    columns: [
      { title: "Female", input: pairings.map(() => animals.juniper.label) },
      { title: "Male", input: pairings.map(() => animals.rowan.label) },
      { title: "Together", input: pairings.map(([iso]) => day(iso)), format: "date", takes: date },
      { title: "Seen", input: pairings.map(([, seen]) => seen), takes: oneOf("mated", "together", "nothing") },
      {
        title: "Her months",
        each: (row) => monthsOn(`A${row}`, `C${row}`),
        format: "whole",
        note: "Age on that day.",
      },
      {
        title: "His months",
        each: (row) => monthsOn(`B${row}`, `C${row}`),
        format: "whole",
        note: "Age on that day.",
      },
      { title: "What stands out", each: pairingWords },
    ],
  }),
  heading(`H${PAIRINGS}`, null, null, null),
  {
    rules: [
      { range: block(`G${PAIRINGS + 1}`, LOG_ROWS, 3), when: `=LEFT($G${PAIRINGS + 1},4)="Stop"`, look: "stop" },
      { range: block(`G${PAIRINGS + 1}`, LOG_ROWS, 3), when: `=LEFT($G${PAIRINGS + 1},3)="Not"`, look: "care" },
    ],
  },
);
