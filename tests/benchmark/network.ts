import { readFileSync } from "node:fs";
import { evaluate } from "../../addin/boundary/evaluate";
import { supplies } from "../../addin/boundary/supplies";
import { siteClimate } from "../../functions/climate/siteClimate";
import { openNetwork } from "../../functions/network/open";
import { agree, kept, race, type Table } from "./race";

const MEGABYTE = 1024 * 1024;
const SITES = 1000;
const text = readFileSync("functions/network/stations.json", "utf8");

const open = () => {
  const network = openNetwork(text);
  if (!network) throw new Error("functions/network/stations.json is damaged");
  return network;
};

/** Places on land from the Alps to the Altai, none twice. */
const sites = Array.from(
  { length: SITES },
  (_, i) => [35 + (i % 25), 5 + Math.floor(i / 25) * 2, 300 + (i % 7) * 250] as const,
);

export const tables = async (): Promise<Table[]> => {
  globalThis.gc?.();
  const before = process.memoryUsage().heapUsed;
  const network = open();
  globalThis.gc?.();
  const after = process.memoryUsage().heapUsed;
  supplies.network = () => network;

  const { stations } = network;
  /** What no answer can do without: a look at every station, for its distance. */
  const loop = (): number => {
    let nearest = Infinity;
    for (const [latitude, longitude] of sites) {
      for (const station of stations) {
        const apart =
          (station.latitude - latitude) ** 2 +
          ((station.longitude - longitude) * Math.cos((latitude * Math.PI) / 180)) ** 2;
        if (apart < nearest) nearest = apart;
      }
    }
    return nearest;
  };
  const all = (): unknown => {
    for (const site of sites) kept.push(evaluate(siteClimate, [...site]).cells);
    return kept.length;
  };
  const likely = evaluate(siteClimate, [46.5, 9.8, 1800]).cells[6]?.[1];
  agree("SITECLIMATE", likely as number, 16.9, 1);

  const reading = await race(
    [
      { what: "JSON.parse of the file alone", run: () => JSON.parse(text) as unknown },
      { what: "the network opened", run: open, against: "JSON.parse of the file alone", allowed: 12 },
    ],
    9,
    3,
  );
  const estimating = await race(
    [
      { what: "bare loop over the stations, 1 000 sites", run: loop },
      { what: "SITECLIMATE, 1 000 sites", run: all, against: "bare loop over the stations, 1 000 sites", allowed: 60 },
    ],
    5,
    2,
  );
  const each = (estimating[1]?.milliseconds ?? NaN) / SITES;
  return [
    {
      title: `The station network, ${stations.length} stations`,
      lines: [
        ...reading.map((line, i) =>
          i === 1
            ? {
                ...line,
                note: `${((after - before) / MEGABYTE).toFixed(0)} MB of memory`,
                told: { read: line.milliseconds as number },
              }
            : line,
        ),
        ...estimating.map((line, i) =>
          i === 1 ? { ...line, note: `${each.toFixed(2)} ms a site`, told: { estimate: each } } : line,
        ),
      ],
    },
  ];
};
