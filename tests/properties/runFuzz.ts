import { parseArgs } from "node:util";
import { fuzz } from "./fuzz";

/** A million hostile calls, for a nightly run: `npm run fuzz -- --seed 7 --cases 1000000`. */
const { values } = parseArgs({
  options: {
    seed: { type: "string", default: String(Date.now() % 2 ** 31) },
    cases: { type: "string", default: "1000000" },
  },
});
const seed = Number(values.seed);
console.log(`Seed ${seed}`);
const started = performance.now();
const { cases, wrong } = fuzz(Number(values.cases), seed);
console.log(`${cases} calls in ${((performance.now() - started) / 1000).toFixed(0)} s: ${wrong ?? "nothing wrong"}`);
if (wrong !== undefined) process.exitCode = 1;
