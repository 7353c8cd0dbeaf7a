import type { AnyDefinition } from "../../functions/define";
import type { Network } from "../../functions/network/network";
import { notAvailable, type Problem } from "../../functions/problem";
import { supplies } from "../boundary/supplies";

/** Where the network's file lies as seen from a page of the add-in. */
export const NETWORK_ADDRESS = "network/stations.json";

/** From the add-in's own address: no place that a keeper types leaves the machine. */
export const fetchShipped = async (address: string): Promise<Response> => {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`its address answers ${response.status}`);
  return response;
};
const fetchFile = async (): Promise<string> => (await fetchShipped(NETWORK_ADDRESS)).text();

let read: () => Promise<string> = fetchFile;
let isThere = false;
let loading: Promise<void> | undefined;

/** Another way to the file than a page's, as where there is no page. */
export const readNetworkBy = (other: () => Promise<string>): void => {
  read = other;
};

const load = async (): Promise<void> => {
  try {
    const [text, { openNetwork }] = await Promise.all([read(), import("../../functions/network/open")]);
    const network = openNetwork(text);
    if (!network) throw new Error("the file is damaged or of another version");
    supplies.network = () => network;
    isThere = true;
  } catch (error) {
    const words = error instanceof Error ? error.message : String(error);
    const problem = notAvailable(
      `the station network cannot be read: ${words}. Look at the connection and calculate again`,
    );
    supplies.network = () => problem;
  }
};

/** Undefined where the network is there. The file is read once; where that has failed, the next call tries again. */
const untilThere = (): Promise<void> | undefined =>
  isThere
    ? undefined
    : (loading ??= load().finally(() => {
        loading = undefined;
      }));

/**
 * What a definition has to wait for before it can be evaluated; undefined where it need not. If the file cannot be read,
 * those who waited answer why.
 */
export const waitFor = ({ needs }: AnyDefinition): Promise<void> | undefined =>
  needs === undefined ? undefined : untilThere();

/** The network for the pane, or why it cannot be read. */
export const network = async (): Promise<Network | Problem> => {
  await untilThere();
  return supplies.network();
};
