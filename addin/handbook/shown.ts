import { createHash } from "node:crypto";
import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { sheets } from "../../taskpane/sheets/catalogue";

/**
 * What a picture shows of the project: sheets by their keys, and files or folders whose code draws what is seen beside
 * them. A picture is stale once any of it has changed since it was taken.
 */
export interface Shown {
  readonly sheets: readonly string[];
  readonly files: readonly string[];
}

const filesIn = (path: string): readonly string[] =>
  statSync(path).isDirectory()
    ? readdirSync(path)
        .sort()
        .flatMap((name) => filesIn(join(path, name)))
    : [path];

/** What is seen of a sheet: not its links, its limits or where its names stand. */
const seen = (key: string): string => {
  const sheet = sheets.find((one) => one.key === key);
  if (!sheet) throw new Error(`there is no sheet ${key}`);
  const { name, blocks, formats, widths, merges, lines, charts, rules } = sheet;
  return JSON.stringify({ name, blocks, formats, widths, merges, lines, charts, rules });
};

export const fingerprint = (root: string, shown: Shown): string => {
  const hash = createHash("sha256");
  for (const key of shown.sheets) hash.update(seen(key));
  for (const file of shown.files.flatMap((path) => filesIn(join(root, path)))) hash.update(readFileSync(file));
  return hash.digest("hex").slice(0, 16);
};

const view = (...names: string[]): readonly string[] => names.map((name) => `taskpane/views/${name}`);

/** The pictures of the first hour, in its order. */
export const STEPS: Readonly<Record<string, Shown>> = {
  "step-open": { sheets: ["nativeClimate"], files: view("Pane.tsx") },
  "step-place": { sheets: [], files: view("Places.tsx", "places/map") },
  "step-year": { sheets: [], files: view("places/StationList.tsx", "places/YearAtPlace.tsx") },
  "step-climate": { sheets: ["nativeClimate", "stationShortlist"], files: [] },
  "step-glance": { sheets: ["nativeClimate"], files: [] },
  "step-form": { sheets: [], files: view("StartYear.tsx") },
  "step-plan": { sheets: ["coolingPlan"], files: [] },
  "step-log": { sheets: ["winterLog"], files: [] },
  "step-picture": { sheets: [], files: view("Share.tsx") },
  "step-share": { sheets: [], files: view("Share.tsx") },
};

/** Every picture of the handbook, and what it shows. */
export const SHOWN: Readonly<Record<string, Shown>> = {
  ...Object.fromEntries(sheets.map(({ key }) => [key, { sheets: [key], files: [] }])),
  ...STEPS,
};
