import { siteNote } from "../../../functions/climate/siteNote";
import type { Band, Network } from "../../../functions/network/network";
import { creditOf } from "../../../functions/network/networks";
import type { Station } from "../../../functions/network/station";
import { Problem } from "../../../functions/problem";
import { dailyOf } from "../../pictures/year/daily";
import type { DrawnYear, YearLine } from "../../pictures/year/drawnYear";
import type { PlaceYear } from "../../actions/saveYear";
import type { Spot } from "./readPlace";
import { metres } from "./words";

const lineOf = (name: string, bands: readonly Band[]): YearLine => {
  const part = (of: keyof Band) => dailyOf(bands.map((band) => band[of]));
  return { name, least: part("least"), likely: part("likely"), most: part("most") };
};
const exactly = (name: string, figures: readonly number[]): YearLine => {
  const daily = dailyOf(figures);
  return { name, least: daily, likely: daily, most: daily };
};
const HIGHS = "daily highs";
const LOWS = "daily lows";
const counted = (cold: number): Pick<DrawnYear, "cold" | "counted" | "stages" | "system"> => ({
  cold,
  counted: "lows",
  stages: [],
  system: "metric",
});
/** Rain is drawn where all months report it. */
const reported = (rain: readonly number[]): readonly number[] => (rain.some((mm) => Number.isNaN(mm)) ? [] : rain);

/** The estimated year at a place; undefined where none can be estimated. */
export const estimatedYear = (
  network: Network,
  spot: Spot,
  elevation: number,
  cold: number,
  title: string,
): PlaceYear | undefined => {
  const year = network.yearAt(spot.latitude, spot.longitude, elevation);
  const note = siteNote.calculate({ ...spot, elevation, units: undefined, part: undefined }, network);
  if (year instanceof Problem || note instanceof Problem) return undefined;
  return {
    drawn: {
      title,
      subtitle: `${metres(elevation)}, estimated from the stations around`,
      lines: [lineOf(HIGHS, year.high), lineOf(LOWS, year.low)],
      rain: reported(year.rain),
      ...counted(cold),
    },
    // The note ends with the credit of its records.
    told: { from: [String(note)], credit: "", caution: "estimatedSite" },
  };
};

/** The year of a station as its service published it. */
export const stationYear = (
  { high, low, rain, elevation, network }: Station,
  name: string,
  cold: number,
): PlaceYear => ({
  drawn: {
    title: name,
    subtitle: `${metres(elevation)}, as it stands`,
    lines: [exactly(HIGHS, high), exactly(LOWS, low)],
    rain: reported(rain),
    ...counted(cold),
  },
  told: { from: [], credit: creditOf(network), caution: "stationNetwork" },
});
