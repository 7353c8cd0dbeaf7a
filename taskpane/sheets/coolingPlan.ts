import { ELEVATION } from "../../functions/shared/limits";
import { PLAN_ROWS } from "../../functions/shared/plan";
import { block } from "./shared/address";
import { assemble } from "./shared/assemble";
import { cell, fields, heading, labels, spilled, table, text, together } from "./shared/part";
import { animals, winter } from "./shared/scenario";
import { date, MASS, number, oneOf, whole, validationOf } from "./shared/takes";
import { isoText, once } from "./shared/words";

/** The longest legs that the plan takes; the table of weeks holds them all together. */
const MOST_DAYS = { clear: 120, cool: 150, cold: 200, warm: 150, settle: 60 } as const;
const WEEK_ROWS = Math.ceil(Object.values(MOST_DAYS).reduce((sum, days) => sum + days, 0) / 7) + 1;

// The first row of each part.
const PLAN = 6;
const CHECK = 19;
const CHART = 27;
const WEEKS = 46;
const STAGES = WEEKS + WEEK_ROWS + 3;
const LINES = STAGES + 8;
/** As many lines as can be told at once: one of each figure that the rules look at. */
const MOST_LINES = 12;

const backwards = "backwards";
const [way, when, clear, cool, cold, warm, settle, warmSet, coldSet] = [
  "B8",
  "B9",
  "B10",
  "B11",
  "B12",
  "B13",
  "B14",
  "B15",
  "B16",
] as const;
const dates = `$E$${PLAN + 1}:$E$${PLAN + 6}`;
const at = (row: number): string => `$E$${PLAN + row}`;
const [firstDate, lastDate] = [at(1), at(6)] as const;
const planArguments = [when, clear, cool, cold, warm, settle].join(",");

/** What is done each week of a stage: common practice, for the keeper to change. */
const stages = [
  ["Feeding", "Fed as usual. Well, in good weight and past its shed before the plan."],
  ["Clearing", "No food. Stay warm until the gut is empty. Soak, weigh, fresh water."],
  ["Cooling", "No food. Turn down to the set-point. Shorten the light. Weigh, fresh water."],
  ["Cold", "Dark, quiet. Thermometer daily. Weigh, fresh water, air the box."],
  ["Warming", "No food yet. Turn up to the set-point. More light. Weigh, water, soak."],
  ["Settling", "Warm, with a basking place. No food until it moves well. Water, weigh."],
] as const;

const checks = [
  ["yes", "Reptile vet has seen the animal"],
  ["yes", "Droppings checked for parasites"],
  ["yes", "In good weight, mass written down"],
  ["no", "Gut empty: droppings seen"],
  ["no", "Soaked, and has drunk"],
  ["yes", "Box escape-proof, with air holes"],
  ["yes", "Thermometer checked in melting ice"],
  ["no", "Alarm set for too warm, too cold"],
  ["no", "Cold place held steady for a week"],
  ["yes", "Water bowl that cannot tip"],
  ["no", "Somebody looks in when I am away"],
] as const;

const plan = together(
  heading(`A${PLAN}`, "The plan", null),
  fields(`A${PLAN + 1}`, [
    { label: "Animal", value: animals.juniper.label },
    {
      label: "Planned",
      value: "forwards",
      takes: oneOf("forwards", backwards),
      note: "Forwards from the last meal, or backwards from the first meal after the cold.",
    },
    {
      label: "Day of last or first meal",
      value: winter.lastMeal,
      format: "date",
      takes: date,
      note: "Forwards: the last meal. Backwards: the first.",
    },
    {
      label: "Days to clear the gut",
      value: winter.clear,
      format: "whole",
      takes: whole([0, MOST_DAYS.clear], "days"),
    },
    { label: "Days to cool down", value: winter.cool, format: "whole", takes: whole([1, MOST_DAYS.cool], "days") },
    { label: "Days in the cold", value: winter.cold, format: "whole", takes: whole([0, MOST_DAYS.cold], "days") },
    { label: "Days to warm up", value: winter.warm, format: "whole", takes: whole([1, MOST_DAYS.warm], "days") },
    { label: "Days to settle", value: winter.settle, format: "whole", takes: whole([0, MOST_DAYS.settle], "days") },
    { label: "Warm set-point, °C", value: winter.warmSetPoint, format: "tenth", takes: number([5, 40], "°C") },
    { label: "Cold set-point, °C", value: winter.coldSetPoint, format: "tenth", takes: number([0, 30], "°C") },
  ]),
  heading(`D${PLAN}`, "The six dates", "Date", "°C"),
  spilled(
    `D${PLAN + 1}`,
    once(
      [way, when, clear, cool, cold, warm, settle],
      `IF(${way}="${backwards}",VIV.RAMPDATESTO(${planArguments}),VIV.RAMPDATES(${planArguments}))`,
    ),
    [PLAN_ROWS.length, 2],
  ),
  { formats: [{ range: block(`E${PLAN + 1}`, PLAN_ROWS.length), format: "date" }] },
  spilled(
    `F${PLAN + 1}`,
    once([firstDate, warmSet, coldSet], `VIV.SETPOINT(${dates},${dates},${warmSet},${coldSet})`),
    [PLAN_ROWS.length, 1],
    "tenth",
  ),
);

const [mass, litres, elevation] = ["F14", "F15", "F16"] as const;
const air = together(
  heading(`D${PLAN + 7}`, "Air in a shut box", null, null),
  fields(
    "D14",
    [
      { label: "Mass of the animal, g", value: animals.juniper.mass, format: "whole", takes: number(MASS, "g") },
      {
        label: "Inside of the box, litres",
        value: winter.boxLitres,
        format: "tenth",
        takes: number([0.05, 5000], "litres"),
      },
      { label: "Elevation of the house, m", value: 182, format: "whole", takes: number(ELEVATION, "m") },
    ],
    2,
  ),
  heading("A17", "Hours until a box shut tight must be aired", null, null, "Soonest", "Likely", "Latest"),
  { blocks: [{ at: "A18", role: "label", rows: [["In the cold"]] }] },
  ...["D18", "E18", "F18"].map((at, i) =>
    cell(
      at,
      "computed",
      once(
        [mass, litres, elevation, coldSet],
        `INDEX(VIV.BOXAIR(${mass},${coldSet},${litres},${elevation}),1,${i + 1})`,
      ),
      { format: "whole" },
    ),
  ),
);

/** Each line by itself: an IF over the whole column is one for every row only where formulas are arrays by nature. */
const oneByOne = Array.from({ length: MOST_LINES }, (_, i) => LINES + 1 + i)
  .map((row) => `IF(A${row}="","",A${row}&": "&B${row})`)
  .join(",");

/** Whole sentences, which no line of a table would hold: worked out at the foot, and shown together at the top. */
const check = together(
  heading(
    `A${CHECK}`,
    "What stands out in this plan (meals in the fast: see the Feeding log)",
    ...Array<null>(9).fill(null),
  ),
  text(`A${CHECK + 1}`, once([`A${LINES + 1}`], `TEXTJOIN(CHAR(10),TRUE,${oneByOne})`), CHART - CHECK - 1, 10),
  {
    rules: (["stop", "care", "note"] as const).map((look) => ({
      range: block(`A${CHECK + 1}`, CHART - CHECK - 1, 10),
      when: `=LEFT($A$${CHECK + 1},4)="${look}"`,
      look,
    })),
  },
  heading(`A${LINES}`, "What stands out, line by line", ...Array<null>(9).fill(null)),
  spilled(`A${LINES + 1}`, once([firstDate, warmSet, coldSet], `VIV.RAMPCHECK(${dates},${warmSet},${coldSet})`), [
    MOST_LINES,
    2,
  ]),
);

const weekFirst = WEEKS + 2;
const weekDates = block(`A${weekFirst}`, WEEK_ROWS);
const weekStages = block(`B${weekFirst}`, WEEK_ROWS);

/** A step a week from the last meal to the first. No step hangs on the one before it: a long chain is slow to follow. */
const stepDate = (row: number): string => {
  const step = `${firstDate}+${7 * (row - weekFirst)}`;
  return once([firstDate], `IF(${step}<${lastDate}+7,${step},"")`);
};

/** The words of the day's stage, from the table below; the days of the two meals have their own. */
const toDo =
  `IF(${weekDates}>=${lastDate},"First meal, half the usual.",IF(${weekDates}=${firstDate},"Last meal, a small one. No food after it.",` +
  `${stages.reduceRight((rest, [stage], i) => `IF(${weekStages}="${stage}",$D$${STAGES + 1 + i},${rest})`, '""')}))`;

const weeks = together(
  heading(`A${WEEKS}`, "Week by week, down and up again", ...Array<null>(9).fill(null)),
  table({
    at: `A${WEEKS + 1}`,
    rows: WEEK_ROWS,
    columns: [
      { title: "Date", each: stepDate, format: "date" },
      { title: "Stage", spilled: once([firstDate], `IF(${weekDates}="","",VIV.STAGE(${weekDates},${dates}))`) },
      {
        title: "°C",
        spilled: once(
          [firstDate, warmSet, coldSet],
          `IF(${weekDates}="","",VIV.SETPOINT(${weekDates},${dates},${warmSet},${coldSet}))`,
        ),
        format: "tenth",
      },
      { title: "What to do", spilled: once([firstDate], `IF(${weekDates}="","",${toDo})`) },
    ],
  }),
  heading(`E${WEEKS + 1}`, ...Array<null>(6).fill(null)),
  {
    rules: [
      {
        range: block(`A${weekFirst}`, WEEK_ROWS, 3),
        when: `=AND(ISNUMBER($A${weekFirst}),$A${weekFirst}>=${at(3)},$A${weekFirst}<${at(4)})`,
        look: "cold",
      },
    ],
  },
  heading(`A${STAGES}`, "What to do in each stage (practice, yours to change)", ...Array<null>(9).fill(null)),
  labels(
    `A${STAGES + 1}`,
    stages.map(([stage]) => stage),
  ),
  { blocks: [{ at: `D${STAGES + 1}`, role: "setting", rows: stages.map(([, words]) => [words]) }] },
  { merges: stages.map((_, i) => block(`D${STAGES + 1 + i}`, 1, 7)) },
);

const checkList = together(
  heading(`F${CHART}`, "Done", null, "Before the first cooling day", null, null),
  { blocks: [{ at: `F${CHART + 1}`, role: "input", rows: checks.map(([done]) => [done]) }] },
  { validation: [validationOf(block(`F${CHART + 1}`, checks.length), oneOf("yes", "no"))] },
  labels(
    `H${CHART + 1}`,
    checks.map(([, words]) => words),
    3,
  ),
  cell(
    `H${CHART + 1 + checks.length}`,
    "computed",
    `=IF(COUNTA(${block(`F${CHART + 1}`, checks.length)})=0,"",COUNTIF(${block(`F${CHART + 1}`, checks.length)},"yes")&" of ${checks.length} done")`,
  ),
  {
    rules: [
      { range: block(`F${CHART + 1}`, checks.length), when: `=$F${CHART + 1}="no"`, look: "care" },
      { range: block(`F${CHART + 1}`, checks.length), when: `=$F${CHART + 1}="yes"`, look: "good" },
    ],
  },
);

const summary =
  `=IF(OR(${firstDate}="",F${PLAN + 1}=""),"","From "&${warmSet}&" °C on "&${isoText(at(2))}&" down to "&${coldSet}&" °C on "&${isoText(at(3))}` +
  `&", cold until "&${isoText(at(4))}&", "&${warmSet}&" °C again on "&${isoText(at(5))}&". No food from "&${isoText(at(1))}&" to "&${isoText(at(6))}&".")`;

export const coolingPlan = assemble(
  {
    key: "coolingPlan",
    name: "Cooling plan",
    sentence: "From the last meal into the cold and back to the first meal, week by week.",
    cautions: ["coldKills", "noFoodInTheCold", "openTheBox", "noVet"],
    sources: ["practice", "bonaGalloLicht", "andrewsPough", "costanzo", "stubblefield"],
    widths: [24, 11.5, 7, 16, 11.5, 8, 1, 11, 11, 10.8],
    cautionColumns: ["H", "J"],
  },
  plan,
  air,
  check,
  {
    charts: [
      {
        title: "Set-point through the winter",
        area: `A${CHART}:E${CHART + 15}`,
        along: block(`E${PLAN + 1}`, PLAN_ROWS.length),
        axis: "°C",
        series: [{ draw: "line", name: "Set-point", values: block(`F${PLAN + 1}`, PLAN_ROWS.length) }],
        summary: `A${CHART + 16}`,
      },
    ],
  },
  text(`A${CHART + 16}`, summary, 2, 5),
  checkList,
  weeks,
  {
    notes: [
      {
        at: `A${WEEKS + 1}`,
        text: "A step a week from the last meal on. The exact days of each change stand in the six dates above.",
      },
    ],
  },
);
