import { form } from "./shared/form";
import { f } from "./shared/formula";
import { joinedLines } from "./shared/lines";
import { log } from "./shared/log";
import { namedColumn } from "./shared/names";
import { LEVELS } from "./shared/rules";
import { words } from "./shared/running";
import { winter } from "./shared/scenario";
import { date, oneOf } from "./shared/takes";
import { blanksKept } from "./shared/words";

/** Whether one of the young may be cooled in its first winter: usual is that it is not. */

/** As many lines as can be told at once: one of each figure that the rules look at. */
const MOST_LINES = 8;
const [labels, hatched, then, now, winters, standsOut] = (
  ["label", "hatched", "then", "now", "winters", "standsOut"] as const
).map((one) => namedColumn(`log.${one}`));

export const firstWinter = form(
  "firstWinter",
  "First winter, one of the young",
  {
    label: { label: "Label", value: "J3", note: "As it is called in the table above." },
    lastMeal: {
      label: "Last meal before it",
      value: winter.dates[0] ?? null,
      format: "date",
      takes: date,
      from: "coolingPlan.dates.lastMeal",
    },
    starts: {
      label: "Cooling starts",
      value: winter.dates[1] ?? null,
      format: "date",
      takes: date,
      from: "coolingPlan.dates.coolingStarts",
    },
    shedding: { label: "In shed", value: "no", takes: oneOf("yes", "no") },
    breathing: { label: "Breath", value: "clear", takes: oneOf("clear", "noisy") },
    vetSeen: { label: "Seen by a vet", value: null, takes: oneOf("yes", "no"), note: "A reptile vet." },
    parasites: { label: "Parasites", value: null, takes: oneOf("none", "found") },
  },
  { across: 2 },
);
const { label, lastMeal, starts, shedding, breathing, vetSeen, parasites } = firstWinter;

const isListed = `COUNTIF(${labels},${label})>0`;
const its = (column: unknown): string => `INDEX(${String(column)},MATCH(${label},${labels},0))`;
const age = `IF(OR(${starts}="",${its(hatched)}=""),"",VIV.AGE(${its(hatched)},${starts}))`;
const looked = [shedding, `"no"`, breathing, vetSeen, parasites, lastMeal, starts].map((one) =>
  typeof one === "string" ? one : blanksKept(`${one}`),
);

export const winterLines = log(
  "winterLines",
  MOST_LINES,
  {
    level: {
      title: null,
      // Its mass when hatched stands for the mass before.
      spilled: f`IF(OR(${label}="",NOT(${isListed})),"",VIV.WINTERREADY("unknown",${age},${blanksKept(its(now))},${blanksKept(its(then))},${looked.join(",")}))`,
    },
    told: { title: null, covered: true, wide: 9 },
  },
  { title: "Whether it may be cooled, line by line", titleLines: 0 },
);

const hungry = `IF(LEFT(${its(standsOut)},4)="Eats","","stop: It does not eat by itself: no young animal is cooled before it does; see your reptile vet (common practice, no source)."&CHAR(10))`;
export const winterSaid = words(
  "winterSaid",
  [7, 12],
  f`IF(${label}="","Whose first winter? Give a label: whether it may be cooled was not looked at.",IF(NOT(${isListed}),"No such label in the table above.",IF(${its(winters)}="no",${label}&" does not winter: it stays warm and is fed all year, out of every winter plan.",${hungry}&${joinedLines(MOST_LINES, winterLines)})))`,
  { title: "Stop: do not cool. Care: not looked at, or know why", rules: LEVELS },
);
