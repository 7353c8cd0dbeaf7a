import type { Need, Supplies } from "../../functions/define";
import { notAvailable, type Problem } from "../../functions/problem";

/** What a definition may need beside its arguments, as this process has it; a problem with words while it is not there. */
export const supplies: { [N in Need]: () => Supplies[N] | Problem } = {
  network: () => notAvailable("the station network is not there yet: calculate again in a moment"),
  texts: () => notAvailable("the words of sources and cautions are not there yet: calculate again in a moment"),
};
