import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { filesIn } from "./sizes";

/** The list of a release's own scripts and style sheets that carry a hash of what is in them; in its folder. */
const LIST = "scripts.json";

/** Named by its content: what is asked for by this name is never another release's. */
const HASHED = /^(preview\/)?[\w-]+(\.[\w-]+)*\.[0-9a-f]{8}\.(js|css)$/;

/** Writes down which files of a build the next one keeps. `files` are all of it, by their paths. */
export const listScripts = (dist: string, files: readonly string[]): void =>
  writeFileSync(join(dist, LIST), JSON.stringify(files.filter((file) => HASHED.test(file)).sort(), null, 1));

/**
 * The scripts of a release, by their paths: a workbook that is open while its host is updated goes on asking for the parts of
 * the release with which it was opened. Those that this one had kept of another before it are not among them.
 */
export const scriptsOf = (folder: string): ReadonlyMap<string, Buffer> => {
  const list = join(folder, LIST);
  if (!existsSync(list)) throw new Error(`${folder} holds no ${LIST}: give the dist/ of the last release`);
  const files = JSON.parse(readFileSync(list, "utf8")) as readonly string[];
  return new Map(files.filter((file) => HASHED.test(file)).map((file) => [file, readFileSync(join(folder, file))]));
};

/** Puts another release's scripts beside those of a build, none of which they replace. */
export const keepScripts = (dist: string, scripts: ReadonlyMap<string, Buffer>): void => {
  for (const [file, content] of scripts) {
    const at = join(dist, file);
    if (existsSync(at)) continue;
    mkdirSync(dirname(at), { recursive: true });
    writeFileSync(at, content);
  }
};

/** Empties a folder and writes a release into it, with the scripts of the last one beside; which may be in that very folder. */
export const writeRelease = async (
  dist: string,
  last: string | undefined,
  write: () => Promise<void>,
): Promise<void> => {
  const scripts = last === undefined ? undefined : scriptsOf(last);
  rmSync(dist, { recursive: true, force: true });
  mkdirSync(dist, { recursive: true });
  await write();
  listScripts(dist, filesIn(dist));
  if (scripts) keepScripts(dist, scripts);
};
