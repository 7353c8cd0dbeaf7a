import type { Belt, Spot } from "./readPlace";
import type { Speaking } from "./speaking";
import { direction, metres, standing, standingWords } from "./words";
import { Mark } from "./Mark";

interface StationListProps {
  readonly of: readonly Speaking[];
  readonly spot: Spot;
  readonly belt: Belt;
}

/** The stations in words: everything that the map shows of them. */
export const StationList = ({ of, spot, belt }: StationListProps) => (
  <ol className="stations">
    {of.map(({ station, name, gap, km, verdict, figures }) => (
      <li key={station.id}>
        <Mark of={standing(station.elevation, belt)} />
        <span>
          <strong>{name}</strong>
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
