import { execFileSync } from "node:child_process";
import { mkdirSync, readdirSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { sheets } from "../../taskpane/sheets/catalogue";
import { takeHandbook } from "./handbook";
import { DRAWN, root, served } from "./served";

/**
 * A picture of every sheet for a reviewer, filled and cleared, light and dark, beside those of the commit that was
 * pictured before: `npm run pictures`, or `npm run pictures -- coolingPlan weights` for some. `npm run pictures -- handbook`
 * takes those of the handbook that are stale.
 */
const folder = join(root, "reports", "pictures");
const SIZE = { width: 1500, height: 1500 };

const chosen = process.argv.slice(2);
const keys = sheets.map(({ key }) => key).filter((key) => chosen.length === 0 || chosen.includes(key));
const looks = ["light", "dark"].flatMap((scheme) => ["filled", "cleared"].map((state) => ({ scheme, state })));

const take = async (browser: Browser, address: string, into: string, scheme: string): Promise<void> => {
  const page = await browser.newPage({ viewport: SIZE, colorScheme: scheme as "light" | "dark" });
  for (const key of keys) {
    for (const state of ["filled", "cleared"]) {
      await page.goto(`${address}?sheet=${key}${state === "cleared" ? "&cleared" : ""}`);
      await page.waitForSelector("body.ready", { timeout: 60_000 });
      await page.click("#fold");
      await page.waitForTimeout(DRAWN);
      await page.screenshot({ path: join(into, `${key}-${state}-${scheme}.png`) });
    }
  }
  await page.close();
};

/** The two commits side by side, sheet by sheet. */
const side = (name: string, commits: readonly string[]): string =>
  `<h2>${name}</h2><div>${commits.map((commit) => `<figure><img src="${commit}/${name}.png" width="740" loading="lazy" alt=""><figcaption>${commit}</figcaption></figure>`).join("")}</div>`;

const run = async (): Promise<void> => {
  const commit = execFileSync("git", ["rev-parse", "--short", "HEAD"], { cwd: root, encoding: "utf8" }).trim();
  mkdirSync(join(folder, commit), { recursive: true });
  const [before] = readdirSync(folder)
    .filter((name) => name !== commit && statSync(join(folder, name)).isDirectory())
    .sort((one, other) => statSync(join(folder, other)).mtimeMs - statSync(join(folder, one)).mtimeMs);
  await served(async (browser, address) => {
    await Promise.all(["light", "dark"].map((scheme) => take(browser, address, join(folder, commit), scheme)));
  });
  const names = keys.flatMap((key) => looks.map(({ scheme, state }) => `${key}-${state}-${scheme}`));
  const commits = [...(before === undefined ? [] : [before]), commit];
  const style = "<style>body{font:14px system-ui}div{display:flex;gap:8px}figure{margin:0}</style>";
  const file = join(folder, "index.html");
  writeFileSync(
    file,
    `<!doctype html><meta charset="utf-8"><title>Sheets</title>${style}${names.map((name) => side(name, commits)).join("\n")}`,
  );
  console.log(`${names.length} pictures; look at ${file}`);
};

(chosen.includes("handbook") ? takeHandbook(chosen.includes("all")) : run()).catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
});
