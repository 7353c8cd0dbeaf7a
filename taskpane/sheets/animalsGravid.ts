import { plans } from "./animalsFigures";
import type { Cell, Column } from "./shared/names";
import { PLAN_DATES } from "./shared/winterPlan";
import { ofPlan } from "./shared/winterPlans";

/** Whatever is not "no" in so many words: a slip of the keyboard must not send her into the cold. */
export const mayBeGravid = (gravid: unknown): string => `IF(${String(gravid)}="",FALSE,${String(gravid)}<>"no")`;

/** What is asked of a gravid female who may be in her plan's fast: neither food nor the cold is right before a vet has looked. */
const IN_THE_FAST =
  "She may be gravid, and her winter plan has begun: call your reptile vet today. Gravid females are not cooled.";
const PERHAPS_IN_IT =
  "Was she cooled? Call your reptile vet today. She may be gravid, and her winter plan is not known: put its name and dates right, or write no at Winters.";
export const askedOfGravid = (today: Cell, follows: Column): string => {
  const [last, first] = (["lastMeal", "firstMeal"] as const).map((key) => plans.each(key));
  const asked = plans.dates.map(
    (dates, i) =>
      `IF(COUNT(${dates})=${PLAN_DATES.length},IF(AND(${today}>${String(last?.[i])},${today}<${String(first?.[i])}),"${IN_THE_FAST}",""),"${PERHAPS_IN_IT}")`,
  );
  return ofPlan(plans, `${follows}`, asked, `"${PERHAPS_IN_IT}"`);
};
