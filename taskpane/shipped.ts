import type { Topology } from "topojson-specification";
import type { Network } from "../functions/network/network";
import type { Problem } from "../functions/problem";

/** What ships beside the code and is fetched from the add-in's own address when it is first wanted. */
export interface Shipped {
  /** The station network, or in words why it cannot be read; the next call tries again. */
  readonly network: () => Promise<Network | Problem>;
  /** What the map is drawn from: relief.i8 and coast.json. Rejects where they cannot be read. */
  readonly relief: () => Promise<ArrayBuffer>;
  readonly coast: () => Promise<Topology>;
}
