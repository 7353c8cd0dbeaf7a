import { parseArgs } from "node:util";
import { record } from "../../addin/build/proven";
import "../faults";
import { fuzz } from "./fuzz";
import { hostileCsvs, hostileNetworks, hostileWorkbooks, type Outcome } from "./hostileFiles";

/** A million hostile calls and fifty thousand spoilt files, for a nightly run: `npm run fuzz -- --seed 7 --cases 1000000`. */
const { values } = parseArgs({
  options: {
    seed: { type: "string", default: String(Date.now() % 2 ** 31) },
    cases: { type: "string", default: "1000000" },
    record: { type: "boolean" }, // though a larger run stands in tests/proven.json
  },
});
const seed = Number(values.seed);
const cases = Number(values.cases);
/** A file costs as much as so many calls. */
const CALLS_A_FILE = 60;
const files = Math.ceil(cases / CALLS_A_FILE);

const all: readonly (readonly [what: string, () => Outcome | Promise<Outcome>])[] = [
  ["calls", () => fuzz(cases, seed)],
  ["network files", () => hostileNetworks(files, seed)],
  ["CSV files", () => hostileCsvs(files, seed)],
  [".xlsx files", () => hostileWorkbooks(files, seed)],
];

const run = async (): Promise<void> => {
  console.log(`Seed ${seed}`);
  const counts: number[] = [];
  for (const [what, check] of all) {
    const started = performance.now();
    const { tried, wrong } = await check();
    const seconds = ((performance.now() - started) / 1000).toFixed(0);
    const memory = Math.round(process.memoryUsage().rss / 1e6);
    console.log(`${tried} ${what} in ${seconds} s, ${memory} MB held: ${wrong ?? "nothing wrong"}`);
    counts.push(tried);
    if (wrong !== undefined) process.exitCode = 1;
  }
  if (process.exitCode === 1) return;
  const [calls = 0, ...others] = counts;
  await record("fuzz", { seed: String(seed), calls, files: others.reduce((sum, count) => sum + count, 0) }, cases);
};

void run();
