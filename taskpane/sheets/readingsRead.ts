import { limits, pasted } from "./readingsInputs";
import { answers } from "./shared/answers";
import { form } from "./shared/form";
import { f } from "./shared/formula";
import { named, type Cell, type Column } from "./shared/names";
import { moreThanNone } from "./shared/rules";
import { blanksKept } from "./shared/words";

/** What was read: the rows in use, the gaps between them, and the time outside the limits. */

/** Days that the day table has room for. */
export const DAYS = 200;

const { low, high, longest } = limits;

/** The row of a column's last figure, counted from the first; 0 where there is none. */
const lastRow = (column: Column): string => `IFNA(MATCH(9E+300,${column}),0)`;
/** The rows of the paste area that are in use; formulas look at these only. */
const used = named("read.rows");
const inUse = (column: Column): string => `${column.at(1)}:INDEX(${column},${used})`;
export const times = inUse(pasted.time);
export const temperatures = blanksKept(inUse(pasted.celsius));
/** Start, end and hours of each gap; #N/A where there is none. */
export const silences = `VIV.READINGGAPS(${times},${longest})`;

export const ready = (formula: string, ...more: readonly Cell[]): string =>
  f`IF(OR(${[used, ...more].map((cell) => `${cell}=""`).join(",")}),"",${formula})`;
/** A table of days, or why there is none: a spill that meets the words below it would show nothing at all. */
export const byDay = (formula: string): string =>
  `IF(INT(MAX(${times}))-INT(MIN(${times}))>=${DAYS},"More than ${DAYS} days: one winter a sheet",${formula})`;

export const read = form(
  "read",
  "What was read",
  {
    rows: {
      label: "Rows down to the last",
      wide: 3,
      value: f`IF(COUNT(${pasted.time},${pasted.celsius})=0,"",MAX(${lastRow(pasted.time)},${lastRow(pasted.celsius)}))`,
      format: "whole",
    },
    gaps: {
      label: "Gaps",
      wide: 3,
      value: ready(`IFNA(ROWS(${silences}),0)`, longest),
      format: "whole",
      note: "Listed from column S on.",
      rules: [moreThanNone("care")],
    },
    longestGap: {
      label: "Longest gap",
      unit: "hours",
      wide: 3,
      value: ready(`IFNA(MAX(INDEX(${silences},0,3)),"none")`, longest),
      format: "tenth",
    },
  },
  { across: 3 },
);

export const outside = answers(
  "outside",
  "Time outside the limits",
  ready(`TRANSPOSE(VIV.TIMEOUTSIDE(${times},${temperatures},${low},${high},${longest}))`, low, high, longest),
  {
    cold: { label: "Hours too cold", rules: [moreThanNone("cold")] },
    warm: { label: "Hours too warm", rules: [moreThanNone("stop")] },
    longestWarm: { label: "Longest too warm, hours", rules: [moreThanNone("stop")] },
    lowest: "Lowest, °C",
    highest: "Highest, °C",
    degreeHours: "Too warm, degree-hours",
    notCovered: { label: "Hours not covered", rules: [moreThanNone("care")] },
    skipped: { label: "Rows skipped", format: "whole", rules: [moreThanNone("care")] },
    longestCold: { label: "Longest too cold, hours", rules: [moreThanNone("cold")] },
    degreeHoursCold: "Too cold, degree-hours",
  },
  { across: 5, format: "tenth" },
);
