const RADIANS = Math.PI / 180;
/** Serial number of J2000.0, noon of 1 January 2000. */
const J2000 = 36_526.5;
/** Height of the sun's centre when its upper limb is on the horizon: radius 16' and refraction 34'. */
const RISING = -0.833;

/**
 * Declination of the sun in radians at a moment, a serial number in universal time (Meeus, chapter 25, low accuracy:
 * 0.01°). The minute between universal and terrestrial time moves it by less than 0.001° and is left out.
 */
export const declination = (moment: number): number => {
  const t = (moment - J2000) / 36_525; // Julian centuries
  const longitude = 280.46646 + t * (36_000.76983 + t * 0.0003032);
  const anomaly = (357.52911 + t * (35_999.05029 - t * 0.0001537)) * RADIANS;
  const centre =
    (1.914602 - t * (0.004817 + t * 0.000014)) * Math.sin(anomaly) +
    (0.019993 - t * 0.000101) * Math.sin(2 * anomaly) +
    0.000289 * Math.sin(3 * anomaly);
  const node = (125.04 - 1934.136 * t) * RADIANS;
  const apparent = (longitude + centre - 0.00569 - 0.00478 * Math.sin(node)) * RADIANS;
  const obliquity = (23.439291 - t * 0.0130042 + 0.00256 * Math.cos(node)) * RADIANS;
  return Math.asin(Math.sin(obliquity) * Math.sin(apparent));
};

/**
 * Hours from sunrise to sunset on a day, a whole serial number, at a latitude in degrees, with the sun's declination of
 * noon at Greenwich: what it gains until sunset it has lacked at sunrise. The equation of time, at most 17 minutes, moves
 * the answer by seconds.
 */
export const hoursOfDaylight = (latitude: number, day: number): number => {
  const phi = latitude * RADIANS;
  const delta = declination(day + 0.5);
  const cosine = (Math.sin(RISING * RADIANS) - Math.sin(phi) * Math.sin(delta)) / (Math.cos(phi) * Math.cos(delta));
  // Beyond 1 the sun stays below the horizon all day, beyond -1 above it.
  return ((2 / 15) * Math.acos(Math.min(1, Math.max(-1, cosine)))) / RADIANS;
};

/** The sine of the declination on a day at noon, in a formula. */
const sineText = (day: string): string => {
  const t = `((${day}-${J2000 - 0.5})/36525)`;
  const anomaly = `RADIANS(357.52911+${t}*(35999.05029-${t}*0.0001537))`;
  const node = `RADIANS(125.04-1934.136*${t})`;
  const apparent =
    `280.46646+${t}*(36000.76983+${t}*0.0003032)+(1.914602-${t}*(0.004817+${t}*0.000014))*SIN(${anomaly})` +
    `+(0.019993-${t}*0.000101)*SIN(2*${anomaly})+0.000289*SIN(3*${anomaly})-0.00569-0.00478*SIN(${node})`;
  const obliquity = `RADIANS(23.439291-${t}*0.0130042+0.00256*COS(${node}))`;
  return `(SIN(${obliquity})*SIN(RADIANS(${apparent})))`;
};

/** `hoursOfDaylight` in a formula. */
export const daylightText = (latitude: string, day: string): string => {
  const [phi, sine] = [`RADIANS(${latitude})`, sineText(day)];
  const cosine = `(SIN(RADIANS(${RISING}))-SIN(${phi})*${sine})/(COS(${phi})*SQRT(1-${sine}^2))`;
  return `2/15*DEGREES(ACOS(MEDIAN(-1,1,${cosine})))`;
};
