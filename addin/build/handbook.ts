import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { handbookFiles } from "../handbook/make";

/** Writes the handbook into a folder of the built site. */
export const writeHandbook = (root: string, folder: string): void => {
  for (const [name, content] of handbookFiles(root)) {
    const file = join(folder, name);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, content);
  }
};
