import { networkKeys, type NetworkKey } from "./networks";
import type { Station } from "./station";

/**
 * The file of the network: JSON, a line a station, so that a renewed file shows what changed. Figures are whole numbers
 * (tenths of °C and hPa, hundredths of a degree), because they zip to half. The first month of a series stands as it is,
 * the others as the step from the month before; a series with a month missing is null throughout.
 */
export const FORMAT = "vivarium-almanac-stations-1";

/** By what a figure is multiplied to be whole, and between what it lies anywhere on earth: beyond, the file is damaged. */
const SERIES = [
  ["high", 10, [-90, 60]],
  ["low", 10, [-90, 60]],
  ["vapour", 10, [0, 100]],
  ["rain", 1, [0, 12_500]],
  ["rainDays", 1, [0, 31]],
] as const satisfies readonly (readonly [keyof Station, number, readonly [number, number]])[];
const PLACE = 100;

type Line = readonly [
  network: number,
  id: string,
  name: string,
  country: number,
  latitude: number,
  longitude: number,
  elevation: number,
  years: number | null,
  ...series: (readonly number[] | null)[],
];

const packed = (values: ArrayLike<number>, scale: number): readonly number[] | null => {
  const whole = Array.from(values, (value) => Math.round(value * scale));
  return whole.some(Number.isNaN) ? null : whole.map((value, i) => value - (i === 0 ? 0 : (whole[i - 1] as number)));
};

const MISSING: readonly number[] = new Array<number>(12).fill(NaN);

const unpacked = (steps: readonly number[] | null, scale: number): readonly number[] => {
  if (steps === null) return MISSING;
  let sum = 0;
  return steps.map((step) => (sum += step) / scale);
};

export const writeStations = (stations: readonly Station[], made: string): string => {
  const countries = [...new Set(stations.map(({ country }) => country))].sort();
  const lines = stations.map((station): Line => [
    networkKeys.indexOf(station.network),
    station.id,
    station.name,
    countries.indexOf(station.country),
    Math.round(station.latitude * PLACE),
    Math.round(station.longitude * PLACE),
    Math.round(station.elevation),
    Number.isNaN(station.years) ? null : station.years,
    ...SERIES.map(([key, scale]) => packed(station[key], scale)),
  ]);
  return `${JSON.stringify({ format: FORMAT, made, networks: networkKeys, countries }).slice(0, -1)},"stations":[\n${lines.map((line) => JSON.stringify(line)).join(",\n")}\n]}\n`;
};

const isNumbers = (value: unknown, length: number): value is readonly number[] =>
  Array.isArray(value) && value.length === length && value.every((one) => typeof one === "number");

const isWithin = (value: unknown, [least, most]: readonly [number, number]): boolean =>
  typeof value === "number" && value >= least && value <= most;

/** m, somewhat beyond the lowest and the highest place on land. */
const LAND = [-500, 9000] as const;
const YEARS = [0, 300] as const;

/** The stations of a file; undefined where it is damaged, or of another format. */
export const readStations = (text: string): readonly Station[] | undefined => {
  let file: unknown;
  try {
    file = JSON.parse(text);
  } catch {
    // Cut short or no JSON at all: damaged, which is what undefined says.
    return undefined;
  }
  const { format, networks, countries, stations } = (file ?? {}) as Record<string, unknown>;
  if (format !== FORMAT || !Array.isArray(networks) || !Array.isArray(countries) || !Array.isArray(stations)) {
    return undefined;
  }
  const keys = networks.map((name) => networkKeys.find((key) => key === name));
  const read: Station[] = [];
  for (const line of stations as readonly Line[]) {
    if (!Array.isArray(line) || line.length !== 8 + SERIES.length) return undefined;
    const [network, id, name, country, latitude, longitude, elevation, years] = line as Line;
    const isWhole =
      Number.isInteger(network) &&
      keys[network] !== undefined &&
      typeof id === "string" &&
      typeof name === "string" &&
      typeof countries[country] === "string" &&
      isWithin(latitude, [-90 * PLACE, 90 * PLACE]) &&
      isWithin(longitude, [-180 * PLACE, 180 * PLACE]) &&
      isWithin(elevation, LAND) &&
      (years === null || isWithin(years, YEARS)) &&
      SERIES.every(([, scale, ends], i) => {
        const steps: unknown = line[8 + i];
        if (steps === null) return i > 1; // a station without temperatures is none
        return isNumbers(steps, 12) && unpacked(steps, scale).every((value) => isWithin(value, ends));
      });
    if (!isWhole) return undefined;
    const series = (i: 0 | 1 | 2 | 3 | 4): readonly number[] =>
      unpacked(line[8 + i] as readonly number[] | null, SERIES[i][1]);
    read.push({
      network: keys[network] as NetworkKey,
      id,
      name,
      country: countries[country] as string,
      latitude: latitude / PLACE,
      longitude: longitude / PLACE,
      elevation,
      years: years ?? NaN,
      high: series(0),
      low: series(1),
      vapour: series(2),
      rain: series(3),
      rainDays: series(4),
    });
  }
  return read;
};
