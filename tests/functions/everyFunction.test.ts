import { readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { catalogue, topics } from "../../functions/catalogue";
import { cautions } from "../../functions/cautions";
import { sources, type Source } from "../../functions/sources";
import { habits } from "./habits";

const ROOT = join(__dirname, "../..");

const filesUnder = (folder: string): string[] =>
  readdirSync(join(ROOT, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));

/** The file whose name is the function's, whatever its capitals. */
const fileOf = (files: readonly string[], name: string, ending: string): string | undefined =>
  files.find((file) => basename(file).toLowerCase() === `${name}${ending}`.toLowerCase());

const code = filesUnder("functions").filter((file) => !file.includes("shared"));
const tests = filesUnder("tests/functions");
const pane = filesUnder("taskpane")
  .filter((file) => /\.tsx?$/.test(file))
  .map((file) => readFileSync(file, "utf8"))
  .join("\n");

test("no name stands twice", () => {
  const names = catalogue.map(({ name }) => name);
  expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
});

test("every topic has functions", () => {
  for (const { title, functions } of topics) expect([title, functions.length > 0]).toEqual([title, true]);
});

test("no source is unused, and each has its text", () => {
  const used = new Set(catalogue.flatMap((definition) => definition.sources as readonly string[]));
  expect(Object.keys(sources).filter((key) => !used.has(key))).toEqual([]);
  for (const { text } of Object.values<Source>(sources)) expect(text).toMatch(/\S.*\.$/);
});

test("no caution is unused", () => {
  const used = new Set(catalogue.flatMap((definition) => definition.cautions as readonly string[]));
  const isShown = (key: string): boolean => new RegExp(`["'.]${key}\\b`).test(pane);
  expect(Object.keys(cautions).filter((key) => !used.has(key) && !isShown(key))).toEqual([]);
});

describe.each(catalogue.map((definition) => [definition.name, definition] as const))("%s", (name, definition) => {
  const parameters = Object.entries(definition.parameters);

  test("has a name that no cell has", () => {
    expect(name).toMatch(/^[A-Z][A-Z0-9]{2,}$/);
    expect(name).not.toMatch(/^[A-Z]{1,3}\d+$/); // A1, XFD1048576
    expect(name).not.toMatch(/^R\d*C\d*$/); // R1C1
  });

  test("is described shortly", () => {
    expect(definition.summary.length).toBeLessThanOrEqual(128);
    expect(definition.summary).toMatch(/\.$/);
    // A whole log with its limits; beside what every function has which reads a long table.
    expect(parameters.length - (definition.forEach ? 2 : 0)).toBeLessThanOrEqual(13);
    for (const [key, { about }] of parameters) {
      expect([key, about.length > 0 && about.length <= 120]).toEqual([key, true]);
    }
    const optional = parameters.map(([, parameter]) => parameter.optional);
    expect(optional).toEqual([...optional].sort());
  });

  test("is one file, with a test file of its own", () => {
    expect([name, fileOf(code, name, ".ts") !== undefined]).toEqual([name, true]);
    expect([name, fileOf(tests, name, ".test.ts") !== undefined]).toEqual([name, true]);
  });

  test("says where it comes from", () => {
    expect(definition.sources.length).toBeGreaterThan(0);
    for (const key of definition.sources) expect(Object.keys(sources)).toContain(key);
  });

  habits(definition);
});
