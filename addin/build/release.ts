import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { catalogue } from "../../functions/catalogue";
import { appended, type Published } from "../../functions/published";
import { VERSION } from "../../functions/release";
import { formatted } from "./formatted";
import { underVersion } from "./underVersion";

/**
 * What `npm version` runs beside raising the number in package.json and its lock: what was unreleased comes under the
 * version, and the published list is made from that of the last release, so that nothing published then has moved and
 * what came since bears the version in which keepers first meet it. With --check, before the number is raised, it says
 * what is in the way and writes nothing.
 */
const root = join(__dirname, "..", "..");
const LIST = "functions/published.json";
const CHANGES = "CHANGELOG.md";

const git = (...words: string[]): string => execFileSync("git", words, { cwd: root, encoding: "utf8" });

/** The published list of the commit that last set the version. */
const lastReleased = (): readonly Published[] => {
  const commit = git("log", "-1", "--format=%H", '-G^  "version":', "--", "package.json").trim();
  if (commit === "")
    throw new Error("No commit here set the version: the whole history is needed (git fetch --unshallow)");
  return JSON.parse(git("show", `${commit}:${LIST}`)) as readonly Published[];
};

const release = async (): Promise<void> => {
  const isCheck = process.argv.includes("--check");
  const list = await formatted(appended(lastReleased(), catalogue, VERSION));
  const changes = underVersion(readFileSync(join(root, CHANGES), "utf8"), isCheck ? "to come" : VERSION);
  if (isCheck) return;
  writeFileSync(join(root, LIST), list);
  writeFileSync(join(root, CHANGES), changes);
};

release().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
});
