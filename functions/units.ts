/** How a unit reads in imperial: `imperial = metric · factor + offset`. A difference and a rate have no offset. */
interface Imperial {
  readonly symbol: string;
  readonly factor: number;
  readonly offset: number;
}

interface UnitEntry {
  readonly symbol: string;
  readonly imperial?: Imperial;
}

const FEET_PER_METRE = 1 / 0.3048; // exact: international foot
const MILES_PER_KILOMETRE = 1 / 1.609344; // exact: international mile
const OUNCES_PER_GRAM = 1 / 28.349523125; // exact: international avoirdupois ounce
const INCHES_PER_MILLIMETRE = 1 / 25.4; // exact: international inch

/** Every unit that a parameter or a result may have. A unit is added here once. */
export const units = {
  none: { symbol: "" },
  text: { symbol: "" },
  "true or false": { symbol: "" },
  date: { symbol: "" },
  "date and time": { symbol: "" },
  celsius: { symbol: "°C", imperial: { symbol: "°F", factor: 1.8, offset: 32 } },
  kelvin: { symbol: "K", imperial: { symbol: "°F", factor: 1.8, offset: 0 } },
  kelvinPerKilometre: {
    symbol: "K/km",
    imperial: { symbol: "°F per 1000 ft", factor: 1.8 / FEET_PER_METRE, offset: 0 },
  },
  metre: { symbol: "m", imperial: { symbol: "ft", factor: FEET_PER_METRE, offset: 0 } },
  kilometre: { symbol: "km", imperial: { symbol: "mi", factor: MILES_PER_KILOMETRE, offset: 0 } },
  millimetre: { symbol: "mm", imperial: { symbol: "in", factor: INCHES_PER_MILLIMETRE, offset: 0 } },
  centimetre: { symbol: "cm", imperial: { symbol: "in", factor: 10 * INCHES_PER_MILLIMETRE, offset: 0 } },
  gram: { symbol: "g", imperial: { symbol: "oz", factor: OUNCES_PER_GRAM, offset: 0 } },
  length: { symbol: "" },
  gramPerPeriod: {
    symbol: "g per period",
    imperial: { symbol: "oz per period", factor: OUNCES_PER_GRAM, offset: 0 },
  },
  litre: { symbol: "l" },
  millilitrePerHour: { symbol: "ml/h" },
  hectopascal: { symbol: "hPa" },
  kilopascal: { symbol: "kPa" },
  gramPerCubicMetre: { symbol: "g/m³" },
  percent: { symbol: "%" },
  percentPerDay: { symbol: "% per day" },
  share: { symbol: "" },
  degree: { symbol: "°" },
  minute: { symbol: "min" },
  hour: { symbol: "h" },
  day: { symbol: "days" },
  degreeDay: { symbol: "K·days", imperial: { symbol: "°F·days", factor: 1.8, offset: 0 } },
  degreeHour: { symbol: "K·h", imperial: { symbol: "°F·h", factor: 1.8, offset: 0 } },
} as const satisfies Record<string, UnitEntry>;

export type Unit = keyof typeof units;

/** The two systems that a function with a `units` argument takes. */
export const systems = ["metric", "imperial"] as const;
export type System = (typeof systems)[number];

const imperialOf = (unit: Unit): Imperial | undefined => (units[unit] as UnitEntry).imperial;

/** Whether a figure of this unit reads otherwise in the other system. */
export const hasSystems = (unit: Unit): boolean => imperialOf(unit) !== undefined;

/** What stands behind a figure of this unit: "°C", "°F per 1000 ft", or nothing. */
export const symbol = (unit: Unit, system: System = "metric"): string =>
  (system === "imperial" ? imperialOf(unit)?.symbol : undefined) ?? units[unit].symbol;

/** A figure as the keeper gave it, in metric. Units without an imperial form pass unchanged. */
export const toMetric = (value: number, unit: Unit, system: System): number => {
  const imperial = system === "imperial" ? imperialOf(unit) : undefined;
  return imperial ? (value - imperial.offset) / imperial.factor : value;
};

/** A metric figure as the keeper reads it. Units without an imperial form pass unchanged. */
export const fromMetric = (value: number, unit: Unit, system: System): number => {
  const imperial = system === "imperial" ? imperialOf(unit) : undefined;
  return imperial ? value * imperial.factor + imperial.offset : value;
};

/** Less than this is the rounding of a conversion. */
const ROUNDING = 1e-9;

/**
 * A limit as the keeper reads it. A converted one is whole from 100 on, has a decimal below, and two digits below 1. It is
 * rounded inwards, a least limit up and a most down: what a message asks for has to be taken.
 */
export const limitIn = (which: "least" | "most", metric: number, unit: Unit, system: System): number => {
  const value = fromMetric(metric, unit, system);
  if (value === metric) return value;
  const size = Math.floor(Math.log10(Math.abs(value) || 1));
  const scale = 10 ** (size > 1 ? 0 : Math.max(1, 1 - size));
  const whole = which === "least" ? Math.ceil(value * scale - ROUNDING) : Math.floor(value * scale + ROUNDING);
  return whole / scale;
};
