import { relativeHumidity } from "../air/shared/vapour";
import { notAvailable } from "../problem";
import { readStations } from "./file";
import { finder } from "./find";
import { predict, type Model, type Neighbour, type Prediction } from "./kriging";
import { models } from "./models";
import type { Band, Nearby, Network } from "./network";
import { networks } from "./networks";
import type { Station } from "./station";

/** How many neighbours speak for a place, at least and at most, and from how far, km. */
const LEAST_NEIGHBOURS = 3;
const MOST_NEIGHBOURS = 24;
const FARTHEST = 1000;
/** A kilometre of elevation counts as so many kilometres of distance where neighbours are chosen. */
const KM_PER_KM_OF_ELEVATION = 150;
/** Farther than this from its nearest station, km, a place lies in mid-ocean, or in a desert of which nothing is known. */
const NEAREST = 500;
/** ° */
const POLAR = 80;
/** m beyond the highest or lowest of its neighbours. */
const OUT_OF_REACH = 2000;

const MONTHS = Array.from({ length: 12 }, (_, month) => month);
const POLEWARD_FROM = 25;
const RADIANS = Math.PI / 180;
const EARTH = 6371.0088;

const poleward = (latitude: number): number => Math.max(0, Math.abs(latitude) - POLEWARD_FROM);
const eastward = (degrees: number): number => ((degrees + 540) % 360) - 180;
const named = ({ name, elevation }: Station): string => `${name}, ${Math.round(elevation)} m`;

/** A place that moves on the unit sphere: distances between many pairs are quicker along chords. */
const onSphere = (latitude: number, longitude: number): readonly [number, number, number] => {
  const cosine = Math.cos(latitude * RADIANS);
  return [cosine * Math.cos(longitude * RADIANS), cosine * Math.sin(longitude * RADIANS), Math.sin(latitude * RADIANS)];
};

/** The network of a file; undefined where it is damaged. */
export const openNetwork = (text: string): Network | undefined => {
  const stations = readStations(text);
  return stations && networkOf(stations);
};

/** km from the length of a chord on the unit sphere. */
const kmOfChord = (squared: number): number => 2 * EARTH * Math.asin(Math.min(1, Math.sqrt(squared) / 2));
/** Its square. Half the round is any length: rounded, the chord to the other side may be longer than the sphere is wide. */
const chordOfKm = (km: number): number => (km < Math.PI * EARTH ? 4 * Math.sin(km / (2 * EARTH)) ** 2 : Infinity);

export const networkOf = (stations: readonly Station[]): Network => {
  const spots = new Float64Array(stations.length * 3);
  const index = new Map<Station, number>();
  stations.forEach((station, i) => {
    spots.set(onSphere(station.latitude, station.longitude), i * 3);
    index.set(station, i);
  });

  const chord = (x: number, y: number, z: number, i: number): number =>
    (x - (spots[3 * i] as number)) ** 2 +
    (y - (spots[3 * i + 1] as number)) ** 2 +
    (z - (spots[3 * i + 2] as number)) ** 2;
  const kmBetween = (i: number, j: number): number =>
    kmOfChord(chord(spots[3 * i] as number, spots[3 * i + 1] as number, spots[3 * i + 2] as number, j));

  const around: Network["around"] = (latitude, longitude, km, of) => {
    const [x, y, z] = onSphere(latitude, longitude);
    const most = chordOfKm(km);
    const found: Nearby[] = [];
    for (let i = 0; i < stations.length; i++) {
      const station = stations[i] as Station;
      const squared = chord(x, y, z, i);
      if (squared <= most && (of === undefined || station.network === of)) {
        found.push({ station, km: kmOfChord(squared) });
      }
    }
    return found.sort((one, other) => one.km - other.km);
  };

  const yearAt: Network["yearAt"] = (latitude, longitude, elevation, without) => {
    if (Math.abs(latitude) > POLAR) return notAvailable(`nothing is estimated beyond ${POLAR}° north or south`);
    const within = around(latitude, longitude, FARTHEST);
    const near = without ? within.filter((nearby) => !without(nearby)) : within;
    const [nearest] = near;
    if (!nearest || near.length < LEAST_NEIGHBOURS || nearest.km > NEAREST) {
      const [any] = nearest ? near : around(latitude, longitude, EARTH * Math.PI);
      return notAvailable(
        `too few stations near this place${any ? `: the nearest, ${named(any.station)}, is ${Math.round(any.km)} km away` : ""}`,
      );
    }
    const best = (having: (station: Station) => boolean): Nearby[] =>
      near
        .filter(({ station }) => having(station))
        .map((nearby) => ({
          nearby,
          far: Math.hypot(nearby.km, (KM_PER_KM_OF_ELEVATION * (nearby.station.elevation - elevation)) / 1000),
        }))
        .sort((one, other) => one.far - other.far)
        .slice(0, MOST_NEIGHBOURS)
        .map(({ nearby }) => nearby)
        .sort((one, other) => one.km - other.km);

    const chosen = best(() => true);
    const elevations = chosen.map(({ station }) => station.elevation);
    const [lowest, highest] = [Math.min(...elevations), Math.max(...elevations)];
    if (elevation > highest + OUT_OF_REACH || elevation < lowest - OUT_OF_REACH) {
      return notAvailable(
        `${Math.round(elevation)} m is more than ${OUT_OF_REACH} m ${elevation > highest ? "above the highest" : "below the lowest"} of the stations around, ${Math.round(elevation > highest ? highest : lowest)} m: nothing is estimated so far off`,
      );
    }

    const solve = (
      model: Model,
      from: readonly Nearby[],
      value: (station: Station, month: number) => number,
    ): Prediction[] => {
      const indices = from.map(({ station }) => index.get(station) as number);
      return predict(
        model,
        from.map(({ station, km }): Neighbour => ({
          km,
          higher: (station.elevation - elevation) / 1000,
          poleward: poleward(station.latitude) - poleward(latitude),
          eastward: eastward(station.longitude - longitude),
        })),
        latitude < 0,
        (i, j) => kmBetween(indices[i] as number, indices[j] as number),
        (i, month) => value((from[i] as Nearby).station, month),
      );
    };
    const band = ({ likely, half }: Prediction): Band => ({ least: likely - half, likely, most: likely + half });
    const temperatures = (kind: "high" | "low"): Band[] =>
      solve(
        models[kind],
        chosen,
        (station, month) => (station[kind][month] as number) + networks[station.network].warming[kind],
      ).map(band);
    const sparse = (
      kind: "rain" | "vapour",
      into: (value: number) => number,
      back: (value: number) => number,
    ): readonly number[] => {
      const from = best((station) => !Number.isNaN(station[kind][0]));
      return from.length < LEAST_NEIGHBOURS
        ? MONTHS.map(() => NaN)
        : solve(models[kind], from, (station, month) => into(station[kind][month] as number)).map(({ likely }) =>
            back(likely),
          );
    };

    const high = temperatures("high");
    const low = temperatures("low");
    const rain = sparse("rain", Math.sqrt, (root) => Math.max(0, root) ** 2);
    const vapour = sparse("vapour", (value) => Math.log(Math.max(value, 0.05)), Math.exp);
    const humidity = MONTHS.map((month) => {
      const middle = ((high[month] as Band).likely + (low[month] as Band).likely) / 2;
      return relativeHumidity(vapour[month] as number, middle);
    });
    return { high, low, rain, humidity, stations: chosen };
  };

  return { stations, find: finder(stations), around, yearAt };
};
