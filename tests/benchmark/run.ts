/**
 * npm run bench [-- --json] [PARTS]; exit code 1 if a limit is missed. A run that is whole and misses none writes results.md, and enters
 * what the README tells of it in tests/proven.json. Every comparison in a process of its own, bundled as the add-in is, because a compiler that
 * has seen other work, or modules behind getters, would be measured as well.
 */
import { execFileSync } from "node:child_process";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { cpus, loadavg, totalmem } from "node:os";
import { join } from "node:path";
import { buildSync } from "esbuild";
import { record } from "../../addin/build/proven";
import { keeps, missed, toldOf, type Line, type Table } from "./race";

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
  "page",
  "load",
  "loadMemory",
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
const COMMON_JS = ["workbook", "linked", "today", "load", "loadMemory"];

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
  const out = execFileSync(
    process.execPath,
    ["--expose-gc", "--require", join(__dirname, "plainFields.cjs"), outfile],
    {
      cwd: root,
      encoding: "utf8",
      maxBuffer: 1e8,
      // As in the add-in: the package that writes .xlsx checks itself otherwise.
      env: { ...process.env, NODE_ENV: "production" },
    },
  );
  return JSON.parse(out) as Table[];
};

const COLUMNS = ["", "median ms", "ratio", "allowed", ""] as const;

const figures = (line: Line): readonly string[] => {
  const { what, milliseconds, ratio, against, allowed, note, missing } = line;
  return [
    what,
    milliseconds === undefined ? "" : milliseconds.toFixed(milliseconds < 10 ? 2 : 1),
    ratio === undefined ? "" : `${ratio.toFixed(2)}×`,
    allowed === undefined ? "" : `${allowed}× ${keeps(line) ? "kept" : "MISSED"}`,
    [
      against && allowed === undefined ? `against ${against}` : "",
      note ?? "",
      missing ? `not measured: ${missing}` : "",
    ]
      .filter(Boolean)
      .join("; "),
  ];
};

const printed = ({ title, lines }: Table): string => {
  const rows = lines.map(figures);
  const line = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
  return [`**${title}**`, "", line(COLUMNS), "| --- | ---: | ---: | ---: | --- |", ...rows.map(line), ""].join("\n");
};

const [processor] = cpus();
/** How many processes were at work before the run, on average of a minute; no system but this one's kind can tell. */
const [busy = 0] = loadavg();
const heading = {
  date: new Date().toISOString().slice(0, 10),
  processor: `${processor?.model.trim() ?? "unknown"}, ${cpus().length} cores, ${Math.round(totalmem() / 2 ** 30)} GB, ${busy.toFixed(1)} at work before`,
  versions: { node: process.versions.node, ...Object.fromEntries(COMPARED.map((name) => [name, versionOf(name)])) },
};
const versions = Object.entries(heading.versions).map(([name, version]) => `${name} ${version}`);
const said = [
  `${heading.date}; ${heading.processor}; ${versions.join(", ")}. Medians of several runs, in turn; ms on the clock, ratios of processor time.\n`,
];
/** Some parts alone, by their names; of them nothing is kept. */
const asked = process.argv.slice(2).filter((word) => !word.startsWith("--"));
const isJson = process.argv.includes("--json");
const say = (words: string): void => {
  said.push(words);
  if (!isJson) console.log(words);
};

const RESULTS = join(__dirname, "results.md");
const TITLE = "# What it costs, beside other tools\n\nFrom `npm run bench`: ratios side by side in one run.\n";

const bench = async (): Promise<void> => {
  if (!isJson) console.log(said[0]);
  const tables: Table[] = [];
  for (const part of PARTS.filter((one) => asked.length === 0 || asked.includes(one))) {
    for (const table of measured(part)) {
      tables.push(table);
      say(printed(table));
    }
  }
  if (isJson) console.log(JSON.stringify({ ...heading, tables }, null, 2));
  const wrong = missed(tables);
  for (const line of wrong) {
    console.error(`Missed: ${line}`);
    process.exitCode = 1;
  }
  const told = toldOf(tables);
  if (wrong.length > 0 || told === undefined || asked.length > 0) return;
  writeFileSync(RESULTS, `${[TITLE, ...said].join("\n").trimEnd()}\n`);
  for (const [run, figures] of told) await record(run, { ...figures, busy });
};

void bench();
