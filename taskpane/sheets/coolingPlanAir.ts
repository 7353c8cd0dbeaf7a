import { plan } from "./coolingPlanInputs";
import { boxFields } from "./shared/commonFields";
import { form } from "./shared/form";
import { f, once } from "./shared/formula";
import { log } from "./shared/log";
import type { RowCell } from "./shared/names";
import { says } from "./shared/rules";
import { words } from "./shared/running";
import { animals } from "./shared/scenario";
import { HUMIDITY, MASS, number } from "./shared/takes";
import { rounded } from "./shared/words";

/** The air in the winter box: how long it lasts when it is shut, and what room air becomes in it. */

export const air = form(
  "air",
  "Air in the box",
  {
    mass: {
      label: "Mass of one animal",
      needed: "Mass",
      unit: "g",
      value: animals.juniper.mass,
      format: "whole",
      takes: number(MASS),
      from: "animals.list.mass",
      by: "plan.label",
    },
    ...boxFields(),
    room: { label: "Room air", unit: "°C", value: 20, format: "tenth", takes: number([-20, 45]) },
    humidity: { label: "Its humidity", unit: "%", value: 50, format: "whole", takes: number(HUMIDITY) },
  },
  { across: 2 },
);
const { mass, many, box, litres, elevation, room, humidity } = air;
const { warmSet, coldSet } = plan;

const hoursUntil = (celsius: RowCell, part: number): string =>
  once`INDEX(VIV.BOXAIR(${mass},${celsius},${litres},${elevation},"",${many}),1,${part})`;
const stages = ["Warm", "Half-way", "In the cold"] as const;
const atStage = [once`${warmSet}`, once`(${warmSet}+${coldSet})/2`, once`${coldSet}`] as const;

/** What is said of a box whose air lasts less than two days: half of that is its time between two openings. */
export const NEEDS_VENTS = "this box needs vents";

export const hours = log(
  "hours",
  stages.length,
  {
    where: { title: "Hours that shut air lasts", label: stages },
    celsius: { title: "Box °C", each: ({ celsius: { row } }) => atStage[row - 1] as string, format: "tenth" },
    soonest: { title: "Soonest", each: ({ celsius }) => hoursUntil(celsius, 1), format: "whole" },
    likely: { title: "Likely", each: ({ celsius }) => hoursUntil(celsius, 2), format: "whole" },
    latest: { title: "Latest", each: ({ celsius }) => hoursUntil(celsius, 3), format: "whole" },
    humidity: {
      title: "Humid. there %",
      each: ({ celsius }) => once`VIV.HUMIDITYAFTER(${room},${humidity},${celsius})`,
      format: "whole",
      note: "What the room's air becomes at the box's temperature, with no water added or taken.",
    },
    every: {
      title: "Open every, days",
      skip: 1,
      each: ({ celsius }) => once`VIV.OPENEVERY(${mass},${celsius},${litres},${elevation},"",${many})`,
      format: "tenth",
      note: "Of a shut box: half of the soonest hours, 7 days at most. A vented box only needs looking at.",
    },
    words: {
      title: "What that means",
      wide: 2,
      each: ({ every }) =>
        f`IF(${box}="vented","vented: look at it",IF(OR(${box}="",${every}=""),"",IF(${every}<1,"${NEEDS_VENTS}","open and look")))`,
      rules: [says(NEEDS_VENTS, "stop")],
    },
  },
  { titleLines: 2 },
);

/** From which set-point down the room's air is wet, and on which legs of the plan that happens. */
const dew = `VIV.DEWPOINT(${room},${humidity})`;
export const condenses = words(
  "condenses",
  [2, 10],
  f`IF(OR(${room}="",${humidity}="",${warmSet}="",${coldSet}=""),"Room air is not given: whether it condenses in the cold is not judged.","Room air of "&${rounded(`${room}`)}&" °C and "&${rounded(`${humidity}`)}&" % condenses at "&${rounded(dew)}&" °C"&IF(${dew}>=${coldSet},": in the cold the box turns wet, and wet bedding makes sores. Air it often, dry the bedding, or dry the room.",": the cold, "&${rounded(`${coldSet}`)}&" °C, stays above that.")&IF(${hours.humidity.at(1)}<60," While warm the air is dry, "&${rounded(`${hours.humidity.at(1)}`, 0)}&" %: damp hide, fresh water, a shallow, lukewarm, watched soak. None once it is cool.",""))`,
  { rules: [{ when: (own) => `=COUNTIF(${own},"*turns wet*")>0`, look: "care" }] },
);
