import { readFileSync } from "node:fs";
import { join } from "node:path";
import { buildSync } from "esbuild";
import { leaveOneOut } from "../../functions/network/leaveOneOut";
import { VERSION } from "../../functions/release";
import { leaveOneOutDrawing } from "../../taskpane/handbook/leaveOneOutDrawing";
import { PARTS, pagesOf } from "../../taskpane/handbook/pages";
import { fileOf } from "../../taskpane/handbook/paths";
import { evaluate } from "../boundary/evaluate";
import { themeBlock, tokensIn } from "../build/themes";
import { entriesOf } from "./entries";
import { htmlOf } from "./html";
import { picturesIn } from "./pictures";
import { licencesOf, writtenIn } from "./written";

/** A script of this folder as one file. */
const scriptOf = (name: string, define: Record<string, string> = {}): string => {
  const [script] = buildSync({
    entryPoints: [join(__dirname, name)],
    bundle: true,
    minify: true,
    write: false,
    format: "iife",
    target: "es2022",
    charset: "utf8",
    define,
  }).outputFiles;
  return script?.text ?? "";
};

const styles = (): string => {
  const own = readFileSync(join(__dirname, "handbook.css"), "utf8");
  const tokens = tokensIn(own);
  return [
    themeBlock(":root", "light", tokens),
    `@media screen and (prefers-color-scheme: dark) {\n${themeBlock(":root", "dark", tokens)}\n}`,
    own,
  ].join("\n");
};

/** Every file of the handbook, by its path there. */
export const handbookFiles = (root: string): ReadonlyMap<string, string | Uint8Array> => {
  const pages = pagesOf(writtenIn(root), evaluate);
  const { sizeOf, files } = picturesIn(root);
  const drawn = {
    "drawn/leave-one-out": leaveOneOutDrawing(
      leaveOneOut,
      "Root mean square error of the estimate and of the nearest station, highs and lows, by region",
    ),
  };
  return new Map<string, string | Uint8Array>([
    ...pages.map(
      (page) => [fileOf(page.path), htmlOf(page, { parts: PARTS, version: VERSION }, { sizeOf, drawn })] as const,
    ),
    ["handbook.css", styles()],
    ["search.js", scriptOf("search.ts")],
    ["found.js", scriptOf("found.ts", { ENTRIES: JSON.stringify(entriesOf(pages)) })],
    ["licences.txt", licencesOf(root)],
    ...files,
  ]);
};
