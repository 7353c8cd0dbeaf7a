import { join } from "node:path";
import { build } from "esbuild";
import { chromium, type Browser, type Page } from "playwright-core";

/** The browser of this machine: $CHROMIUM, or Debian's. */
const executablePath = process.env.CHROMIUM ?? "/usr/bin/chromium";

/** A page with the drawing code as `pictures`, under a policy that allows no inline style sheet. */
export const openPage = async (): Promise<{ readonly browser: Browser; readonly page: Page }> => {
  const { outputFiles } = await build({
    stdin: {
      contents: `export * from "./taskpane/pictures/draw"; export * from "./taskpane/pictures/save"; export * from "./taskpane/pictures/tones"; export * from "./taskpane/pictures/year/strip"; export * from "./taskpane/pictures/year/ring"; export * from "./taskpane/pictures/page/sheetPage";`,
      resolveDir: join(__dirname, "..", ".."),
      loader: "ts",
    },
    bundle: true,
    write: false,
    format: "iife",
    globalName: "pictures",
  });
  const browser = await chromium.launch({ executablePath, args: ["--no-sandbox"] });
  const page = await browser.newPage({ viewport: { width: 700, height: 420 } });
  await page.setContent(`<!doctype html><html lang="en"><meta http-equiv="Content-Security-Policy"
    content="default-src 'none'; img-src data:; style-src 'none'"><title>Picture</title><body></body></html>`);
  await page.evaluate(outputFiles[0]?.text ?? "");
  return { browser, page };
};
