/**
 * `npm run mutate`: each number of `functions/` (`numbers/run.ts`), then signs, branches and calls of the arithmetic and of the
 * boundary by Stryker; what a whole run finds is entered in tests/proven.json. With words Stryker alone, which is given them:
 * `npm run mutate -- --mutate functions/climate/lapse.ts`.
 */
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { record } from "../../addin/build/proven";

const ROOT = join(__dirname, "..", "..");
const words = process.argv.slice(2);

const passes = (...command: readonly string[]): boolean =>
  spawnSync(process.execPath, command, { cwd: ROOT, stdio: "inherit" }).status === 0;

/** https://github.com/stryker-mutator/mutation-testing-elements: the report's schema, as far as it is counted here. */
interface Report {
  readonly files: Readonly<Record<string, { readonly mutants: readonly { readonly status: string }[] }>>;
}
const FOUND = ["Killed", "Timeout"];
const LEFT = ["Survived", "NoCoverage"];

const mutate = async (): Promise<void> => {
  const isGood =
    (words.length > 0 || passes("--import", "tsx", "tests/mutation/numbers/run.ts")) &&
    passes("tests/tool.mjs", "stryker", "run", ...words);
  process.exitCode = isGood ? 0 : 1;
  if (!isGood || words.length > 0) return;
  const { files } = JSON.parse(readFileSync(join(ROOT, "reports/mutation/mutation.json"), "utf8")) as Report;
  const mutants = Object.values(files).flatMap((file) => file.mutants);
  const count = (statuses: readonly string[]): number =>
    mutants.filter(({ status }) => statuses.includes(status)).length;
  const [found, left] = [count(FOUND), count(LEFT)];
  await record("mutate", { found, of: found + left, share: found / (found + left) });
};

void mutate();
