import { block, fixed } from "./shared/address";
import { assemble, EXAMPLE } from "./shared/assemble";
import { fields, heading, spilled, table, text } from "./shared/part";
import { boxLimits, boxReadings, winter } from "./shared/scenario";
import { number, whole } from "./shared/takes";
import { hasPlan, planDates, planFields } from "./shared/winterPlan";
import { blanksKept, isoText, rounded } from "./shared/words";

const KEY = "readings";
const FIRST = 7;

/** Where readings are written or pasted: time in the first column, °C in the second. A winter's, one each quarter of an hour. */
export const paste = { sheet: KEY, at: `A${FIRST}`, rows: 20_000, columns: 2 } as const;

/** Rows with a frame, to show where to paste. */
const FRAMED = 240;
/** Days that the day table has room for. */
const DAYS = 200;
const CHARTS = 25;
const TABLE = 59;
const TOP = TABLE + 1;

const [low, high, longest, warm, cold] = ["$G$7", "$G$8", "$G$9", "$G$17", "$G$18"] as const;
const plan = planDates("D11", 3);
/** How many rows of the paste area are in use; formulas look at these only. */
const used = "$G$20";

const area = (column: string): string => fixed(block(`${column}${FIRST}`, paste.rows));
const inUse = (column: string): string => `$${column}$${FIRST}:INDEX(${area(column)},${used})`;
const times = inUse("A");
const temperatures = blanksKept(inUse("B"));
/** The row of a column's last figure, counted from the first; 0 where there is none. */
const lastRow = (column: string): string => `IFNA(MATCH(9E+300,${area(column)}),0)`;

const daily = (column: string): string => block(`${column}${TOP}`, DAYS);
const off = daily("P");
/** Start, end and hours of each gap; #N/A where there is none. */
const silences = `VIV.READINGGAPS(${times},${longest})`;

const ready = (formula: string, ...more: readonly string[]): string =>
  `=IF(OR(${[`${used}=""`, ...more.map((cell) => `${cell}=""`)].join(",")}),"",${formula})`;
/** A table of days, or why there is none: a spill that meets the words below it would show nothing at all. */
const byDay = (formula: string): string =>
  `IF(INT(MAX(${times}))-INT(MIN(${times}))>=${DAYS},"More than ${DAYS} days: one winter a sheet",${formula})`;

const blanks = (count: number): null[] => Array<null>(count).fill(null);

export const readings = assemble(
  {
    key: KEY,
    name: "Readings",
    sentence: "A logger's readings by the day, against limits and the plan.",
    cautions: ["probePlace", "skippedReadings", "coldKills", "noVet"],
    sources: ["definition", "practice"],
    widths: [17, 5.9, 0.6, 11, 5.2, 5.2, 5.2, 5.2, 5.2, 5, 5, 5, 11, 6, 5.8, 6.2, 1, 17, 17, 8],
    cautionColumns: ["K", "P"],
    example: `${EXAMPLE} an invented box. Look, clear, put in your own.`,
    footColumn: "D",
  },
  heading(`A${FIRST - 1}`, "Time", "°C"),
  {
    blocks: [
      {
        at: paste.at,
        role: "input",
        rows: Array.from({ length: FRAMED }, (_, i) => [boxReadings[i]?.[0] ?? null, boxReadings[i]?.[1] ?? null]),
        room: [paste.rows, paste.columns],
      },
    ],
    formats: [
      { range: block(paste.at, FRAMED), format: "moment" },
      { range: block(`B${FIRST}`, FRAMED), format: "tenth" },
    ],
    notes: [
      {
        at: `A${FIRST - 1}`,
        text: `Paste here, time left and °C right, up to ${paste.rows} rows; the frame ends sooner, the room does not. The pane's Readings reads a file into it.`,
      },
    ],
  },
  heading("D6", "Limits", ...blanks(5)),
  fields(
    "D7",
    [
      { label: "Right from, °C", wide: 3, value: boxLimits.low, format: "tenth", takes: number([-100, 150], "°C") },
      { label: "Right to, °C", wide: 3, value: boxLimits.high, format: "tenth", takes: number([-100, 150], "°C") },
      {
        label: "Joined up to, minutes",
        wide: 3,
        value: 180,
        role: "setting",
        format: "whole",
        takes: whole([1, 100_000], "minutes"),
        note: "Two readings further apart make a gap, of which nothing is assumed. Practice.",
      },
    ],
    3,
  ),
  heading("D10", "Winter plan", ...blanks(5)),
  planFields("D11", 3, 3),
  fields(
    "D17",
    [
      {
        label: "Warm set-point, °C",
        wide: 3,
        value: winter.warmSetPoint,
        format: "tenth",
        takes: number([5, 40], "°C"),
      },
      {
        label: "Cold set-point, °C",
        wide: 3,
        value: winter.coldSetPoint,
        format: "tenth",
        takes: number([0, 30], "°C"),
      },
    ],
    3,
  ),
  heading("D19", "What was read", ...blanks(5)),
  fields(
    "D20",
    [
      {
        label: "Rows down to the last",
        wide: 3,
        value: `=IF(COUNT(${area("A")},${area("B")})=0,"",MAX(${lastRow("A")},${lastRow("B")}))`,
        format: "whole",
      },
      {
        label: "Gaps",
        wide: 3,
        value: ready(`IFNA(ROWS(${silences}),0)`, longest),
        format: "whole",
        note: "Listed from column R on.",
      },
      {
        label: "Longest gap, hours",
        wide: 3,
        value: ready(`IFNA(MAX(INDEX(${silences},0,3)),"none")`, longest),
        format: "tenth",
      },
    ],
    3,
  ),
  { rules: [{ range: "D21:I21", when: "=N($G$21)>0", look: "care" }] },
  heading("K14", "Time outside the limits", ...blanks(5)),
  {
    blocks: [
      {
        at: "K15",
        role: "label",
        rows: [
          ["Hours too cold"],
          ["Hours too warm"],
          ["Longest too warm, hours"],
          ["Lowest, °C"],
          ["Highest, °C"],
          ["Too warm, degree-hours"],
          ["Hours not covered"],
          ["Rows skipped"],
        ],
      },
    ],
    rules: [
      { range: "K15:P15", when: "=N($P$15)>0", look: "cold" },
      { range: "K16:P17", when: "=N($P16)>0", look: "stop" },
      { range: "K21:P22", when: "=N($P21)>0", look: "care" },
    ],
  },
  spilled(
    "P15",
    ready(`TRANSPOSE(VIV.TIMEOUTSIDE(${times},${temperatures},${low},${high},${longest}))`, low, high, longest),
    [8, 1],
    "tenth",
  ),
  { formats: [{ range: "P22", format: "whole" }] },
  {
    charts: [
      {
        title: "Lowest to highest, day by day",
        area: `D${CHARTS}:P${CHARTS + 13}`,
        along: daily("D"),
        axis: "°C",
        series: [
          { draw: "band", name: "Lowest to highest", low: daily("F"), high: daily("E") },
          { draw: "line", name: "Mean", values: daily("I") },
        ],
        summary: `D${CHARTS + 14}`,
      },
      {
        title: "Mean of the day and the plan",
        area: `D${CHARTS + 17}:P${CHARTS + 30}`,
        along: daily("M"),
        axis: "°C",
        series: [
          { draw: "line", name: "Set-point", values: daily("N") },
          { draw: "line", name: "Mean", values: daily("O") },
        ],
        summary: `D${CHARTS + 31}`,
      },
    ],
  },
  text(
    `D${CHARTS + 14}`,
    `=IF(OR(COUNT(${daily("D")})=0,P15=""),"",COUNT(${daily("D")})&" days from "&${isoText(`MIN(${daily("D")})`)}&" to "&${isoText(`MAX(${daily("D")})`)}` +
      `&", "&${rounded("P18")}&" to "&${rounded("P19")}&" °C. Too warm for "&${rounded("P16")}&" hours, too cold for "&${rounded("P15")}&", not covered "&${rounded("P21")}&".")`,
    2,
    13,
  ),
  text(
    `D${CHARTS + 31}`,
    `=IF(COUNT(${off})=0,"","Against the plan, by the day's mean: up to "&${rounded(`MAX(0,MAX(${off}))`)}&" K too warm and "&${rounded(`MAX(0,-MIN(${off}))`)}&" K too cold, "&${rounded(`AVERAGE(${off})`)}&" K on average.")`,
    2,
    13,
  ),
  table({
    at: `D${TABLE}`,
    rows: DAYS,
    columns: [
      { title: "Date", spilled: ready(byDay(`VIV.DAYTABLE(${times},${temperatures})`)), across: 8, format: "date" },
      { title: "High", covered: true, format: "tenth" },
      { title: "Low", covered: true, format: "tenth" },
      { title: "Swing", covered: true, format: "tenth", note: "High less low, K." },
      { title: "Mid", covered: true, format: "tenth", note: "Half-way between high and low." },
      {
        title: "Mean",
        covered: true,
        format: "tenth",
        note: "Weighed by time. Under 8 readings a day, their plain mean.",
      },
      { title: "Read", covered: true, format: "whole", note: "Readings of the day." },
      {
        title: "Skip",
        covered: true,
        format: "whole",
        note: "Rows of the day without a temperature that can be read.",
      },
      {
        title: "Sign",
        each: (row) =>
          `=IF(OR(E${row}="",F${row}="",${low}="",${high}=""),"",IF(E${row}>${high},IF(F${row}<${low},"both","warm"),IF(F${row}<${low},"cold","ok")))`,
        note: "warm: above the upper limit at some time. cold: below the lower one. both: both.",
      },
      {
        title: "Date",
        spilled: ready(
          `IF(${hasPlan(plan)},${byDay(`VIV.TRACKING(${times},${temperatures},${plan},${warm},${cold})`)},"")`,
          warm,
          cold,
        ),
        across: 4,
        format: "date",
      },
      { title: "Plan", covered: true, format: "tenth", note: "The set-point of the winter plan, °C." },
      { title: "Mean", covered: true, format: "tenth" },
      { title: "Off K", covered: true, format: "tenth", note: "Mean less set-point: above 0 is too warm." },
    ],
  }),
  {
    rules: [
      { range: daily("E"), when: `=AND(ISNUMBER($E${TOP}),ISNUMBER(${high}),$E${TOP}>${high})`, look: "stop" },
      { range: daily("F"), when: `=AND(ISNUMBER($F${TOP}),ISNUMBER(${low}),$F${TOP}<${low})`, look: "cold" },
      { range: daily("L"), when: `=OR($L${TOP}="warm",$L${TOP}="both")`, look: "stop" },
      { range: daily("L"), when: `=$L${TOP}="cold"`, look: "cold" },
      { range: daily("K"), when: `=N($K${TOP})>0`, look: "care" },
    ],
  },
  heading(`R${FIRST - 1}`, "Gap from", "to", "Hours"),
  spilled(`R${FIRST}`, ready(`IFNA(${silences},"no gap")`, longest), [DAYS, 3]),
  {
    formats: [
      { range: block(`R${FIRST}`, DAYS, 2), format: "moment" },
      { range: block(`T${FIRST}`, DAYS), format: "tenth" },
    ],
  },
);
