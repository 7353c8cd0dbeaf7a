import { cpSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import webpack from "webpack";
import { PREFIX } from "../../functions/define";
import { faultsOf } from "../../manifest/check";
import { fill } from "../../manifest/fill";
import { commands } from "../excel/commands";
import { functionsJson } from "../metadata";
import { writeHandbook } from "./handbook";
import { writeRelease } from "./lastRelease";
import { page } from "./page";
import { filesIn } from "./sizes";
import { excel, preview } from "./webpack.config";

/** Where `npm run excel` serves the add-in for sideloading. */
const LOCAL_SITE = "https://localhost:3000";

const root = join(__dirname, "..", "..");

/** Everything that a release is made of. */
const write = async (dist: string, site: string, reports: boolean): Promise<void> => {
  const stats = await new Promise<webpack.MultiStats>((resolve, reject) =>
    webpack([excel(dist, reports), preview(join(dist, "preview"))], (error, done) =>
      error ? reject(error) : resolve(done as webpack.MultiStats),
    ),
  );
  if (stats.hasErrors() || stats.hasWarnings()) throw new Error(stats.toString("errors-warnings"));

  const [pane, grid] = stats.stats.map(({ compilation }) =>
    [...compilation.entrypoints.values()].flatMap((entry) => entry.getFiles()),
  );
  const pageOf = (template: string, files: readonly string[] = []): string =>
    page(readFileSync(join(root, "addin", template), "utf8"), [...new Set(files)]);
  writeFileSync(join(dist, "taskpane.html"), pageOf("excel/taskpane.html", pane));
  // The manifest needs an address that stays.
  const functions = pane?.find((file) => file.startsWith("functions."));
  if (functions === undefined) throw new Error("the build wrote no script of the functions");
  cpSync(join(dist, functions), join(dist, "functions.js"));
  writeFileSync(join(dist, "preview", "index.html"), pageOf("preview/index.html", grid));

  const { version } = JSON.parse(readFileSync(join(root, "package.json"), "utf8")) as { version: string };
  writeFileSync(join(dist, "functions.json"), JSON.stringify(functionsJson(`${site}/handbook`), null, 1));
  writeHandbook(root, join(dist, "handbook"));
  cpSync(join(root, "manifest", "icons"), join(dist, "icons"), { recursive: true });
  // Beside each page, because a page reads it from its own address.
  for (const folder of [dist, join(dist, "preview")]) {
    for (const file of ["stations.json", "relief.i8", "coast.json", "NOTICE.md"]) {
      cpSync(join(root, "functions", "network", file), join(folder, "network", file));
    }
  }
  const manifest = fill(readFileSync(join(root, "manifest", "manifest.xml"), "utf8"), site, version);
  writeFileSync(join(dist, "manifest.xml"), manifest);
  const faults = faultsOf(manifest, { files: filesIn(dist), namespace: PREFIX, commands: Object.keys(commands) });
  if (faults.length > 0) throw new Error(`the manifest is faulty: ${faults.join("; ")}`);
};

const run = async () => {
  const { values } = parseArgs({
    options: {
      site: { type: "string", default: LOCAL_SITE },
      // A pane that reports on the Excel in which it runs; apart from dist/, so that it is never published.
      reports: { type: "boolean", default: false },
      // The dist/ of the last release, whose scripts stay beside the new ones.
      keep: { type: "string" },
    },
  });
  const dist = join(root, ...(values.reports ? ["reports", "excel"] : ["dist"]));
  const site = values.site.replace(/\/+$/, "");
  if (!/^https:\/\/[^/\s]+/.test(site)) throw new Error(`--site holds "${values.site}": give an https:// address`);

  const started = performance.now();
  await writeRelease(dist, values.keep, () => write(dist, site, values.reports));

  const took = ((performance.now() - started) / 1000).toFixed(1);
  console.log(values.site === LOCAL_SITE ? `Built in ${took} s.` : `Built for ${site} in ${took} s.`);
};

run().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
});
