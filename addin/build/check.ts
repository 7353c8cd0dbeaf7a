import { spawnSync } from "node:child_process";
import { mkdirSync, rmSync } from "node:fs";
import { delimiter, join } from "node:path";

/** Everything that must hold, in the order in which a failure is cheapest to find. All are run, and each says how long it took. */
const steps: readonly (readonly [what: string, ...command: string[]])[] = [
  ["types", "tsc", "--noEmit"],
  ["lint", "eslint", "--max-warnings=0", "."],
  ["format", "prettier", "--check", "--log-level=warn", "."],
  ["generated text", "tsx", "addin/build/generate.ts", "--check"],
  ["build", "tsx", "addin/build/build.ts"],
  ["sizes of the build", "tsx", "addin/build/sizes.ts"],
  ["tests", "jest", "--json", "--outputFile=reports/jest.json"],
  ["yardsticks", "tsx", "addin/build/yardsticks.ts", "--check"],
];

const root = join(__dirname, "..", "..");
mkdirSync(join(root, "reports"), { recursive: true });
rmSync(join(root, "reports", "yardsticks"), { recursive: true, force: true });
const failed: string[] = [];
for (const [what, command = "", ...args] of steps) {
  const started = performance.now();
  const { status } = spawnSync(command, args, {
    cwd: root,
    stdio: what === "tests" ? ["ignore", "ignore", "inherit"] : "inherit",
    shell: process.platform === "win32",
    env: {
      ...process.env,
      PATH: [...["node_modules", "tests/node_modules"].map((from) => join(root, from, ".bin")), process.env.PATH].join(
        delimiter,
      ),
    },
  });
  if (status !== 0) failed.push(what);
  console.log(`${status === 0 ? "ok    " : "FAILED"} ${what}, ${((performance.now() - started) / 1000).toFixed(0)} s`);
}
if (failed.length > 0) {
  console.error(`Failed: ${failed.join(", ")}`);
  process.exitCode = 1;
}
