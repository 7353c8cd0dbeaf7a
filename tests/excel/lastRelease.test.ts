import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { chromium } from "playwright-core";
import sirv from "sirv";
import webpack from "webpack";
import { keepScripts, listScripts, scriptsOf, writeRelease } from "../../addin/build/lastRelease";
import { page as pageWith } from "../../addin/build/page";
import { excel } from "../../addin/build/webpack.config";

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

describe("a release that is built as the add-in is, but small", () => {
  const dist = join(home, "built");
  /** The page asks for a further part once it is told to, as the pane does when a section is opened. */
  const build = (words: string, last?: string): Promise<void> =>
    writeRelease(dist, last, async () => {
      const source = join(home, "source");
      mkdirSync(source, { recursive: true });
      writeFileSync(join(source, "part.ts"), `export const words: string = "${words}";`);
      writeFileSync(
        join(source, "functions.ts"),
        'Object.assign(window, { further: async () => (await import("./part")).words });',
      );
      writeFileSync(join(source, "taskpane.ts"), 'document.title = "open";');
      const entry = {
        functions: join(source, "functions.ts"),
        taskpane: { import: join(source, "taskpane.ts"), dependOn: "functions" },
      };
      const stats = await new Promise<webpack.Stats | undefined>((resolve, reject) =>
        webpack({ ...excel(dist, false), entry }, (error, done) => (error ? reject(error) : resolve(done))),
      );
      if (!stats || stats.hasErrors()) throw new Error(stats?.toString("errors-only"));
      const files = [...stats.compilation.entrypoints.values()].flatMap((point) => point.getFiles());
      writeFileSync(join(dist, "taskpane.html"), pageWith("<head></head>", [...new Set(files)]));
    });

  let server: Server | undefined;
  afterAll(() => server?.close());

  test("an Excel that is open during an update still gets the parts of the release with which it was opened", async () => {
    await build("first");
    server = createServer(sirv(dist, { dev: true }));
    await new Promise<void>((done) => server?.listen(0, "127.0.0.1", done));
    const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/taskpane.html`;
    const browser = await chromium.launch({
      executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
      args: ["--no-sandbox"],
    });
    try {
      const opened = async () => {
        const page = await browser.newPage();
        await page.goto(address);
        expect(await page.title()).toBe("open");
        return () => page.evaluate(() => (window as unknown as { further(): Promise<string> }).further());
      };
      const [early, late] = [await opened(), await opened()];
      // As it is uploaded: over the folder of the last one.
      await build("second", dist);
      expect(await early()).toBe("first");
      expect(await (await opened())()).toBe("second");
      // It was the script of the last release that spoke: without those the part is gone.
      for (const file of readdirSync(dist).filter((name) => name.endsWith(".js") && !scriptsOf(dist).has(name)))
        rmSync(join(dist, file));
      await expect(late()).rejects.toThrow(/Loading chunk/);
    } finally {
      await browser.close();
    }
  }, 60_000);
});
