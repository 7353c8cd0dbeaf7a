import { readFile } from "node:fs/promises";
import { join } from "node:path";

/** The network's file in a clone of the project. */
export const readNetworkFromDisk = (): Promise<string> =>
  readFile(join(__dirname, "..", "..", "functions", "network", "stations.json"), "utf8");
