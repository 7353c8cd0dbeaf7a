import { stations } from "../../../functions/climate/stations";
import type { Network } from "../../../functions/network/network";
import type { Station } from "../../../functions/network/station";
import { Problem } from "../../../functions/problem";
import type { Belt, Spot } from "./readPlace";

/** A line of VIV.STATIONS, with the station that it speaks of. */
export interface Speaking {
  readonly station: Station;
  readonly name: string;
  readonly gap: number;
  readonly km: number;
  readonly verdict: string;
  /** Whose figures they are, and of which years. */
  readonly figures: string;
}

type Line = readonly [
  name: string,
  id: string,
  elevation: number,
  gap: number,
  km: number,
  years: number | "",
  verdict: string,
  figures: string,
];

/** The stations that could speak for a place, best first: what VIV.STATIONS answers. */
export const speakingFor = (network: Network, spot: Spot, belt: Belt, count: number): readonly Speaking[] | Problem => {
  const rows = stations.calculate(
    { ...spot, bandLow: belt.low, bandHigh: belt.high, count, network: undefined, units: undefined },
    network,
  );
  if (rows instanceof Problem) return rows;
  return (rows as readonly Line[]).flatMap(([name, id, , gap, km, , verdict, figures]) => {
    const station = network.find(id);
    return station instanceof Problem ? [] : { station, name, gap, km, verdict, figures };
  });
};
