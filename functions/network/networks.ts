/** A network of stations: whose figures they are, of which years, and how they are brought to the years of the others. */
export interface NetworkOfStations {
  readonly title: string;
  /** First and last year of the records. */
  readonly years: readonly [number, number];
  /** What stands wherever its figures are shown. */
  readonly credit: string;
  /**
   * K added to its highs and lows to stand beside 2003-2021. The climate warmed between the periods: so much do stations of
   * both networks differ that stand within 10 km and 50 m of one another. `npm run stations` shows the figures.
   */
  readonly warming: { readonly high: number; readonly low: number };
}

/** In the order in which they are preferred where two hold one station. */
export const networks = {
  climat: {
    title: "CLIMAT reports",
    years: [2003, 2021],
    credit: "Datenbasis: Deutscher Wetterdienst, Einzelwerte gemittelt (CC BY 4.0)",
    warming: { high: 0, low: 0 },
  },
  noaa: {
    title: "NOAA normals",
    years: [1981, 2010],
    credit: "NOAA, 1981-2010 normals (US Government work)",
    warming: { high: 0.6, low: 0.6 },
  },
  jma: {
    title: "JMA normals",
    years: [1991, 2020],
    credit: "Japan Meteorological Agency website, edited",
    warming: { high: 0.2, low: 0.2 },
  },
  cwa: {
    title: "CWA normals",
    years: [1991, 2020],
    credit: "Central Weather Administration, Taiwan (Open Government Data License)",
    warming: { high: 0.2, low: 0.2 },
  },
} as const satisfies Record<string, NetworkOfStations>;

export type NetworkKey = keyof typeof networks;
export const networkKeys = Object.keys(networks) as readonly NetworkKey[];

/** What stands wherever figures of a network are shown: whose they are, on which terms, and of which years. */
export const creditOf = (key: NetworkKey): string => `${networks[key].credit}, ${networks[key].years.join("-")}`;
