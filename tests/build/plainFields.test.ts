import { readFileSync } from "node:fs";
import { join } from "node:path";

const root = join(__dirname, "../..");
const plainFields = jest.requireActual<(source: string) => string>("../../addin/build/plainFields.cjs");
const set = /_defineProperty\(this, /g;
const many = (source: string, what: RegExp): number => source.match(what)?.length ?? 0;

test.each(["es", "cjs"])("of the fields that the engine sets by name nearly all are assigned (%s)", (form) => {
  const source = readFileSync(join(root, "node_modules/@univerjs/engine-formula/lib", form, "index.js"), "utf8");
  expect(many(source, set)).toBeGreaterThan(1000);
  expect(many(plainFields(source), set)).toBeLessThan(20);
  // Nothing else changes: each line is as it was but for that.
  const [before, after] = [source, plainFields(source)].map((text) => text.split("\n"));
  const changed = before?.filter((line, i) => line !== after?.[i]) ?? [];
  expect(after).toHaveLength(before?.length ?? 0);
  expect(changed.filter((line) => !/^\s*_defineProperty\(this, /.test(line))).toEqual([]);
});

test("a field that no line of its own sets keeps the helper", () => {
  const source =
    '\t_defineProperty(this, "a", f(1, "x)"));\n\tif (b) _defineProperty(this, "c", 1);\n\t_defineProperty(this, "d", {\n\t});';
  expect(plainFields(source)).toBe(
    '\tthis.a = f(1, "x)");\n\tif (b) _defineProperty(this, "c", 1);\n\t_defineProperty(this, "d", {\n\t});',
  );
});
