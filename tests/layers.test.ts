import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";

/** Imports run one way: functions <- taskpane <- addin. manifest is read by the build alone, package.json for the version. */
const root = join(__dirname, "..");
const layers = ["functions", "taskpane", "addin"] as const;

const sources = (folder: string): string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
    .filter((name) => /\.(tsx?|mjs)$/.test(name))
    .map((name) => join(folder, name));

const importsOf = (file: string): string[] =>
  [...readFileSync(join(root, file), "utf8").matchAll(/(?:from|import)\s*\(?\s*["'](\.[^"']+)["']/g)].map(([, path]) =>
    relative(root, resolve(root, dirname(file), path as string)),
  );

test.each(layers.map((layer, height) => [layer, height] as const))(
  "%s imports nothing from above itself",
  (layer, height) => {
    const files = sources(layer);
    expect(files.length).toBeGreaterThan(0);
    const wrong = files.flatMap((file) =>
      importsOf(file)
        .filter((target) => !layers.slice(0, height + 1).some((allowed) => `${target}/`.startsWith(`${allowed}/`)))
        .filter((target) => !(layer === "addin" && target.startsWith("manifest/")))
        .filter((target) => !(file === "functions/release.ts" && target === "package.json"))
        .map((target) => `${file} imports ${target}`),
    );
    expect(wrong).toEqual([]);
  },
);

test("only the add-in names a spreadsheet program", () => {
  const naming = ["functions", "taskpane"]
    .flatMap(sources)
    .filter((file) =>
      /\b(Excel|Office|OfficeRuntime|CustomFunctions)\.|@univerjs|office-js/.test(
        readFileSync(join(root, file), "utf8"),
      ),
    );
  expect(naming).toEqual([]);
});

test("functions reach for no clock, page, network or storage", () => {
  const reaching = sources("functions").filter((file) =>
    /\bDate\.now\(|new Date\(\)|new UTCDate\(\)|\bfetch\(|\bdocument\b\.|\bwindow\b\.|localStorage|Math\.random\(/.test(
      readFileSync(join(root, file), "utf8"),
    ),
  );
  expect(reaching).toEqual([]);
});
