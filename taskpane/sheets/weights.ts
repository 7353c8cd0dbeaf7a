import { block, fixed } from "./shared/address";
import { assemble } from "./shared/assemble";
import { cell, fields, heading, LOG_ROWS, table, text } from "./shared/part";
import { animals, day, junipersWeights, type Animal } from "./shared/scenario";
import { date, MASS, number } from "./shared/takes";
import { fastWords, insideFast, planDates, planFields } from "./shared/winterPlan";
import { isoText, lastFigure, once, rounded } from "./shared/words";

const TABLE = 23;
const TREND = "J18";
const FIRST = TABLE + 1;
const SIDE = TABLE + LOG_ROWS + 3;
const SIDE_ROWS = 12;

const [alarm, window] = ["$C$8", "$C$9"] as const;
const plan = planDates("A11", 2);

const column = (letter: string): string => fixed(block(`${letter}${FIRST}`, LOG_ROWS));
const [dates, masses, lengths] = [column("A"), column("B"), column("C")] as const;
const filled = <T>(pick: (one: (typeof junipersWeights)[number]) => T): readonly T[] => junipersWeights.map(pick);

const list: readonly Animal[] = Object.values(animals);
const [sideMasses, sideLengths, scaled] = ["B", "C", "D"].map((letter) => block(`${letter}${SIDE + 2}`, SIDE_ROWS)) as [
  string,
  string,
  string,
];
const measured = `(${sideMasses}<>"")*(${sideLengths}<>"")`;

/** Weighings of the last so many days; a row whose date or mass is blank belongs to none. */
const recent = `(${dates}<>"")*(${masses}<>"")*(${dates}>=MAX(${dates})-${window})`;

const above = (row: number, letter: string): string => `${letter}$${FIRST}:${letter}${row - 1}`;

/** The mass or the date of the weighing before this one: a row without a mass is passed over. */
const massBefore = (row: number): string => lastFigure(above(row, "B"));
const dateBefore = (row: number): string => lastFigure(above(row, "B"), above(row, "A"));

/** Empty in the first row, and while no weighing stands above. */
const sinceBefore = (row: number, formula: string): string =>
  row === FIRST ? '=""' : `=IF(OR(A${row}="",B${row}="",COUNT(${above(row, "B")})=0),"",${formula})`;

const stands = (row: number): string =>
  `=IF(OR(A${row}="",B${row}=""),"",IF(${insideFast(`A${row}`, plan)},"In the fast: see the Winter log",` +
  `IF(OR(E${row}="",${alarm}=""),"",IF(E${row}<=-${alarm},"Lost "&${rounded(`-100*E${row}`)}&" % since the last",""))))`;

const [first, latest] = [`MIN(${dates})`, `MAX(${dates})`];
const summary =
  `=IF(OR(COUNT(${dates})=0,COUNT(${masses})=0),"",$C$7&": "&COUNT(${masses})&" weighings from "&${isoText(first)}&" to "&${isoText(latest)}` +
  `&", "&${rounded(`MIN(${masses})`)}&" to "&${rounded(`MAX(${masses})`)}&" g, "&${rounded(lastFigure(masses))}&" g at the last"` +
  `&IF(${TREND}="","","; "&${rounded(TREND)}&" g a week in the last "&${window}&" days")&".")`;

export const weights = assemble(
  {
    key: "weights",
    name: "Weights",
    sentence: "Mass and length of one animal over time; below, animals side by side.",
    cautions: ["sameScales", "narrowLengths", "noVet"],
    sources: ["theilSen", "peigGreen", "practice", "definition"],
    widths: [11.5, 8, 11.5, 9, 8.5, 8.5, 19, 1, 19, 10],
    cautionColumns: ["I", "J"],
  },
  heading("A6", "The animal, one a sheet", null, null),
  fields(
    "A7",
    [
      { label: "Animal", value: animals.juniper.label },
      {
        label: "Flag a loss of",
        value: 0.05,
        role: "setting",
        format: "percent",
        takes: number([0.001, 1]),
        note: "Share lost from one weighing to the next that calls for a look. Practice; laying costs far more.",
      },
      { label: "Trend of last days", value: 90, role: "setting", format: "whole", takes: number([14, 3660], "days") },
    ],
    2,
  ),
  heading("A10", "Winter plan", null, null),
  planFields("A11", 2),
  text("A17", fastWords(plan), 2, 3),
  heading("I15", "Now", null),
  fields("I16", [
    { label: "Mass, g", value: `=IF(COUNT(${masses})=0,"",${lastFigure(masses)})`, format: "tenth" },
    { label: "Length, cm", value: `=IF(COUNT(${lengths})=0,"",${lastFigure(lengths)})`, format: "tenth" },
    {
      label: "Trend, g a week",
      value: `=IF(OR(COUNT(${dates})=0,COUNT(${masses})=0,${window}=""),"",IF(SUMPRODUCT(${recent})<3,"",VIV.MASSTREND(IF(${recent},${dates},""),IF(${recent},${masses},""))))`,
      format: "hundredth",
      note: "Over the days given on the left, three weighings or more.",
    },
    {
      label: "Growth, % a day",
      value:
        `=IF(OR(COUNT(${dates})<2,COUNT(${masses})<2,COUNT(${masses})<>SUMPRODUCT((${dates}<>"")*(${masses}<>""))),"",` +
        `VIV.GROWTHRATE(INDEX(${masses},MATCH(TRUE,${masses}<>"",0)),INDEX(${dates},MATCH(TRUE,${masses}<>"",0)),${lastFigure(masses)},${lastFigure(masses, dates)}))`,
      format: "thousandth",
      note: "From the first weighing to the last, share of the body gained each day.",
    },
  ]),
  {
    charts: [
      {
        title: "Mass",
        area: "D6:G19",
        along: block(`A${FIRST}`, LOG_ROWS),
        axis: "g",
        series: [{ draw: "line", name: "Mass", values: block(`B${FIRST}`, LOG_ROWS) }],
        summary: "A20",
      },
    ],
  },
  text("A20", summary, 2, 10),
  table({
    at: `A${TABLE}`,
    rows: LOG_ROWS,
    columns: [
      { title: "Date", input: filled(([iso]) => day(iso)), format: "date", takes: date, note: "Oldest first." },
      { title: "Mass g", input: filled(([, mass]) => mass), format: "tenth", takes: number(MASS, "g") },
      {
        title: "Length cm",
        input: filled(([, , length]) => length),
        format: "tenth",
        takes: number([1, 1000], "cm"),
        note: "From snout to tail tip, or to the vent: always the same way.",
      },
      {
        title: "Change g",
        each: (row) => sinceBefore(row, `B${row}-${massBefore(row)}`),
        format: "tenth",
        note: "Since the last weighing.",
      },
      {
        title: "Change",
        each: (row) => sinceBefore(row, `-VIV.MASSLOSS(${massBefore(row)},B${row})`),
        format: "percent",
        note: "Since the last weighing; a loss is negative.",
      },
      {
        title: "% a day",
        each: (row) =>
          sinceBefore(
            row,
            `IF(A${row}=${dateBefore(row)},"",VIV.GROWTHRATE(${massBefore(row)},${dateBefore(row)},B${row},A${row}))`,
          ),
        format: "thousandth",
        note: "Growth since the last weighing.",
      },
      { title: "Seen", input: filled(([, , , seen]) => seen ?? null) },
    ],
  }),
  heading(`I${TABLE}`, "What stands out", null),
  {
    blocks: [
      { at: `I${FIRST}`, role: "computed", rows: Array.from({ length: LOG_ROWS }, (_, i) => [stands(FIRST + i)]) },
    ],
  },
  {
    rules: [
      { range: block(`I${FIRST}`, LOG_ROWS, 2), when: `=LEFT($I${FIRST},2)="In"`, look: "note" },
      { range: block(`I${FIRST}`, LOG_ROWS, 2), when: `=LEN($I${FIRST})>0`, look: "care" },
    ],
  },
  heading(`A${SIDE}`, "Condition: your animals side by side", ...Array<null>(6).fill(null)),
  table({
    at: `A${SIDE + 1}`,
    rows: SIDE_ROWS,
    columns: [
      { title: "Animal", input: list.map(({ label }) => label) },
      { title: "Mass g", input: list.map(({ mass }) => mass), format: "tenth", takes: number(MASS, "g") },
      { title: "Length cm", input: list.map(({ length }) => length), format: "tenth", takes: number([1, 1000], "cm") },
      {
        title: "Scaled g",
        spilled: `=IF(SUMPRODUCT(${measured})<3,"",VIV.SCALEDMASS(IF(${measured},${sideMasses},""),IF(${measured},${sideLengths},"")))`,
        format: "tenth",
        note: "What each would weigh at the mean length of all: three animals of one kind, or more.",
      },
      {
        title: "Of mean",
        each: (row) => `=IF(ISNUMBER(D${row}),D${row}/AVERAGE(${fixed(scaled)}),"")`,
        format: "percent",
      },
    ],
  }),
  cell(`G${SIDE + 1}`, "heading", "Beside the others"),
  {
    blocks: [
      {
        at: `G${SIDE + 2}`,
        role: "computed",
        rows: Array.from({ length: SIDE_ROWS }, (_, i) => {
          const share = `E${SIDE + 2 + i}`;
          return [once([share], `IF(${share}<0.9,"thinner",IF(${share}>1.1,"heavier","about the mean"))`)];
        }),
      },
    ],
    notes: [
      {
        at: `G${SIDE + 1}`,
        text: "More than a tenth off the mean of these animals: a reason to look, no verdict. Common practice, no source.",
      },
    ],
    rules: [
      {
        range: block(`G${SIDE + 2}`, SIDE_ROWS),
        when: `=OR($G${SIDE + 2}="thinner",$G${SIDE + 2}="heavier")`,
        look: "note",
      },
    ],
  },
);
