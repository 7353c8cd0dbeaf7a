// All that the platform's own client is put to: every level of its API, every sheet, a failure at forty places of each
// action; or, of the actions named by their keys, the failures alone. The suite takes a sample of it. Wants a build:
// `npm run build` first.
import { spawnSync } from "node:child_process";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const keys = process.argv.slice(2);
const { status } = spawnSync(
  process.execPath,
  [join(here, "tool.mjs"), "jest", "tests/client", ...(keys.length > 0 ? ["-t", "every action"] : [])],
  {
    stdio: "inherit",
    env: { ...process.env, CLIENT: keys.length > 0 ? keys.join(" ") : "whole" },
  },
);
process.exitCode = status ?? 1;
