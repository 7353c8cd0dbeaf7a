import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { keepScripts, listScripts, scriptsOf } from "../../addin/build/lastRelease";

const home = mkdtempSync(join(tmpdir(), "almanac-"));
afterAll(() => rmSync(home, { recursive: true, force: true }));

/** A release with these files, made after another one. */
const release = (name: string, files: Readonly<Record<string, string>>, last?: string): string => {
  const dist = join(home, name);
  for (const [file, content] of Object.entries(files)) {
    mkdirSync(dirname(join(dist, file)), { recursive: true });
    writeFileSync(join(dist, file), content);
  }
  listScripts(dist, Object.keys(files));
  if (last !== undefined) keepScripts(dist, scriptsOf(last));
  return dist;
};

test("what an open workbook asks for after an update is there, of the last release and of none before", () => {
  const first = release("1", { "taskpane.html": "1", "sheets.aaaaaaaa.js": "old", "same.bbbbbbbb.js": "same" });
  const second = release(
    "2",
    {
      "taskpane.html": "2",
      "functions.js": "2",
      "sheets.cccccccc.js": "new",
      "same.bbbbbbbb.js": "same",
      "preview/preview.dddddddd.js": "page",
    },
    first,
  );
  const text = (dist: string, file: string) => readFileSync(join(dist, file), "utf8");
  expect(text(second, "sheets.aaaaaaaa.js")).toBe("old");
  expect(text(second, "taskpane.html")).toBe("2");

  const third = release("3", { "taskpane.html": "3", "functions.js": "3", "sheets.eeeeeeee.js": "newest" }, second);
  for (const file of ["sheets.cccccccc.js", "same.bbbbbbbb.js", "preview/preview.dddddddd.js"])
    expect([file, text(third, file)]).toEqual([file, text(second, file)]);
  expect(existsSync(join(third, "sheets.aaaaaaaa.js"))).toBe(false);
  expect(text(third, "functions.js")).toBe("3");
});

test("a folder that is no release is refused, and no list leads out of it", () => {
  expect(() => scriptsOf(home)).toThrow("holds no scripts.json: give the dist/ of the last release");
  writeFileSync(join(home, "out.ffffffff.js"), "not ours");
  const dist = release("4", { "a.ffffffff.js": "ours" });
  writeFileSync(join(dist, "scripts.json"), JSON.stringify(["../out.ffffffff.js", "a.ffffffff.js"]));
  expect([...scriptsOf(dist).keys()]).toEqual(["a.ffffffff.js"]);
});
