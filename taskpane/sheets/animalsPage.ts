import { care, type Phase } from "../../functions/rules/stages";
import { plan } from "./animalsFigures";
import { form } from "./shared/form";
import { once } from "./shared/formula";
import { log } from "./shared/log";
import type { Cell } from "./shared/names";
import { words } from "./shared/running";
import { number } from "./shared/takes";

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
      label: "Too warm above, °C: call at once",
      value: 10,
      wide: 3,
      format: "tenth",
      takes: number([0, 30]),
      from: "winterLog.animal.tooWarm",
    },
  },
  { across: 3 },
);

const { lastMeal, coolingStarts, intoTheCold, warmingStarts, warmAgain, firstMeal } = plan;
const from: readonly (readonly [Phase, Cell])[] = [
  ["Last meal", lastMeal],
  ["Clearing", lastMeal],
  ["Cooling", coolingStarts],
  ["Cold", intoTheCold],
  ["Warming", warmingStarts],
  ["Settling", warmAgain],
  ["First meals", firstMeal],
];
export const atEach = log(
  "atEach",
  from.length,
  {
    stage: { title: "In winter", label: from.map(([phase]) => phase) },
    from: {
      title: "From",
      format: "date",
      each: ({ stage: { row } }) => {
        const [phase, day] = from[row - 1] as (typeof from)[number];
        return phase === "Clearing" ? once`${day}+1` : once`${day}`;
      },
    },
    toDo: { title: "What to do", label: from.map(([phase]) => care[phase].toDo) },
    never: { title: "What never to do", label: from.map(([phase]) => care[phase].never) },
  },
  { rowLines: 3 },
);

export const note = words(
  "note",
  [2, 6],
  "Do not warm, wake, feed or handle an animal to see whether it is well. Look, read the thermometer, write both down. Breath that bubbles or clicks, an open mouth, an animal on its back, or a figure past its limit: call the vet first, then the keeper.",
);
