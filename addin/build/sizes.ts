import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";

/** What a page may weigh before anything is asked of it, in kB gzipped. A build over a budget fails. */
const budgets = [
  { what: "functions script", file: "functions.js", most: 40 },
  { what: "pane", file: "taskpane.js", most: 150 },
  { what: "preview page", file: /^preview\/preview\..*\.js$/, most: 2400 },
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
