/**
 * Air pressure of the standard atmosphere in hPa at an elevation in metres, from -5 to 11 km:
 * p = 1013.25·(T/288.15)^5.255876, T = 288.15 - 0.0065·H (ICAO Doc 7488/3). The standard counts geopotential metres;
 * an elevation from a map read as such is 0.03 hPa off at 2000 m and 0.3 hPa at 5000 m.
 */
export const standardPressure = (elevation: number): number =>
  1013.25 * ((288.15 - 0.0065 * elevation) / 288.15) ** 5.255876;

/** The same in a formula. */
export const pressureText = (elevation: string): string => `1013.25*((288.15-0.0065*${elevation})/288.15)^5.255876`;
