import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Written } from "../../taskpane/handbook/written";

interface Lock {
  readonly packages: Readonly<
    Record<string, { readonly version: string; readonly license?: string; readonly dev?: boolean }>
  >;
}

const MODULES = "node_modules/";

/** Packages that are no part of development alone, by their folders in node_modules. */
const shipped = (root: string) => {
  const { packages } = JSON.parse(readFileSync(join(root, "package-lock.json"), "utf8")) as Lock;
  return Object.entries(packages)
    .filter(([path, { dev }]) => path.startsWith(MODULES) && !dev)
    .map(([path, { version, license }]) => ({
      path,
      name: path.slice(path.lastIndexOf(MODULES) + MODULES.length),
      version,
      licence: license ?? "see its text",
    }))
    .sort((one, other) => one.name.localeCompare(other.name, "en"));
};

/** The licences of those packages, in full, as their makers wrote them. */
export const licencesOf = (root: string): string =>
  shipped(root)
    .flatMap(({ path, name, version }) => {
      const folder = join(root, path);
      // A package for another kind of machine is not installed.
      if (!existsSync(folder)) return [];
      const texts = readdirSync(folder)
        .filter((file) => /^(licen[cs]e|copying|notice)/i.test(file) && /(^[^.]*|\.(md|txt|mit))$/i.test(file))
        .map((file) => readFileSync(join(folder, file), "utf8").trim());
      return texts.length === 0 ? [] : [`${name} ${version}\n\n${texts.join("\n\n")}`];
    })
    .join(`\n\n${"-".repeat(80)}\n\n`);

/** What the handbook is made from beside the code, out of the files of the project. */
export const writtenIn = (root: string): Written => {
  const folder = join(root, "taskpane", "handbook", "words");
  const read = (...path: string[]): string => readFileSync(join(root, ...path), "utf8");
  return {
    words: Object.fromEntries(
      readdirSync(folder).map((file) => [file.replace(/\.md$/, ""), readFileSync(join(folder, file), "utf8")]),
    ),
    costs: read("tests", "benchmark", "results.md"),
    changes: read("CHANGELOG.md"),
    notice: read("functions", "network", "NOTICE.md"),
    developers: read("DEVELOPERS.md"),
    readme: read("README.md"),
    packages: shipped(root).map(({ name, version, licence }) => ({ name, version, licence })),
  };
};
