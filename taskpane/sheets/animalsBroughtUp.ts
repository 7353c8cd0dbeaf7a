import { BROUGHT_UP_WAIT } from "../../functions/rules/limits";
import { settings } from "./animalsFigures";
import { reminders } from "./animalsToday";
import type { Column } from "./shared/names";
import { isoText } from "./shared/words";

/** An animal that brought a meal up rests, as the Feeding log has it: neither fed nor cooled before a vet has been asked. */

const { today } = reminders;
const { wait } = settings;

const restOf = `IF(N(${wait})>0,${wait},${BROUGHT_UP_WAIT})`;
/** Whether it still rests after a meal that it brought up and that no meal has followed. */
export const rests = (broughtUp: Column, ate: Column): string =>
  `IF(${broughtUp}="",FALSE,IF(${today}-${broughtUp}>=${restOf},FALSE,IF(${ate}="",TRUE,${ate}<=${broughtUp})))`;
export const askedAtRest = (broughtUp: Column): string =>
  `"It brought a meal up on "&${isoText(`${broughtUp}`)}&": what does your reptile vet say? No food until "&${isoText(`(${broughtUp}+${restOf})`)}&", no cooling before the vet agrees. "`;
