import { readFileSync } from "node:fs";
import { join } from "node:path";
import "../addin/carried";
import { supplies } from "../addin/boundary/supplies";
import type { Network } from "../functions/network/network";
import { openNetwork } from "../functions/network/open";

let opened: Network | undefined;

/** The network as it ships, read once a test file. */
export const networkAsShipped = (): Network => {
  opened ??= openNetwork(readFileSync(join(__dirname, "../functions/network/stations.json"), "utf8"));
  if (!opened) throw new Error("functions/network/stations.json is damaged");
  return opened;
};

/** Functions that need the network find it; hosts that have to fetch it first are tested for themselves. */
supplies.network = networkAsShipped;
