import type { System } from "../../functions/units";
import { cleared } from "../sheets/clear";
import { filled } from "../sheets/filled";
import { exampleIn } from "../sheets/shared/quantities";
import { inSystem } from "../sheets/shared/systems";
import { nativeClimate } from "../sheets/nativeClimate";
import { stationShortlist } from "../sheets/stationShortlist";
import { impossible, type Action } from "./action";
import { insertLinked, undrawn } from "./insertLinked";

export interface PlaceChoice {
  readonly latitude: number;
  readonly longitude: number;
  readonly bandLow: number;
  readonly bandHigh: number;
  readonly elevation: number;
  /** The place for a sentence. */
  readonly words: string;
  /** Names or numbers of the stations to stand beside the estimate, best first. */
  readonly stations: readonly string[];
  /** The units of the sheets; elevations are given in m whatever they are. */
  readonly system?: System;
}

/** Both sheets without their example, for a place; what is inserted first is shown. */
export const sheetsFor = ({ latitude, longitude, stations, system = "metric", ...metres }: PlaceChoice) => {
  const [first = null, second = null] = stations;
  const [bandLow, bandHigh, elevation] = [metres.bandLow, metres.bandHigh, metres.elevation].map((value) =>
    exampleIn(value, "metre", system),
  ) as [number, number, number];
  return [
    filled(cleared(inSystem(nativeClimate, system)), {
      "place.latitude": latitude,
      "place.longitude": longitude,
      "place.bandLow": bandLow,
      "place.bandHigh": bandHigh,
      "place.elevation": elevation,
      "stations.name[1]": first,
      "stations.name[2]": second,
    }),
    filled(cleared(inSystem(stationShortlist, system)), {
      "home.latitude": latitude,
      "home.longitude": longitude,
      "home.bandLow": bandLow,
      "home.bandHigh": bandHigh,
    }),
  ];
};

const NAMES = `"${nativeClimate.name}" and "${stationShortlist.name}"`;

export const insertPlace: Action<PlaceChoice | undefined> = {
  key: "insert-place",
  label: "Insert both sheets",
  about: `Adds ${NAMES} after your last sheet, worked out for this place. Nothing else changes.`,
  describe(_, choice) {
    return choice
      ? { text: `Adds ${NAMES} for ${choice.words}. Nothing else changes.`, possible: true, ask: false }
      : impossible("Say first where the animal lives. Nothing was changed.");
  },
  async run(workbook, choice, options) {
    if (!choice) throw new Error("a place is wanted");
    const { names, linked, left } = await insertLinked(workbook, sheetsFor(choice), options);
    const [climate = "", shortlist = ""] = names;
    const follows = linked.some(({ tab }) => tab.name === climate)
      ? ` Change the place on "${shortlist}": "${climate}" follows, but for its elevation.`
      : "";
    return {
      text: `"${climate}" and "${shortlist}" are in the workbook, for ${choice.words}.${follows}${undrawn(workbook, left)}`,
      left,
    };
  },
};
