// All that the platform's own client is put to: every level of its API, every sheet, a failure at forty places of each
// action. The suite takes a sample of it. Wants a build: `npm run build` first.
import { spawnSync } from "node:child_process";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const { status } = spawnSync(
  process.execPath,
  [join(here, "tool.mjs"), "jest", "tests/client", "--testTimeout=1200000"],
  {
    stdio: "inherit",
    env: { ...process.env, CLIENT: "whole" },
  },
);
process.exitCode = status ?? 1;
