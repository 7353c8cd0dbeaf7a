import { spawn } from "node:child_process";
import { mkdirSync, readFileSync, rmSync } from "node:fs";
import { delimiter, join } from "node:path";
import { record } from "./proven";

type Step = readonly [what: string, ...command: string[]];

const tool = ["node", "tests/tool.mjs"];

/**
 * Everything that must hold; all of it is run, and each step says how long it took. The streams of a stage run side by
 * side: the tests use every core, but not at every moment. With --record, what passed is entered in tests/proven.json; not by
 * itself, because then each run would change a file.
 */
const stages: readonly (readonly (readonly Step[])[])[] = [
  [
    [
      ["generated text", "tsx", "addin/build/generate.ts", "--check"],
      ["build", "tsx", "addin/build/build.ts"],
      ["sizes of the build", "tsx", "addin/build/sizes.ts"],
    ],
    [["types", ...tool, "tsc", "--noEmit"]],
  ],
  [
    [["tests", ...tool, "jest", "--json", "--outputFile=reports/jest.json"]],
    [
      ["lint", ...tool, "eslint", "--max-warnings=0", "."],
      ["format", ...tool, "prettier", "--check", "--log-level=warn", "."],
    ],
  ],
  [[["yardsticks", "tsx", "addin/build/yardsticks.ts", "--check"]]],
];

const root = join(__dirname, "..", "..");
mkdirSync(join(root, "reports"), { recursive: true });
rmSync(join(root, "reports", "yardsticks"), { recursive: true, force: true });

const path = [join(root, "node_modules", ".bin"), process.env.PATH];

/** What a command says, and its exit code; what it says is printed as one piece, so that two side by side stay readable. */
const run = ([what, command = "", ...args]: Step): Promise<number> =>
  new Promise((resolve, reject) => {
    const said: Buffer[] = [];
    const child = spawn(command, args, {
      cwd: root,
      stdio: what === "tests" ? ["ignore", "ignore", "inherit"] : ["ignore", "pipe", "pipe"],
      shell: process.platform === "win32",
      env: { ...process.env, PATH: path.join(delimiter) },
    });
    for (const stream of [child.stdout, child.stderr]) stream?.on("data", (piece: Buffer) => said.push(piece));
    child.on("error", reject);
    child.on("close", (code) => {
      process.stdout.write(Buffer.concat(said));
      resolve(code ?? 1);
    });
  });

const failed: string[] = [];
const inTurn = async (steps: readonly Step[]): Promise<void> => {
  for (const step of steps) {
    const [what] = step;
    const started = performance.now();
    const code = await run(step);
    if (code !== 0) failed.push(what);
    console.log(`${code === 0 ? "ok    " : "FAILED"} ${what}, ${((performance.now() - started) / 1000).toFixed(0)} s`);
  }
};

/** What jest writes of a run, as far as it is told. */
interface Tests {
  readonly numPassedTests: number;
  readonly numPendingTests: number;
}

const checkAll = async (): Promise<void> => {
  const started = performance.now();
  for (const stage of stages) await Promise.all(stage.map(inTurn));
  if (failed.length > 0) {
    console.error(`Failed: ${failed.join(", ")}`);
    process.exitCode = 1;
  } else if (process.argv.includes("--record")) {
    const minutes = (performance.now() - started) / 60_000;
    const tests = JSON.parse(readFileSync(join(root, "reports", "jest.json"), "utf8")) as Tests;
    await record("check", { tests: tests.numPassedTests, left: tests.numPendingTests, minutes });
  }
};

checkAll().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
});
