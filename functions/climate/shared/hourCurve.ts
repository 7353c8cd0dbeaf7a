/** Lags in hours and the decay of the night, as Parton & Logan 1981 fitted them for air at 150 cm. */
export interface HourLags {
  /** From solar noon to the high. */
  readonly high: number;
  /** Decay from sunset to the low, per night. */
  readonly decay: number;
  /** From sunrise to the low. */
  readonly low: number;
}

export const AIR_150_CM: HourLags = { high: 1.86, decay: 2.2, low: -0.17 };

/**
 * Temperature by the hour of solar time (0 is solar midnight, sunrise and sunset lie symmetric about 12), from the high,
 * the low and the day length in hours: a sine by day, a decay by night (Parton & Logan 1981). The night ends at
 * exp(-decay), a ninth of the fall since sunset, above the low: the model has this step at dawn.
 */
export const hourCurve = (
  high: number,
  low: number,
  dayLength: number,
  lags: HourLags = AIR_150_CM,
): ((hour: number) => number) => {
  const peak = 12 + lags.low + lags.high;
  // In less than 3.4 hours of day the high comes after sunset: the night begins with it, or it would never be reached.
  const sunset = Math.max(12 + dayLength / 2, peak);
  const coldest = 12 - dayLength / 2 + lags.low;
  const byDay = (hour: number): number =>
    low + (high - low) * Math.sin((Math.PI * (hour - coldest)) / (dayLength + 2 * lags.high));
  const atSunset = byDay(sunset);
  return (hour) => {
    const time = hour < coldest ? hour + 24 : hour;
    return time <= sunset
      ? byDay(time)
      : low + (atSunset - low) * Math.exp((-lags.decay * (time - sunset)) / (24 - dayLength));
  };
};
