import { serialOfIso } from "../../functions/dates";
import { down } from "../call";

/** Dangers, each where a keeper would meet it: the sheet, the function behind its words, what is given, what must be said. */
export interface Danger {
  readonly sheet: string;
  readonly call: string;
  readonly given: readonly unknown[];
  readonly level: "stop" | "care" | "note";
  readonly words: RegExp;
}

const day = (iso: string): number => serialOfIso(iso) as number;
export const north = ["2026-09-21", "2026-10-05", "2026-11-16", "2027-02-08", "2027-03-22", "2027-03-29"].map(day);
const moved = (at: number, iso: string): unknown => down(north.map((date, i) => (i === at ? day(iso) : date)));
const plan = down(north);

const ramp = (level: Danger["level"], words: RegExp, ...given: unknown[]): Danger => ({
  sheet: "coolingPlan",
  call: "RAMPCHECK",
  given,
  level,
  words,
});
const sound = ["female", 63, 306, 300, "no", "no", "clear", "yes", "none", north[0], north[1]] as const;
const ready = (level: Danger["level"], words: RegExp, changes: Record<number, unknown>): Danger => ({
  sheet: "coolingPlan",
  call: "WINTERREADY",
  given: sound.map((value, i) => (i in changes ? changes[i] : value)),
  level,
  words,
});
const sane = [day("2027-05-03"), 240, 12, 12, plan, day("2027-04-26"), 5, 18, "metric", day("2027-05-03")] as const;
const meal = (level: Danger["level"], words: RegExp, changes: Record<number, unknown>): Danger => ({
  sheet: "feedingLog",
  call: "MEALCHECK",
  given: sane.map((value, i) => (i in changes ? changes[i] : value)),
  level,
  words,
});
const weeks = Array.from({ length: 8 }, (_, i) => day("2026-11-16") + 7 * i);
const every = (value: unknown): unknown => down(weeks.map(() => value));
const last = (usual: unknown, value: unknown): unknown => down(weeks.map((_, i) => (i === 7 ? value : usual)));
const calm = [down(weeks), every(8), every(306), 306, 4, 10, 0.05, every(80), every("yes"), null, null, "metric", null];
const sign = (level: Danger["level"], words: RegExp, changes: Record<number, unknown>): Danger => ({
  sheet: "winterLog",
  call: "WINTERSIGNS",
  given: calm.map((value, i) => (i in changes ? changes[i] : value)),
  level,
  words,
});
const pairing = (level: Danger["level"], words: RegExp, ...given: unknown[]): Danger => ({
  sheet: "breedingSeason",
  call: "PAIRINGCHECK",
  given,
  level,
  words,
});

export const dangers: readonly Danger[] = [
  // Cooling plan: the plan
  ramp("stop", /Dates out of order/, moved(2, "2026-10-01"), 24, 8),
  ramp("stop", /at normal temperature after the last meal/, moved(1, "2026-09-28"), 24, 8),
  ramp("stop", /Cooled within/, moved(2, "2026-10-20"), 24, 8),
  ramp("stop", /Warmed within/, moved(4, "2027-02-18"), 24, 8),
  ramp("stop", /were the two swapped/, plan, 8, 24),
  ramp("stop", /does not freeze the animal/, plan, 24, 1),
  ramp("stop", /too warm for this animal/, plan, 24, 8, null, "metric", 4, 23),
  ramp("stop", /too cold for this animal/, plan, 24, 8, null, "metric", 9, 28),
  ramp("stop", /die of heat/, plan, 38, 8),
  ramp("stop", /the gut hardly empties/, plan, 12, 8),
  ramp(
    "stop",
    /more than 240 days is no winter/,
    down([...north.slice(0, 3), ...[300, 342, 349].map((n) => (north[2] as number) + n)]),
    24,
    8,
  ),
  ramp("care", /uses up its reserves/, plan, 24, 12),
  ramp("care", /wait 7 days or more/, moved(5, "2027-03-24"), 24, 8),
  // Cooling plan: the animal
  ready("stop", /Gravid/, { 5: "yes" }),
  ready("stop", /Noisy breath/, { 6: "noisy" }),
  ready("stop", /Parasites found/, { 8: "found" }),
  ready("stop", /In shed/, { 4: "yes" }),
  ready("stop", /a thin animal may not live/, { 2: 260 }),
  ready("stop", /from the last meal to cooling/, { 9: day("2026-09-28") }),
  ready("care", /first winter/, { 1: 6 }),
  ready("care", /Whether she is gravid: not looked at/, { 5: null }),
  ready("care", /No reptile vet has seen it/, { 7: "no" }),
  // Feeding log
  meal("stop", /Inside the winter fast/, { 0: day("2026-12-15"), 5: north[0], 9: day("2026-12-15") }),
  meal("stop", /First meals after the cold, 20 % of the body/, { 0: north[5], 2: 48, 3: 48, 5: north[0], 9: north[5] }),
  meal("stop", /Nights of 8 °C/, { 7: 8 }),
  meal("care", /Nights of 12 °C/, { 7: 12 }),
  meal("care", /An item of 20 % of the body/, { 2: 48, 3: 48 }),
  meal("care", /A meal of 20 % of the body/, { 2: 48, 3: 16 }),
  meal("care", /Only 2 days since the last meal/, { 5: day("2027-05-01") }),
  meal("care", /Weighed 93 days ago/, { 9: day("2027-01-30") }),
  // Winter log
  sign("stop", /too cold below/, { 1: last(8, 3) }),
  sign("stop", /may freeze/, { 1: last(8, 1) }),
  sign("care", /too warm above/, { 1: last(8, 13) }),
  sign("stop", /more than the 5 % agreed/, { 2: last(306, 285) }),
  sign("care", /No loss agreed with your vet/, { 6: null }),
  sign("stop", /tortoises are woken/, { 2: last(306, 269.9), 6: null }),
  sign("care", /Gained/, { 2: last(306, 320) }),
  sign("care", /without a weighing/, { 2: down(weeks.map((_, i) => (i === 0 ? 306 : null))) }),
  sign("stop", /open the box now/, {
    2: down(weeks.map((_, i) => (i === 0 || i === 7 ? 306 : null))),
    8: every("no"),
    9: 2,
  }),
  sign("care", /the animal dries out/, { 7: last(80, 40) }),
  sign("care", /water condenses/, { 7: last(80, 99) }),
  // Breeding season
  pairing("stop", /Too young/, 20, 300, 36, 250),
  pairing("stop", /Too light/, 40, 200, 36, 250),
  pairing("stop", /Enough clutches/, 40, 300, 36, 250, 1, 1),
  pairing("care", /Not back to her weight/, 40, 300, 36, 250, 0, 1, 0.9),
];
