import { FREEZING_NEAR } from "./limits";
import type { Rule } from "./rule";

/**
 * What WINTERSIGNS looks at.
 * coldest, tooCold, tooWarm: lowest and highest box temperature, °C. lost, unagreed: the largest loss, percent of the mass
 * into the cold, with and without a loss that was agreed. agreed: that one, percent. heading: the loss as the trend has it.
 * pace: percent in 30 days. gain: largest rise between two weighings, percent. unweighed: longest time without a
 * weighing, days. weighings: how many. shut: longest time without an opening, in times that the air lasts at the soonest.
 * dry, wet: lowest and highest humidity, percent.
 */
export type Measure =
  | "coldest"
  | "tooCold"
  | "tooWarm"
  | "lost"
  | "unagreed"
  | "agreed"
  | "heading"
  | "pace"
  | "gain"
  | "unweighed"
  | "weighings"
  | "shut"
  | "dry"
  | "wet";

const unseen = (level: "care" | "note", words: string) => ({ level, words }) as const;
const vet = "call your reptile vet; ENDEARLY plans the way back";

/** Every rule of WINTERSIGNS, one line each, gravest first. To change a rule, change its line. */
// prettier-ignore
export const winterLogRules: readonly Rule<Measure>[] = [
  { of: "coldest", under: FREEZING_NEAR, level: "stop", source: "practice", words: "Box at {is}: below {limit} the animal may freeze", blank: unseen("care", "No box temperature in the log: cold and heat are not judged.") },
  { of: "tooCold", under: "own", level: "stop", source: "ownLimit", words: "Box at {is}: too cold below {limit}", blank: unseen("note", "Too cold was not given and not checked.") },
  { of: "lost", over: "own", level: "stop", source: "ownLimit", words: `Lost {is}, more than the {limit} agreed: ${vet}`, blank: unseen("care", "No loss agreed with your vet, or no weighing: no loss is judged, and a loss kills silently. Agree a figure.") },
  { of: "unagreed", over: 10, level: "stop", source: "practice", words: `Lost {is}: tortoises are woken at {limit}, no figure is known for snakes; ${vet}` },
  { of: "shut", over: 3, level: "stop", source: "practice", words: "Shut {is}: open the box now and look at the animal; by then oxygen may stand near 15 %, carbon dioxide near 5 %" },
  { of: "tooWarm", over: "own", level: "care", source: "ownLimit", words: "Box at {is}: too warm above {limit}, it uses up its reserves", blank: unseen("note", "Too warm was not given and not checked.") },
  { of: "heading", over: "own", level: "care", source: "ownLimit", words: "Heading for a loss of {is}, past the {limit} agreed: ask your vet before it is there" },
  { of: "agreed", over: 10, level: "care", source: "practice", words: "A loss of {is} is agreed: tortoises are woken at {limit}; is it mistyped?" },
  { of: "pace", over: 1, level: "care", source: "practice", words: "Losing {is}" },
  { of: "gain", over: 2, level: "care", source: "practice", words: "Gained {is} in the cold: water, eggs, or a mass mistyped? A gravid female does not belong in the cold" },
  { of: "unweighed", over: 14, level: "care", source: "practice", words: "{is} without a weighing: weigh every {limit} or sooner, or a loss is seen too late", blank: unseen("care", "No weighing in the log: a loss cannot be seen.") },
  { of: "shut", over: 1, level: "care", source: "practice", words: "Shut {is}: open it more often, or give it vents", blank: unseen("note", "Air in the box is not judged: litres, mass or temperatures are blank.") },
  { of: "dry", under: 60, level: "care", source: "practice", words: "Humidity of {is}: below {limit} the animal dries out; fresh water, damp bedding", blank: unseen("note", "Humidity was not given and not checked.") },
  { of: "wet", over: 95, level: "care", source: "practice", words: "Humidity of {is}: above {limit} water condenses and skin sores follow; air the box" },
  { of: "weighings", under: 3, level: "note", source: "practice", words: "Weighings so far: {is}. Where the loss is heading shows from {limit} on" },
];
