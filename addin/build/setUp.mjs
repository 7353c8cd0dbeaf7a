// Makes a fresh machine ready: the packages that the preview needs; with --missing only where there are none at all; with
// --checks also those of tests/, where they are missing; with --tests those of tests/ as they are locked, a browser and
// LibreOffice. What it says goes beside the output, which a formula's answer may be waited for on.
// Plain Node, because it runs before anything is installed.
import { execFileSync, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const tests = join(root, "tests");

const [major, minor] = process.versions.node.split(".").map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`Node ${process.versions.node} is too old: install Node 20.19 or newer.`);
  process.exit(1);
}

/** Installs what a folder's lock file says, unless it is there already. */
const install = (folder, what) => {
  const stamp = join(folder, "node_modules", ".cache", "installed");
  const lock = createHash("sha256")
    .update(readFileSync(join(folder, "package-lock.json")))
    .digest("hex");
  if (existsSync(stamp) && readFileSync(stamp, "utf8") === lock) return;
  console.error(`Installing ${what} …`);
  const npm = spawnSync("npm", ["ci", "--no-audit", "--no-fund", "--loglevel=error"], {
    cwd: folder,
    stdio: ["inherit", 2, 2],
    shell: process.platform === "win32",
  });
  if (npm.status !== 0) {
    console.error("npm could not install the packages: see its message above.");
    process.exit(1);
  }
  mkdirSync(dirname(stamp), { recursive: true });
  writeFileSync(stamp, lock);
};

/** Of the vendor's package few files in a hundred are wanted: the runtime and the client that the tests drive. */
const DRIVEN = /^(custom-functions-runtime.*|office\.js|excel-mac-16\.00\.js|en-us|telemetry)$/;
const lighten = () => {
  const dist = join(tests, "node_modules", "@microsoft", "office-js", "dist");
  for (const name of existsSync(dist) ? readdirSync(dist) : []) {
    if (!DRIVEN.test(name)) rmSync(join(dist, name), { recursive: true });
  }
};

const wants = (word) => process.argv.includes(word);
const isThere = ["tests", "."].some((from) => existsSync(join(root, from, "node_modules", "jest", "package.json")));

const hasAny = existsSync(join(root, "node_modules", "esbuild", "package.json"));

if (!(wants("--checks") && isThere) && !(wants("--missing") && hasAny)) install(root, "the packages of the preview");
if (wants("--tests") || (wants("--checks") && !isThere)) {
  install(tests, "the packages of the tests");
  lighten();
}

/** The Debian packages of the tests, each with a command that shows whether it is there. */
const programs = [
  { command: "chromium", packages: ["chromium"] },
  { command: "soffice", packages: ["libreoffice-calc"] },
];
if (wants("--tests")) {
  const missing = programs.filter(({ command }) => spawnSync("which", [command]).status !== 0);
  if (missing.length > 0) {
    const packages = [...missing.flatMap((program) => program.packages), "fonts-liberation"];
    const isDebianRoot = process.getuid?.() === 0 && spawnSync("which", ["apt-get"]).status === 0;
    if (!isDebianRoot) {
      console.error(`The tests need ${packages.join(", ")}. On Debian, as root: apt-get install ${packages.join(" ")}`);
      process.exit(1);
    }
    console.log(`Installing ${packages.join(", ")} …`);
    const apt = { stdio: ["ignore", "ignore", "inherit"], env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" } };
    execFileSync("apt-get", ["update", "-qq"], apt);
    execFileSync("apt-get", ["install", "-y", "-qq", "--no-install-recommends", ...packages], apt);
  }
}
