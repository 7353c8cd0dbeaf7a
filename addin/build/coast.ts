import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { mergeArcs, meshArcs, quantize } from "topojson-client";
import { presimplify, simplify } from "topojson-simplify";
import type { GeometryCollection, Topology } from "topojson-specification";

/**
 * Makes the coast and the borders of the map from Natural Earth's countries at 1:50 million: `npm run coast`. Thinned to
 * what can be told apart at 300 km across (triangles below the weight go), and without names, of which a map of stations
 * has no need.
 */
const WEIGHT = 0.001; // square degrees of the triangle that a point spans with its neighbours
const STEPS = 20_000; // of the grid to which coordinates are rounded: 2 km at the equator

/** The one object of the atlas that is wanted. */
type World = Topology<{ readonly countries: GeometryCollection<Record<string, unknown>> }>;

// Eight megabytes that only this script reads: they are installed with the packages of tests/.
const from = createRequire(join(__dirname, "..", "..", "tests", "package.json")).resolve(
  "world-atlas/countries-50m.json",
);
const thinned = simplify(presimplify(JSON.parse(readFileSync(from, "utf8")) as World), WEIGHT);
const { countries } = thinned.objects;
const bare = {
  type: "Topology" as const,
  arcs: thinned.arcs,
  objects: {
    land: mergeArcs(thinned, countries.geometries as Parameters<typeof mergeArcs>[1]),
    borders: meshArcs(thinned, countries, (one, other) => one !== other),
  },
};
writeFileSync(join(__dirname, "..", "..", "functions", "network", "coast.json"), JSON.stringify(quantize(bare, STEPS)));
