import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { build } from "esbuild";
import { literalsOf, switchable, type Literal } from "./literals";

export const ROOT = join(__dirname, "../../..");

/** Words and lists: a changed number in them is a year of a source or a version. */
const WORDS = /^(?:sources|cautions|catalogue|release)\.ts$/;
const sourcesIn = (folder: string): readonly string[] =>
  readdirSync(join(ROOT, folder), { recursive: true })
    .map((file) => join(folder, String(file)))
    .sort();

/** Every number of `functions/`, each with a number of its own. */
export const allLiterals = (): readonly Literal[] => {
  const found: Literal[] = [];
  for (const file of sourcesIn("functions")) {
    if (!file.endsWith(".ts") || WORDS.test(relative("functions", file))) continue;
    found.push(...literalsOf(ROOT, join(ROOT, file), found.length + 1));
  }
  return found;
};

/** Tests that need what only jest has, or another program. */
const NEEDS_JEST = /\bjest\.(?:spyOn|fn|isolateModules|resetModules)\b/;

export const testFiles = (): readonly string[] =>
  ["tests/functions", "tests/boundary", "tests/network"]
    .flatMap(sourcesIn)
    .concat("tests/examples.test.ts", "tests/native/edges.test.ts", "tests/mutation/numbers/twins.test.ts")
    .filter((file) => file.endsWith(".test.ts") && !NEEDS_JEST.test(readFileSync(join(ROOT, file), "utf8")));

/** A test file with all of our code that it needs, in which any number can be another; packages and data stay outside. */
export interface Bundle {
  readonly test: string;
  readonly code: string;
  /** The files of `functions/` in it. */
  readonly inputs: readonly string[];
}

export const bundleOf = async (
  test: string,
  literals: ReadonlyMap<string, readonly Literal[]>,
  noting: boolean,
): Promise<Bundle> => {
  const { outputFiles, metafile } = await build({
    stdin: {
      contents: ["./tests/faults", "./tests/network", `./${test}`].map((file) => `import "${file}";`).join("\n"),
      resolveDir: ROOT,
      loader: "ts",
    },
    absWorkingDir: ROOT,
    bundle: true,
    write: false,
    platform: "node",
    format: "cjs",
    target: "node20",
    packages: "external",
    metafile: true,
    logLevel: "error",
    plugins: [
      {
        name: "numbers",
        setup(own) {
          own.onResolve({ filter: /\.json$/ }, ({ path, resolveDir }) => ({
            path: join(resolveDir, path),
            external: true,
          }));
          own.onLoad({ filter: /\.ts$/ }, ({ path }) => {
            const file = relative(ROOT, path);
            const numbers = literals.get(file);
            const text = numbers ? switchable(ROOT, file, numbers, noting) : readFileSync(path, "utf8");
            const contents = text
              .replaceAll(/\b__dirname\b/g, JSON.stringify(dirname(path)))
              .replaceAll(/\b__filename\b/g, JSON.stringify(path));
            return { contents, loader: "ts" };
          });
        },
      },
    ],
  });
  const inputs = Object.keys(metafile.inputs).filter((file) => file.startsWith("functions/"));
  return { test, code: outputFiles[0]?.text ?? "", inputs };
};
