/**
 * All that the platform's own client is put to: every level of its API, every sheet, a failure at forty places of each
 * action; or, of the actions named by their keys, the failures alone. The suite takes a sample of it. Wants a build:
 * `npm run build` first.
 */
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { record, type Measured } from "../addin/build/proven";

const keys = process.argv.slice(2);
const { status } = spawnSync(
  process.execPath,
  [join(__dirname, "tool.mjs"), "jest", "tests/client", ...(keys.length > 0 ? ["-t", "every action"] : [])],
  {
    stdio: "inherit",
    env: { ...process.env, CLIENT: keys.length > 0 ? keys.join(" ") : "whole" },
  },
);
process.exitCode = status ?? 1;
if (status === 0 && keys.length === 0) {
  const found = readFileSync(join(__dirname, "..", "reports", "client.json"), "utf8");
  void record("client", JSON.parse(found) as Measured);
}
