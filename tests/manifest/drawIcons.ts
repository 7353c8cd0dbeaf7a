import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { chromium } from "playwright-core";

/** Draws every SVG of manifest/icons/ as PNG in the sizes that the ribbon and the list of add-ins ask for: `npx tsx tests/manifest/drawIcons.ts`. */
const RIBBON = [16, 32, 80];
/** The add-in itself is also shown in the list of add-ins, and there twice as large on a fine screen. */
const sizesOf = (file: string): readonly number[] => (file === "icon.svg" ? [...RIBBON, 64] : RIBBON);
const folder = join(__dirname, "..", "..", "manifest", "icons");

const run = async () => {
  const browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    args: ["--no-sandbox"],
  });
  try {
    const page = await browser.newPage();
    for (const file of readdirSync(folder).filter((name) => name.endsWith(".svg"))) {
      const image = `data:image/svg+xml;base64,${readFileSync(join(folder, file)).toString("base64")}`;
      for (const size of sizesOf(file)) {
        await page.setViewportSize({ width: size, height: size });
        await page.setContent(
          `<body style="margin:0"><img src="${image}" width="${size}" height="${size}" style="display:block">`,
        );
        await page.screenshot({ path: join(folder, file.replace(".svg", `-${size}.png`)), omitBackground: true });
      }
    }
  } finally {
    await browser.close();
  }
};

run().catch((error: unknown) => {
  console.error(error);
  process.exitCode = 1;
});
