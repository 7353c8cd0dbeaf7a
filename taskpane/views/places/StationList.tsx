import type { Station } from "../../../functions/network/station";
import type { Belt, Spot } from "./readPlace";
import type { Speaking } from "./speaking";
import { direction, metres, standing, standingWords } from "./words";
import { Mark } from "./Mark";

interface StationListProps {
  readonly of: readonly Speaking[];
  readonly spot: Spot;
  readonly belt: Belt;
  /** Marks a station on the map, or none. */
  readonly onLight: (station: Station | undefined) => void;
  /** Moves the map to a station. */
  readonly onShow: (station: Station) => void;
}

/** The stations in words: everything that the map shows of them. */
export const StationList = ({ of, spot, belt, onLight, onShow }: StationListProps) => (
  <ol className="stations">
    {of.map(({ station, name, gap, km, verdict, figures }) => (
      <li key={station.id} onPointerEnter={() => onLight(station)} onPointerLeave={() => onLight(undefined)}>
        <Mark of={standing(station.elevation, belt)} />
        <span>
          <button
            type="button"
            className="stationName"
            title="Show it on the map"
            onFocus={() => onLight(station)}
            onBlur={() => onLight(undefined)}
            onClick={() => onShow(station)}
          >
            {name}
          </button>
          <br />
          {metres(station.elevation)}
          {gap === 0 ? "" : `, ${standingWords(station.elevation, belt)}`}; {Math.round(km)} km{" "}
          {direction(spot, station)}. {verdict}.
          <br />
          <span className="quiet">
            {figures}
            {Number.isNaN(station.years) ? "" : `, at least ${station.years} years`}
          </span>
        </span>
      </li>
    ))}
  </ol>
);
