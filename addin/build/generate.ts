import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { catalogue } from "../../functions/catalogue";
import { appended, type Published } from "../../functions/published";
import { VERSION } from "../../functions/release";
import { withNewFigures, type Figures } from "./agreed";
import { formatted } from "./formatted";
import { agreed, type Ends } from "./limits";
import { withProven } from "./proven";
import { themesCss } from "./themes";

/**
 * Writes what follows from something else: the published list and the agreed limits, to which it only appends, from the
 * catalogue; the pane's themes from the vendor's tokens; the README's last sections from what has been proven. With --check,
 * says whether they are up to date instead.
 */
const root = join(__dirname, "..", "..");

const published = (text: string): Promise<string> =>
  formatted(appended(JSON.parse(text) as readonly Published[], catalogue, VERSION));

const limits = (text: string): Promise<string> => formatted(agreed(JSON.parse(text) as Ends, catalogue));

const figures = (text: string): Promise<string> =>
  formatted(withNewFigures(JSON.parse(text) as Readonly<Record<string, Figures>>));

const generated: readonly (readonly [file: string, fresh: (old: string) => string | Promise<string>])[] = [
  ["functions/published.json", published],
  ["tests/functions/limits.json", limits],
  ["tests/functions/agreed.json", figures],
  ["taskpane/components/themes.css", () => themesCss(root)],
  ["README.md", withProven],
];

const main = async (): Promise<void> => {
  for (const [name, fresh] of generated) {
    const old = readFileSync(join(root, name), "utf8");
    const text = await fresh(old);
    if (text === old) continue;
    if (process.argv.includes("--check")) {
      console.error(`${name} is behind what it is made from: run npm run generate`);
      process.exitCode = 1;
    } else writeFileSync(join(root, name), text);
  }
};

void main();
