import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Pictures } from "./html";

/** A picture as it was taken: its size, and what it was taken of, so that a stale one is noticed. */
export interface Taken {
  readonly width: number;
  readonly height: number;
  readonly of: string;
}

export const folderOf = (root: string): string => join(root, "taskpane", "handbook", "pictures");

export const takenIn = (root: string): Readonly<Record<string, Taken>> => {
  const file = join(folderOf(root), "taken.json");
  return existsSync(file) ? (JSON.parse(readFileSync(file, "utf8")) as Record<string, Taken>) : {};
};

/** The pictures of the handbook, out of the folder in which `npm run pictures -- handbook` has put them. */
export const picturesIn = (
  root: string,
): Pick<Pictures, "sizeOf"> & { readonly files: (readonly [string, Uint8Array])[] } => {
  const taken = takenIn(root);
  return {
    sizeOf(name) {
      const found = taken[name.replace(/^pictures\//, "")];
      if (!found) throw new Error(`there is no picture ${name}: run npm run pictures -- handbook`);
      return found;
    },
    files: Object.keys(taken).map((name) => [
      `pictures/${name}.webp`,
      readFileSync(join(folderOf(root), `${name}.webp`)),
    ]),
  };
};
