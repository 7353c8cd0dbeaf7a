import { site } from "../../../functions/climate/shared/place";

/** What the keeper has typed, as it stands in the fields. */
export interface PlaceFields {
  readonly latitude: string;
  readonly longitude: string;
  readonly bandLow: string;
  readonly bandHigh: string;
  /** Blank: the middle of the band. */
  readonly elevation: string;
}
export type FieldName = keyof PlaceFields;

export const NO_FIELDS: PlaceFields = { latitude: "", longitude: "", bandLow: "", bandHigh: "", elevation: "" };

export interface Spot {
  readonly latitude: number;
  readonly longitude: number;
}

/** The elevations between which the animal lives, m. */
export interface Belt {
  readonly low: number;
  readonly high: number;
}

export interface PlaceRead {
  /** Each is there as soon as its own fields are. */
  readonly spot?: Spot;
  readonly belt?: Belt;
  readonly elevation?: number;
  /** What is wrong with a field, in words; a blank one is not wrong. */
  readonly warnings: Readonly<Partial<Record<FieldName, string>>>;
}

type Read = { readonly value: number } | { readonly warning: string } | undefined;

const AXES = {
  latitude: { name: "Latitude", most: 90, plus: "N", minus: "S", behind: "south", example: "-12.5 or 12.5 S" },
  longitude: { name: "Longitude", most: 180, plus: "E", minus: "W", behind: "west", example: "-70.25 or 70.25 W" },
} as const;

const DEGREES = /^([-+−]?)(\d+(?:[.,]\d+)?)\s*°?\s*([NSEW]?)$/i;

/** A comma in degrees can only be a decimal mark; a letter stands in place of a sign, never beside it. */
const readDegrees = (text: string, axis: "latitude" | "longitude"): Read => {
  const written = text.trim();
  if (written === "") return undefined;
  const { name, most, plus, minus, behind, example } = AXES[axis];
  const holds = `${name} holds "${written}"`;
  const [, sign = "", figure, side = ""] = DEGREES.exec(written) ?? [];
  const letter = side.toUpperCase();
  if (figure === undefined || (sign !== "" && letter !== "")) {
    return { warning: `${holds}: write degrees and their decimals, ${behind} as ${example}. A minute is 1/60.` };
  }
  if (letter !== "" && letter !== plus && letter !== minus) {
    return { warning: `${holds}: ${letter} belongs to the ${axis === "latitude" ? "longitude" : "latitude"}.` };
  }
  const size = Number(figure.replace(",", "."));
  if (size > most) return { warning: `${holds}: it lies between -${most} and ${most}.` };
  return { value: sign === "-" || sign === "−" || letter === minus ? -size : size };
};

const METRES = /^([-+−]?)(\d+(?:[.,]\d+)?)\s*m?$/i;
const THOUSANDS = /^(\d{1,3})[.,](\d{3})\s*m?$/i;

const readMetres = (text: string, name: string): Read => {
  const written = text.trim();
  if (written === "") return undefined;
  const holds = `${name} holds "${written}"`;
  const thousands = THOUSANDS.exec(written);
  if (thousands) return { warning: `${holds}, which can be read in two ways: write ${thousands[1]}${thousands[2]}.` };
  const [, sign, figure] = METRES.exec(written) ?? [];
  if (figure === undefined) return { warning: `${holds}: write metres, such as 1500.` };
  const value = Number(figure.replace(",", ".")) * (sign === "-" || sign === "−" ? -1 : 1);
  const { least, most } = site.elevation.limits ?? { least: -Infinity, most: Infinity };
  return value < least || value > most ? { warning: `${holds}: it lies between ${least} and ${most} m.` } : { value };
};

const metres = (value: number): string => `${Math.round(value)} m`;

/** What the fields say, and in words what they do not. */
export const readPlace = (fields: PlaceFields): PlaceRead => {
  const read = {
    latitude: readDegrees(fields.latitude, "latitude"),
    longitude: readDegrees(fields.longitude, "longitude"),
    bandLow: readMetres(fields.bandLow, "The band's lower end"),
    bandHigh: readMetres(fields.bandHigh, "The band's upper end"),
    elevation: readMetres(fields.elevation, "Elevation"),
  };
  const warnings: Partial<Record<FieldName, string>> = {};
  const valueOf = (field: FieldName): number | undefined => {
    const answer = read[field];
    if (answer && "warning" in answer) warnings[field] = answer.warning;
    return answer && "value" in answer ? answer.value : undefined;
  };
  const [latitude, longitude] = [valueOf("latitude"), valueOf("longitude")];
  const [low, high] = [valueOf("bandLow"), valueOf("bandHigh")];
  const own = valueOf("elevation");

  if (low !== undefined && high !== undefined && low > high) {
    warnings.bandHigh = `The band ends at ${metres(high)}, below its lower end at ${metres(low)}: exchange the two.`;
  }
  const belt = low !== undefined && high !== undefined && low <= high ? { low, high } : undefined;
  if (own !== undefined && belt && (own < belt.low || own > belt.high)) {
    warnings.elevation = `${metres(own)} lies outside the band. The year below is that of ${metres(own)}.`;
  }
  const elevation = fields.elevation.trim() === "" ? belt && Math.round((belt.low + belt.high) / 2) : own;
  return {
    ...(latitude !== undefined && longitude !== undefined ? { spot: { latitude, longitude } } : {}),
    ...(belt ? { belt } : {}),
    ...(elevation !== undefined ? { elevation } : {}),
    warnings,
  };
};
