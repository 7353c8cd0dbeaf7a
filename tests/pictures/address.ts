import type { ChildProcessByStdio } from "node:child_process";
import type { Readable } from "node:stream";

/** Where the preview is served, and the place that is shown there: for pictures, and for what a page costs. */

/** The address that a server says once it is there. */
export const addressOf = (server: ChildProcessByStdio<null, Readable, null>): Promise<string> =>
  new Promise((resolve, reject) => {
    server.stdout.on("data", (words: Buffer) => {
      const found = /http:\/\/\S+/.exec(words.toString());
      if (found) resolve(found[0]);
    });
    server.once("exit", () => reject(new Error("the preview ended before it said its address")));
  });

/** An invented place of the Alps: latitude, longitude, and the elevations between which an animal lives. */
export const PLACE = [
  ["Latitude", "46.5"],
  ["Longitude", "9.8"],
  ["Lives from", "1200"],
  ["to, m", "1800"],
] as const;
