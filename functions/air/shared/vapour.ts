import { quantity } from "../../define";

/**
 * Water vapour after WMO-No. 8, Annex 4.B, as the manual of a sensor quotes it. Its limits in temperature are from memory. Against IAPWS-IF97 the pressure is
 * up to 0.31 % low between 0 and 40 °C; the pure phase leaves out another 0.4 % of moist air, which cancels in the
 * ratios that humidity is made of.
 */
const P0 = 6.112; // hPa
const SLOPE = 17.62;
const OFFSET = 243.12; // °C
export const MAGNUS_LIMITS = [-45, 60] as const;

/** Saturation vapour pressure over water, hPa, from °C. */
export const saturation = (temperature: number): number =>
  P0 * Math.exp((SLOPE * temperature) / (OFFSET + temperature));

/** The temperature in °C at which a vapour pressure in hPa saturates: the inverse of `saturation`. */
export const saturatedAt = (pressure: number): number => {
  const x = Math.log(pressure / P0);
  return (OFFSET * x) / (SLOPE - x);
};

/** Vapour pressure, hPa, from °C and relative humidity in %. */
export const vapourPressure = (temperature: number, humidity: number): number =>
  (humidity / 100) * saturation(temperature);

/** Relative humidity in %, at most 100, from vapour pressure in hPa and °C. */
export const relativeHumidity = (pressure: number, temperature: number): number =>
  Math.min(100, (100 * pressure) / saturation(temperature));

/** Air, as a thermometer and a hygrometer read it. Below 1 % stands a share that was meant as per cent. */
export const air = {
  temperature: quantity("celsius", "Air temperature", MAGNUS_LIMITS, { plausibility: false }),
  humidity: quantity("percent", "Relative humidity in per cent, 80 and not 0.8", [1, 100], {
    plausibility: false,
    hint: "80 for 80 %, not 0.8",
  }),
} as const;

/** The same in formulas. */
export const saturationText = (temperature: string): string =>
  `(${P0}*EXP(${SLOPE}*${temperature}/(${OFFSET}+${temperature})))`;
export const vapourText = (temperature: string, humidity: string): string =>
  `(${humidity}/100*${saturationText(temperature)})`;
export const saturatedAtText = (pressure: string): string => {
  const x = `LN(${pressure}/${P0})`;
  return `${OFFSET}*${x}/(${SLOPE}-${x})`;
};
