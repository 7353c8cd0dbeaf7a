import { text } from "../../define";

/** A station of the network. */
export const stationParameter = text(
  "WMO number (01001, or 1001 where a sheet dropped its zero), or a name of STATIONS",
);
