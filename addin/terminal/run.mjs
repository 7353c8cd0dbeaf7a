// Runs the terminal's formulas. They are put together here and not by a loader, because a loader would look through the
// spreadsheet engine's thousand files as well, which takes several times as long as the formulas.
import { buildSync } from "esbuild";
import Module from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const [{ text }] = buildSync({
  entryPoints: [join(here, "formula.ts")],
  bundle: true,
  packages: "external",
  platform: "node",
  format: "cjs",
  write: false,
}).outputFiles;
const file = join(here, "formula.cjs");
const module = new Module(file);
module.filename = file;
module.paths = Module._nodeModulePaths(here);
module._compile(text, file);
