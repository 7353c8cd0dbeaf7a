// Makes a fresh machine ready: the packages of the lock file, and with --tests a browser and LibreOffice.
// Plain Node, because it runs before anything is installed.
import { execFileSync, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const stamp = join(root, "node_modules", ".cache", "installed");

const [major, minor] = process.versions.node.split(".").map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`Node ${process.versions.node} is too old: install Node 20.19 or newer.`);
  process.exit(1);
}

const lock = createHash("sha256")
  .update(readFileSync(join(root, "package-lock.json")))
  .digest("hex");
if (!existsSync(stamp) || readFileSync(stamp, "utf8") !== lock) {
  console.log("Installing the packages of package-lock.json …");
  const npm = spawnSync("npm", ["ci", "--no-audit", "--no-fund", "--loglevel=error"], {
    cwd: root,
    stdio: "inherit",
    shell: process.platform === "win32",
  });
  if (npm.status !== 0) {
    console.error("npm could not install the packages: see its message above.");
    process.exit(1);
  }
  mkdirSync(dirname(stamp), { recursive: true });
  writeFileSync(stamp, lock);
}

/** The Debian packages of the tests, each with a command that shows whether it is there. */
const programs = [
  { command: "chromium", packages: ["chromium"] },
  { command: "soffice", packages: ["libreoffice-calc"] },
];
if (process.argv.includes("--tests")) {
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
