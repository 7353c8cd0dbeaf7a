import type { Topology } from "topojson-specification";
import type { Shipped } from "../../taskpane/shipped";
import { fetchShipped, network } from "./load";

/** What a page of the add-in fetches from its own address for the pane. */
export const shipped: Shipped = {
  network,
  relief: async () => (await fetchShipped("network/relief.i8")).arrayBuffer(),
  coast: async () => (await (await fetchShipped("network/coast.json")).json()) as Topology,
};
