import { existsSync } from "node:fs";

const PLACES = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

/** Where Chromium is on this machine; undefined where it is not, and CHROMIUM does not say. */
export const chromiumHere = (): string | undefined => process.env.CHROMIUM ?? PLACES.find((path) => existsSync(path));
