/**
 * Random stories of open, edit, freeze, undo, save, against a plain model; of the same actions in the preview and in Excel; and
 * of the sheets of the pane in both, a fifth as many: `npm run stories`, 500 from a seed of their own; `-- 1 7` one from
 * seed 7; `-- 150 7 sheets` 150 of the sheets alone.
 */
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { record } from "../addin/build/proven";

const [count = "500", seed = String(Date.now() % 2 ** 31), only] = process.argv
  .slice(2)
  .filter((word) => !word.startsWith("--"));
const SHEETS_FOR = 5; // stories of the other kinds
const [plain, sheets] = only === "sheets" ? [0, Number(count)] : [Number(count), Math.ceil(Number(count) / SHEETS_FOR)];
console.log(`${plain} stories, ${sheets} with the sheets of the pane, seed ${seed}`);
const files = [...(plain > 0 ? ["tests/preview/stories.test.ts"] : []), "tests/preview/hosts.test.ts"];
const { status } = spawnSync(process.execPath, [join(__dirname, "tool.mjs"), "jest", ...files], {
  stdio: "inherit",
  env: { ...process.env, STORIES: String(plain), SHEET_STORIES: String(sheets), SEED: seed },
});
process.exitCode = status ?? 1;
// A run of a part enters nothing.
if (status === 0 && plain > 0) void record("stories", { seed, model: plain, hosts: plain, sheets }, plain);
