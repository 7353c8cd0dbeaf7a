import type { Network } from "../../functions/network/network";
import type { Problem } from "../../functions/problem";
import { supplies } from "../boundary/supplies";
import { fetchBy, untilThere } from "../fetch";

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

/** Another way to the file than a page's, as where there is no page. */
export const readNetworkBy = (other: () => Promise<string>): void => {
  read = other;
};

fetchBy(
  "network",
  async () => {
    const [text, { openNetwork }] = await Promise.all([read(), import("../../functions/network/open")]);
    const network = openNetwork(text);
    if (!network) throw new Error("the file is damaged or of another version");
    return network;
  },
  "the station network cannot be read",
);

/** The network for the pane, or why it cannot be read. */
export const network = async (): Promise<Network | Problem> => {
  await untilThere("network");
  return supplies.network();
};
