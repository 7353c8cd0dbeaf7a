import type { ListResult, Shaped } from "../../../functions/define";
import { Problem } from "../../../functions/problem";
import type { Call } from "../call";
import { alone, outward, type Reply } from "../reply";
import { answerOnce } from "./once";

/** As many cells as the argument that the answer is like, in a row or a column as that one is. */
export const answerList = (call: Call<Shaped<ListResult>>): Reply => {
  const { result } = call.definition;
  const [{ unit }] = result.columns;
  const answer = answerOnce(call);
  if (answer === undefined) return alone("");
  if (answer instanceof Problem) return alone(answer);
  const listed = answer.map((one) => outward(one, unit, call.system));
  const like = call.args.find(({ name }) => name === result.like);
  return { cells: like?.block.length === 1 ? [listed] : listed.map((one) => [one]), unit: () => unit };
};
