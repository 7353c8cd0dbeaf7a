import type { AnyDefinition } from "../../../functions/define";
import { notUsable, type Problem } from "../../../functions/problem";
import { isSingle, isSpread } from "../argument";
import { answerAt } from "../calculate";
import type { Call } from "../call";
import { size } from "../cell";

/** The one answer of a function that fills a block by itself: its cells cannot be many. */
export const answerOnce = <D extends AnyDefinition>(
  call: Call<D>,
): ReturnType<D["calculate"]> | Problem | undefined => {
  const many = call.args.find((argument) => isSpread(argument) && !isSingle(argument));
  return many ? notUsable(`${many.name} holds ${size(many.block)}: give one cell`) : answerAt(call, 0, 0);
};
