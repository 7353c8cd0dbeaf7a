import { Mark } from "../Mark";
import type { Belt, Spot } from "../readPlace";
import { metres } from "../words";
import { groundInWords, type Land } from "./PlaceMap";

interface LegendProps {
  readonly land: Land;
  readonly spot: Spot | undefined;
  readonly belt: Belt | undefined;
}

/** What the map shows, whose figures they are, and what the ground is at the place. */
export const Legend = ({ land, spot, belt }: LegendProps) => (
  <>
    <ul className="legend">
      {belt && (
        <>
          <li>
            <span className="swatch" />
            ground from {metres(belt.low)} to {metres(belt.high)}
          </li>
          {(["below", "inside", "above"] as const).map((kind) => (
            <li key={kind}>
              <Mark of={kind} />
              station {kind === "inside" ? "in the band" : kind}
            </li>
          ))}
        </>
      )}
    </ul>
    {spot && <p>{groundInWords(land, spot, belt)}</p>}
    <p className="quiet small">
      Ground is a mean over 37 km: a peak or a valley does not show, and a cell below the band may reach into it.
      Relief: ETOPO5, NOAA. Coast and borders: Natural Earth. Stations: Deutscher Wetterdienst, NOAA, JMA, CWA.
    </p>
  </>
);
