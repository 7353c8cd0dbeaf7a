/**
 * Mutation testing of numbers: each numeric literal of `functions/` is changed, one at a time, and the tests that meet it
 * have to see it. `npm run mutate` (before the signs and branches), or `npm run numbers -- climate winter` for some folders,
 * `npm run numbers -- left` for those that the last run left.
 */
import { fork, type ChildProcess } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, dirname, join } from "node:path";
import { record } from "../../../addin/build/proven";
import { allLiterals, bundleOf, ROOT, testFiles } from "./bundle";
import type { Literal } from "./literals";
import type { Job, Known, Outcome, Trial } from "./messages";

const WORKERS = 2;
/** A run is good where so many of a hundred are found; those that are left are explained one by one (../survivors.md). */
const GOOD = 96;
/** Milliseconds of tests, as they take with nothing changed, that a number is given. */
const MOST = 12_000;
/** One that makes a test go on for ever counts as found: after so many milliseconds, and so many times what the tests take. */
const FOR_EVER = 60_000;
const TIMES = 20;

const FOREVER = "goes on for ever";

const topics = process.argv.slice(2);
/** How a number stands in the report, whatever the lines above it. */
const named = ({ file, from, to, code }: Literal): string => `${file}: ${from} as ${to}: ${code}`;
const REPORT = join(ROOT, "reports/mutation/numbers.txt");
/** Which test found a number, by how it is named: what found it before is tried first. */
const FINDERS = join(ROOT, "reports/mutation/finders.json");
const findersBefore = (): Readonly<Record<string, string>> =>
  existsSync(FINDERS) ? (JSON.parse(readFileSync(FINDERS, "utf8")) as Record<string, string>) : {};
const left = (): ReadonlySet<string> =>
  new Set(
    readFileSync(REPORT, "utf8")
      .split("\n")
      .map((line) => line.replace(/^(functions\/\S+\.ts):\d+/, "$1")),
  );

const topicOf = ({ file }: Literal): string => (dirname(file) === "functions" ? "." : (file.split("/")[1] as string));

/** A process that works on jobs; it is begun anew where one does not end. */
class Worker {
  private process: ChildProcess | undefined;
  constructor(private readonly folder: string) {}

  private begun(): ChildProcess {
    this.process ??= fork(join(__dirname, "worker.ts"), [this.folder], {
      execArgv: ["--import", "tsx"],
      stdio: ["ignore", "ignore", "inherit", "ipc"],
    });
    return this.process;
  }

  /** What comes of a job; undefined where it did not end. */
  work(job: Job, most: number): Promise<Outcome | undefined> {
    const child = this.begun();
    return new Promise((resolve) => {
      const end = (outcome?: Outcome): void => {
        clearTimeout(timer);
        child.removeAllListeners();
        if (!outcome) this.stop();
        resolve(outcome);
      };
      const timer = setTimeout(end, most);
      child.once("message", (outcome: Outcome) => end(outcome));
      child.once("exit", () => end());
      child.send(job);
    });
  }

  stop(): void {
    this.process?.kill("SIGKILL");
    this.process = undefined;
  }
}

/** Does something with each, as many at a time as there are workers. */
const withEach = async <T>(
  all: readonly T[],
  workers: readonly Worker[],
  act: (one: T, worker: Worker) => Promise<void>,
) => {
  const waiting = [...all];
  await Promise.all(
    workers.map(async (worker) => {
      for (let one = waiting.shift(); one !== undefined; one = waiting.shift()) await act(one, worker);
    }),
  );
};

/** A function's own tests do not reach its twin: each twin is one test of this file. */
const TWINS = "tests/mutation/numbers/twins.test.ts";

/** The tests that may see a number: what found it before, its file's own, then those of its folder, the quick before the slow. */
const trialsOf = (
  literal: Literal,
  all: readonly Known[],
  finder: string | undefined,
): readonly (Trial & { readonly cost: number })[] => {
  const name = basename(literal.file, ".ts");
  const near = all.flatMap(({ test, opening, atFirst, tests }) => {
    const isMet = atFirst.includes(literal.id);
    const places = tests
      .map(({ took, met, passes }, place) => ({ place, took, meets: passes && (isMet || met.includes(literal.id)) }))
      .filter(({ meets }) => meets)
      .sort((a, b) => a.took - b.took);
    if (places.length === 0) return [];
    const isOwn = basename(test, ".test.ts") === name || (test === TWINS && !isMet);
    const isTopic = test.startsWith(`tests/${dirname(literal.file).replace(/\/shared$/, "")}/`);
    const cost = opening + places.reduce((sum, { took }) => sum + took, 0);
    return [{ test, opening, places, cost, rank: test === finder ? -1 : isOwn ? 0 : isTopic ? 1 : 2 }];
  });
  near.sort((a, b) => a.rank - b.rank || a.cost - b.cost);
  let left = MOST;
  return near.flatMap(({ test, opening, places }) => {
    if (left <= 0) return [];
    const tried: number[] = [];
    let cost = opening;
    for (const { place, took } of places) {
      if (tried.length > 0 && cost + took > left) break; // one at least of each file that is begun
      tried.push(place);
      cost += took;
    }
    left -= cost;
    return [{ test, places: tried, cost }];
  });
};
const costOf = (trials: readonly (Trial & { readonly cost: number })[]): number =>
  trials.reduce((sum, { cost }) => sum + cost, 0);

const run = async (): Promise<boolean> => {
  const started = performance.now();
  const literals = allLiterals();
  const byFile = new Map<string, Literal[]>();
  for (const one of literals) byFile.set(one.file, [...(byFile.get(one.file) ?? []), one]);
  const before = topics.includes("left") ? left() : undefined;
  const chosen = literals.filter(
    (one) => before?.has(named(one)) ?? (topics.length === 0 || topics.includes(topicOf(one))),
  );
  const folder = mkdtempSync(join(tmpdir(), "numbers-"));
  const workers = Array.from({ length: WORKERS }, () => new Worker(folder));
  try {
    for (const kind of ["noting", "plain"]) mkdirSync(join(folder, kind));
    const wanted = new Set(chosen.map(({ file }) => file));
    const files: string[] = [];
    for (const test of testFiles()) {
      const { code, inputs } = await bundleOf(test, byFile, true);
      if (!inputs.some((file) => wanted.has(file))) continue;
      files.push(test);
      const name = `${test.replaceAll("/", ".")}.js`;
      writeFileSync(join(folder, "noting", name), code);
      writeFileSync(join(folder, "plain", name), (await bundleOf(test, byFile, false)).code);
    }
    const known: Known[] = [];
    await withEach(files, workers, async (test, worker) => {
      const outcome = await worker.work({ kind: "know", test }, 5 * FOR_EVER);
      if (!outcome || !("known" in outcome)) throw new Error(`${test} does not end with nothing changed`);
      known.push(outcome.known);
      for (const [place, { passes }] of outcome.known.tests.entries())
        if (!passes) console.log(`${test}, test ${place + 1}, fails with nothing changed and is left out`);
    });
    const found = new Map<number, string>();
    const finders: Record<string, string> = { ...findersBefore() };
    let tried = 0;
    let worked = 0;
    await withEach(chosen, workers, async (literal, worker) => {
      const trials = trialsOf(literal, known, finders[named(literal)]);
      const outcome =
        trials.length > 0
          ? await worker.work({ kind: "try", which: literal.id, trials }, FOR_EVER + TIMES * costOf(trials))
          : { by: undefined, worked: 0 };
      const by = !outcome ? FOREVER : "by" in outcome ? outcome.by : undefined;
      if (outcome && "worked" in outcome) worked += outcome.worked;
      if (by !== undefined) {
        found.set(literal.id, by);
        if (by !== FOREVER) finders[named(literal)] = by;
      }
      if (++tried % 100 === 0) console.log(`${tried} of ${chosen.length} tried, ${found.size} found`);
    });

    const lines: string[] = [];
    for (const topic of new Set(chosen.map(topicOf))) {
      const own = chosen.filter((one) => topicOf(one) === topic);
      const seen = own.filter(({ id }) => found.has(id)).length;
      lines.push(`functions/${topic}: ${seen} of ${own.length} found`);
    }
    const share = (100 * found.size) / Math.max(1, chosen.length);
    const minutes = (performance.now() - started) / 60_000;
    const own = worked / 60_000;
    lines.push(
      `${found.size} of ${chosen.length} numbers found, ${share.toFixed(1)} %, in ${minutes.toFixed(1)} minutes; ${WORKERS} at work for ${(own / WORKERS).toFixed(1)} of their own`,
    );
    const endless = [...found.values()].filter((by) => by === FOREVER).length;
    lines.push(`${endless} of them by making a test go on for ever`);
    const unseen = chosen.filter(({ id }) => !found.has(id));
    const report = [...lines, "", ...unseen.map((one) => named(one).replace(": ", `:${one.line}: `))];
    mkdirSync(join(ROOT, "reports/mutation"), { recursive: true });
    writeFileSync(REPORT, `${report.join("\n")}\n`);
    writeFileSync(FINDERS, `${JSON.stringify(finders, null, 1)}\n`);
    console.log(report.join("\n"));
    const isGood = share >= GOOD;
    // Some folders, or what was left, are no whole run.
    if (isGood && topics.length === 0) {
      await record("numbers", { found: found.size, of: chosen.length, share: share / 100, minutes });
    }
    return isGood;
  } finally {
    for (const worker of workers) worker.stop();
    rmSync(folder, { recursive: true, force: true });
  }
};

void run().then((isGood) => process.exit(isGood ? 0 : 1));
