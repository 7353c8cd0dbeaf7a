import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { catalogue } from "../../functions/catalogue";
import { cautions } from "../../functions/cautions";
import { wordsOf } from "../../functions/readersWords";
import { sources } from "../../functions/sources";

/** What a page may weigh before anything is asked of it, in kB gzipped. `npm run check` holds the build against it. */
const budgets = [
  { what: "functions script", file: "functions.js", most: 48 },
  { what: "pane", file: /^taskpane\..*\.js$/, most: 90 },
  { what: "sheets", file: /^sheets\..*\.js$/, most: 90 },
  { what: "map's coast", file: "network/coast.json", most: 150 },
  { what: "map's relief", file: "network/relief.i8", most: 110 },
  { what: "preview page", file: /^preview\/preview\..*\.js$/, most: 2400 },
  { what: "station network", file: "network/stations.json", most: 450 },
] as const;

/** Every file below a folder, by its path in it. */
export const filesIn = (folder: string, prefix = ""): string[] =>
  readdirSync(folder).flatMap((name) =>
    statSync(join(folder, name)).isDirectory()
      ? filesIn(join(folder, name), `${prefix}${name}/`)
      : [`${prefix}${name}`],
  );

/** The size of each budgeted file of a build, in kB gzipped, and whether it is inside its budget. */
export const sizes = (dist: string) => {
  const files = filesIn(dist);
  return budgets.map(({ what, file, most }) => {
    const name = files.find((candidate) => (typeof file === "string" ? candidate === file : file.test(candidate)));
    if (name === undefined) throw new Error(`the build wrote no ${what}`);
    const gzipped = gzipSync(readFileSync(join(dist, name)), { level: 9 }).length / 1000;
    return { what, name, gzipped, most, fits: gzipped <= most };
  });
};

/** All that is written for a reader, in pieces long enough to be nothing else. */
const readersTexts = (): readonly string[] =>
  [
    ...catalogue.flatMap((definition) => {
      const { summary, parameters, columns } = wordsOf(definition);
      return [summary, ...columns, ...parameters.map(({ about }) => about)];
    }),
    ...Object.values(sources).map(({ text }) => text),
    ...Object.values(cautions),
  ].filter((text) => text.length > 25);

/** What is wrong with a build's files: over a budget, or carrying words of the reference to where figures are worked out. */
const faults = (dist: string): readonly string[] => {
  const functions = readFileSync(join(dist, "functions.js"), "utf8");
  return [
    ...sizes(dist)
      .filter(({ fits }) => !fits)
      .map(({ what, gzipped, most }) => `the ${what} has ${gzipped.toFixed(1)} kB gzipped, its budget is ${most} kB`),
    ...[...new Set(readersTexts())]
      .filter((text) => functions.includes(text))
      .map((text) => `functions.js carries "${text}", which is for readers`),
  ];
};

if (require.main === module) {
  const dist = join(__dirname, "..", "..", "dist");
  for (const { what, gzipped, most } of sizes(dist)) {
    console.log(`${what.padEnd(18)} ${gzipped.toFixed(1).padStart(7)} kB gzipped, budget ${most} kB`);
  }
  for (const fault of faults(dist)) {
    console.error(`FAULT: ${fault}`);
    process.exitCode = 1;
  }
}
