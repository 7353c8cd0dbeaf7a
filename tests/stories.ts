/**
 * Random stories of open, edit, freeze, undo, save, against a plain model, and of the same actions in the preview and in Excel:
 * `npm run stories`, 500 of each from a seed of their own; `-- 1 7` one from seed 7.
 */
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { record } from "../addin/build/proven";

const [count = "500", seed = String(Date.now() % 2 ** 31)] = process.argv
  .slice(2)
  .filter((word) => !word.startsWith("--"));
console.log(`${count} stories, seed ${seed}`);
const files = ["tests/preview/stories.test.ts", "tests/preview/hosts.test.ts"];
const { status } = spawnSync(process.execPath, [join(__dirname, "tool.mjs"), "jest", ...files], {
  stdio: "inherit",
  env: { ...process.env, STORIES: count, SEED: seed },
});
process.exitCode = status ?? 1;
if (status === 0) void record("stories", { seed, model: Number(count), hosts: Number(count) }, Number(count));
