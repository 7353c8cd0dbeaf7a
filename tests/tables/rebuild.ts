import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";

/**
 * Makes anew the tables that open packages hold or answer, each at the version that the table names, and says which differ
 * from what stands here; with --write they are written. The packages are fetched for this alone and removed again.
 * README.rebuild.md says where every other table comes from.
 */
const VEGA = "vega-datasets@3.2.1";
const MEEUS = "astronomia@4.2.0";
/** The Julian day of a spreadsheet's day 0. */
const EPOCH = 2_415_018.5;

interface Declinations {
  readonly rows: readonly (readonly [moment: number, degrees: number])[];
}
type Apparent = (julianDay: number) => { readonly dec: number };

const declinations = (folder: string, old: string): string => {
  const { apparentEquatorial } = createRequire(join(folder, "package.json"))("./lib/solar.cjs") as {
    readonly apparentEquatorial: Apparent;
  };
  const { rows } = JSON.parse(old) as Declinations;
  return rows.reduce((text, [moment, degrees]) => {
    const anew = Number(((apparentEquatorial(moment + EPOCH).dec * 180) / Math.PI).toFixed(9));
    return text.replace(`[${moment}, ${degrees}]`, `[${moment}, ${anew}]`);
  }, old);
};

type Make = (folder: string, old: string) => string;
const carried =
  (name: string): Make =>
  (folder) =>
    readFileSync(join(folder, "data", name), "utf8");

const tables: readonly (readonly [table: string, from: string, make: Make])[] = [
  ["penguins.json", VEGA, carried("penguins.json")],
  ["seattleHourlyNormals.csv", VEGA, carried("seattle-weather-hourly-normals.csv")],
  ["sunDeclination.json", MEEUS, declinations],
];

const fetched = mkdtempSync(join(tmpdir(), "tables-"));
try {
  // Fetched without being installed: nothing of them runs beforehand, and no lock file changes.
  const run = (command: string, ...words: string[]): string =>
    execFileSync(command, words, { cwd: fetched, encoding: "utf8", shell: process.platform === "win32" });
  const folders = new Map<string, string>();
  for (const name of new Set(tables.map(([, from]) => from))) {
    const archive = run("npm", "pack", "--silent", name).trim();
    const folder = archive.replace(/\.tgz$/, "");
    mkdirSync(join(fetched, folder));
    run("tar", "-xzf", archive, "-C", folder);
    folders.set(name, join(fetched, folder, "package"));
  }
  for (const [table, from, make] of tables) {
    const path = join(__dirname, table);
    const old = readFileSync(path, "utf8");
    const anew = make(folders.get(from) ?? "", old);
    if (anew !== old && process.argv.includes("--write")) writeFileSync(path, anew);
    if (anew !== old) process.exitCode = 1;
    console.log(`${anew === old ? "the same " : "different"} ${table}, from ${from}`);
  }
} finally {
  rmSync(fetched, { recursive: true, force: true });
}
