import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Job, Known, Outcome, Trial } from "./messages";
import { open } from "./play";

/** Works on one number after the other, in a process of its own: one that never ends is ended from outside. */

const folder = process.argv[2] as string;
const codes = new Map<string, string>();
const codeOf = (test: string, noting: boolean): string => {
  const name = `${noting ? "noting" : "plain"}/${test.replaceAll(/[\\/]/g, ".")}.js`;
  const code = codes.get(name) ?? readFileSync(join(folder, name), "utf8");
  if (!noting) codes.set(name, code);
  return code;
};

/** Milliseconds of work of this process: on a busy machine a clock would say several times as many. */
const worked = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

const know = async (test: string): Promise<Known> => {
  let met = new Set<number>();
  const taken = (): readonly number[] => {
    const ids = [...met];
    met = new Set();
    return ids;
  };
  const started = worked();
  const tests = open(codeOf(test, true), 0, (id) => met.add(id));
  const [opening, atFirst] = [worked() - started, taken()];
  const known: Known["tests"][number][] = [];
  for (const { body } of tests) {
    const from = worked();
    const passes = await Promise.resolve()
      .then(body)
      .then(
        () => true,
        () => false,
      );
    known.push({ took: worked() - from, met: taken(), passes });
  }
  return { test, opening, atFirst, tests: known };
};

const tried = async (which: number, trials: readonly Trial[]): Promise<string | undefined> => {
  for (const { test, places } of trials) {
    try {
      const tests = open(codeOf(test, false), which);
      for (const place of places) await tests[place]?.body();
    } catch {
      // Whatever fails, an expectation or the code itself, has noticed the number.
      return test;
    }
  }
  return undefined;
};

const done = async (job: Job): Promise<Outcome> => {
  if (job.kind === "know") return { known: await know(job.test) };
  const from = worked();
  const by = await tried(job.which, job.trials);
  return { by, worked: worked() - from };
};

// The network as it ships, texts and the like are said in the console by nobody here.
process.on("message", (job: Job) => {
  void done(job).then((outcome) => process.send?.(outcome));
});
