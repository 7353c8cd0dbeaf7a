/**
 * npm run bench [-- --json]; exit code 1 if a limit is missed. Every comparison in a process of its own, bundled as the add-in is, because a compiler that
 * has seen other work, or modules behind getters, would be measured as well.
 */
import { execFileSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { cpus, totalmem } from "node:os";
import { join } from "node:path";
import { buildSync } from "esbuild";
import { keeps, missed, type Line, type Table } from "./race";

const PARTS = [
  "lapse",
  "network",
  "dayTable",
  "memory",
  "timeOutside",
  "longTable",
  "workbook",
  "linked",
  "today",
  "files",
  "bundles",
  "load",
];
const COMPARED = ["arquero", "@formulajs/formulajs", "papaparse"];
const root = join(__dirname, "../..");
const folder = join(root, "tests/node_modules/.cache/benchmark");

const versionOf = (name: string): string => {
  const files = ["tests", "."].map((from) => join(root, from, "node_modules", name, "package.json"));
  const file = files.find((one) => existsSync(one)) ?? "";
  return (JSON.parse(readFileSync(file, "utf8")) as { version: string }).version;
};

/** The engine's packages can be loaded whole only as CommonJS. */
const COMMON_JS = ["workbook", "linked", "today", "load"];

const measured = (part: string): Table[] => {
  const isCommon = COMMON_JS.includes(part);
  const outfile = join(folder, `${part}.${isCommon ? "cjs" : "mjs"}`);
  buildSync({
    stdin: {
      // The engine's timers would keep the process alive.
      contents: `import { tables } from "./${part}"; void tables().then((all) => process.stdout.write(JSON.stringify(all), () => process.exit()));`,
      resolveDir: __dirname,
    },
    bundle: true,
    platform: "node",
    format: isCommon ? "cjs" : "esm",
    target: "node20",
    packages: "external",
    logLevel: "error",
    outfile,
  });
  const out = execFileSync(process.execPath, ["--expose-gc", outfile], { cwd: root, encoding: "utf8", maxBuffer: 1e8 });
  return JSON.parse(out) as Table[];
};

const COLUMNS = ["", "median ms", "ratio", "allowed", ""] as const;

const figures = (line: Line): readonly string[] => {
  const { what, milliseconds, ratio, against, allowed, note } = line;
  return [
    what,
    milliseconds === undefined ? "" : milliseconds.toFixed(milliseconds < 10 ? 2 : 1),
    ratio === undefined ? "" : `${ratio.toFixed(2)}×`,
    allowed === undefined ? "" : `${allowed}× ${keeps(line) ? "kept" : "MISSED"}`,
    [against && allowed === undefined ? `against ${against}` : "", note ?? ""].filter(Boolean).join("; "),
  ];
};

const printed = ({ title, lines }: Table): string => {
  const rows = lines.map(figures);
  const line = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
  return [`**${title}**`, "", line(COLUMNS), "| --- | ---: | ---: | ---: | --- |", ...rows.map(line), ""].join("\n");
};

const [processor] = cpus();
const heading = {
  date: new Date().toISOString().slice(0, 10),
  processor: `${processor?.model.trim() ?? "unknown"}, ${cpus().length} cores, ${Math.round(totalmem() / 2 ** 30)} GB`,
  versions: { node: process.versions.node, ...Object.fromEntries(COMPARED.map((name) => [name, versionOf(name)])) },
};
const json = process.argv.includes("--json");
if (!json) {
  const versions = Object.entries(heading.versions).map(([name, version]) => `${name} ${version}`);
  console.log(
    `${heading.date}; ${heading.processor}; ${versions.join(", ")}. Medians of several runs, in turn; ms on the clock, ratios of processor time.\n`,
  );
}
const tables: Table[] = [];
for (const part of PARTS) {
  for (const table of measured(part)) {
    tables.push(table);
    if (!json) console.log(printed(table));
  }
}
if (json) console.log(JSON.stringify({ ...heading, tables }, null, 2));
for (const line of missed(tables)) {
  console.error(`Missed: ${line}`);
  process.exitCode = 1;
}
