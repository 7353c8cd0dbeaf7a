import { spawn } from "node:child_process";
import { createServer, type AddressInfo } from "node:net";
import { join } from "node:path";
import { chromium, type Browser } from "playwright-core";
import { addressOf } from "./address";

export const root = join(__dirname, "..", "..");

const freePort = (): Promise<number> =>
  new Promise((resolve) => {
    const probe = createServer().listen(0, "127.0.0.1", () => {
      const { port } = probe.address() as AddressInfo;
      probe.close(() => resolve(port));
    });
  });

/** ms: the grid says that it is ready before its last chart stands. */
export const DRAWN = 1500;

/** The preview served from the source and a browser, while `use` takes its pictures. */
export const served = async (use: (browser: Browser, address: string) => Promise<void>): Promise<void> => {
  const server = spawn(process.execPath, ["--import", "tsx", "addin/build/dev.ts"], {
    cwd: root,
    env: { ...process.env, PORT: String(await freePort()) },
    stdio: ["ignore", "pipe", "inherit"],
  });
  try {
    const address = await addressOf(server);
    const browser = await chromium.launch({
      executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
      args: ["--no-sandbox"],
    });
    await use(browser, address);
    await browser.close();
  } finally {
    server.kill();
  }
};
