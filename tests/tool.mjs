// Runs a tool of the tests' packages from the project's folder: `node tests/tool.mjs jest tests/sheets --watch`.
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const packages = {
  jest: "jest",
  tsc: "typescript",
  eslint: "eslint",
  prettier: "prettier",
  stryker: "@stryker-mutator/core",
};

/**
 * Room for what is made and soon forgotten: each of these tools makes objects by the million, and Node would look through its
 * small room so often that a tenth of the time and more went into it. Jest's workers are given the same.
 */
const ROOM = ["--max-semi-space-size=64"]; // MB

const [name, ...given] = process.argv.slice(2);
const folder = ["node_modules", "../node_modules"]
  .map((modules) => join(here, modules, packages[name] ?? "."))
  .find((one) => existsSync(join(one, "package.json")));
if (!(name in packages) || folder === undefined) {
  console.error(
    name in packages
      ? `${name} is not installed: npm ci --prefix tests, or npm test, which installs all that it needs.`
      : `There is no tool "${name}" here: ${Object.keys(packages).join(", ")}.`,
  );
  process.exit(1);
}
const { bin } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
const script = join(folder, typeof bin === "string" ? bin : bin[name]);
const { status } = spawnSync(process.execPath, [...ROOM, script, ...given], {
  cwd: join(here, ".."),
  stdio: "inherit",
  // Mutation testing looks for jest from the folder that it copies.
  env: { ...process.env, ...(name === "stryker" ? { NODE_PATH: join(here, "node_modules") } : {}) },
});
process.exitCode = status ?? 1;
