// Format, lint and types of what is about to be committed: `npm run staged`, before every commit where the hook is switched
// on. It looks at the files as they stand in the folder, not at parts of them that are staged by themselves.
import { execFileSync, spawnSync } from "node:child_process";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, "..");
const files = execFileSync("git", ["diff", "--cached", "--name-only", "--diff-filter=ACMR", "-z"], {
  cwd: root,
  encoding: "utf8",
})
  .split("\0")
  .filter((name) => name !== "");
const code = files.filter((name) => /\.(tsx?|[mc]?js)$/.test(name));

const passes = (...words) =>
  spawnSync(process.execPath, [join(here, "tool.mjs"), ...words], { cwd: root, stdio: "inherit" }).status === 0;
const checks = [
  [files, () => passes("prettier", "--check", "--ignore-unknown", "--log-level=warn", ...files)],
  [code, () => passes("eslint", "--max-warnings=0", "--no-warn-ignored", ...code)],
  [code, () => passes("tsc", "--noEmit")],
];
if (!checks.every(([of, holds]) => of.length === 0 || holds())) process.exitCode = 1;
