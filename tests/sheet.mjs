// The tests of one sheet, by its key: `npm run sheet -- coolingPlan`; a second word is jest's own, such as --watch.
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const [key = "", ...rest] = process.argv.slice(2);
const file = join(here, "..", "taskpane", "sheets", `${key}.ts`);
const name = existsSync(file) ? /^\s*name: "([^"]+)"/m.exec(readFileSync(file, "utf8"))?.[1] : undefined;
if (name === undefined) {
  console.error(`There is no sheet "${key}": give the name of its file in taskpane/sheets, such as coolingPlan.`);
  process.exit(1);
}
const jest = (...given) =>
  spawnSync(process.execPath, [join(here, "tool.mjs"), "jest", ...given, ...rest], { stdio: "inherit" }).status ?? 1;

const own = join("tests", "sheets", `${key}.test.ts`);
const common = jest("tests/sheets/data.test.ts", "tests/sheets/worked.test.ts", "-t", `^${name} `);
process.exitCode = (existsSync(join(here, "..", own)) ? jest(own) : 0) || common;
