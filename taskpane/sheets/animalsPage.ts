import { care, type Phase } from "../../functions/rules/stages";
import { plans } from "./animalsFigures";
import { form } from "./shared/form";
import { f, once } from "./shared/formula";
import { log, type LogColumn } from "./shared/log";
import type { Cell } from "./shared/names";
import { words } from "./shared/running";
import { number } from "./shared/takes";
import type { PLAN_DATES } from "./shared/winterPlan";

/** One page to print for whoever looks in while the keeper is away. */

const blank = (label: string) => ({ label, value: null, wide: 3 }) as const;
export const numbers = form(
  "numbers",
  "One page to print, for whoever looks in",
  {
    keeper: blank("Keeper, phone"),
    away: blank("Away from, until"),
    vet: blank("Reptile vet, phone"),
    nights: blank("Vet at night, phone"),
    tooCold: {
      label: "Too cold below, °C: call at once",
      value: 4,
      wide: 3,
      format: "tenth",
      takes: number([0, 30]),
      from: "winterLog.animal.tooCold",
    },
    tooWarm: {
      label: "In the cold, too warm above, °C: call at once",
      value: 10,
      wide: 3,
      format: "tenth",
      takes: number([0, 30]),
      from: "winterLog.animal.tooWarm",
    },
  },
  { across: 3 },
);

const from = [
  ["Last meal", "lastMeal"],
  ["Clearing", "lastMeal"],
  ["Cooling", "coolingStarts"],
  ["Cold", "intoTheCold"],
  ["Warming", "warmingStarts"],
  ["Settling", "warmAgain"],
  ["First meals", "firstMeal"],
] as const satisfies readonly (readonly [Phase, (typeof PLAN_DATES)[number]])[];

/** The days on which the stages of a plan begin, under the plan's name. */
const fromOf = (name: Cell, i: number): LogColumn => ({
  title: f`IF(${name}="",${i === 0 ? '"From"' : '""'},${name})`,
  format: "date",
  each: ({ stage }) => {
    const [phase, key] = from[(stage?.row ?? 1) - 1] as (typeof from)[number];
    const day = plans.each(key)[i] as Cell;
    return phase === "Clearing" ? once`${day}+1` : once`${day}`;
  },
});
export const atEach = log(
  "atEach",
  from.length,
  {
    stage: { title: "In winter", wide: 2, joined: true, label: from.map(([phase]) => phase) },
    toDo: { title: "What to do", label: from.map(([phase]) => care[phase].toDo) },
    never: { title: "What never to do", label: from.map(([phase]) => care[phase].never) },
    ...Object.fromEntries(plans.names.map((name, i) => [`from${i + 1}`, fromOf(name, i)])),
  },
  { rowLines: 3, titleLines: 2 },
);

export const note = words(
  "note",
  [2, 6],
  "Do not warm, wake, feed or handle an animal to see whether it is well. Look, read the thermometer, write both down. Breath that bubbles or clicks, an open mouth, an animal on its back, or a figure past its limit: call the vet first, then the keeper.",
);
