import { useDeferredValue, useMemo, useState } from "react";
import type { Network } from "../../functions/network/network";
import type { Station } from "../../functions/network/station";
import { Problem } from "../../functions/problem";
import { insertPlace, type PlaceChoice } from "../actions/insertPlace";
import { Button } from "../components/Button";
import { Input } from "../components/Input";
import { Message } from "../components/Message";
import { Act } from "./Act";
import { Title, Words } from "./Parts";
import { Legend } from "./places/map/Legend";
import { PlaceMap } from "./places/map/PlaceMap";
import { useLand } from "./places/map/useLand";
import { NO_FIELDS, readPlace, type FieldName, type PlaceFields, type PlaceRead, type Spot } from "./places/readPlace";
import { speakingFor, type Speaking } from "./places/speaking";
import { StationList } from "./places/StationList";
import { useUnits } from "./useUnits";
import { useNetwork } from "./places/useNetwork";
import { degrees, metres } from "./places/words";
import { BESIDE, YearAtPlace } from "./places/YearAtPlace";

const LISTED = 6;
const NONE: readonly Speaking[] = [];

/** What was typed stays while the pane is open: who looks at another section comes back to the same place. */
let kept = NO_FIELDS;

const stillNeeded = ({ spot, belt, elevation }: PlaceRead): string =>
  [
    ...(spot ? [] : ["latitude and longitude"]),
    ...(belt ? [] : ["the elevations between which the animal lives"]),
    ...(spot && belt && elevation === undefined ? ["an elevation"] : []),
  ].join(", and ");

/** What goes into the sheets: the stations by their names, or by their numbers where two are called alike. */
const choiceOf = (network: Network, { spot, belt, elevation }: PlaceRead): PlaceChoice | undefined => {
  if (!spot || !belt || elevation === undefined) return undefined;
  const stations = speakingFor(network, spot, belt, BESIDE);
  return {
    ...spot,
    bandLow: belt.low,
    bandHigh: belt.high,
    elevation,
    words: `${degrees(spot)} at ${metres(elevation)}`,
    stations: (stations instanceof Problem ? [] : stations).map(({ station, name }) =>
      network.find(name) === station ? name : station.id,
    ),
  };
};

interface AnswerProps {
  readonly network: Network;
  readonly read: PlaceRead;
  readonly onPick: (spot: Spot) => void;
}

/** The map, the stations and the year, as far as they can be answered. */
const Answer = ({ network, read, onPick }: AnswerProps) => {
  const { spot, belt, elevation } = read;
  const land = useLand();
  const choice = choiceOf(network, read);
  const units = useUnits();
  const [lit, setLit] = useState<Station | undefined>();
  const [shown, setShown] = useState<Station | undefined>();
  const stations = useMemo(
    () => (spot && belt ? speakingFor(network, spot, belt, LISTED) : []),
    [network, spot?.latitude, spot?.longitude, belt?.low, belt?.high],
  );
  const found = stations instanceof Problem ? NONE : stations;
  const bestAt = (at: Spot): Speaking | undefined => {
    const best = belt ? speakingFor(network, at, belt, 1) : [];
    return best instanceof Problem ? undefined : best[0];
  };
  return (
    <>
      {choice && (
        <>
          <Act action={insertPlace} choice={{ ...choice, system: units }} primary />
          <Words quiet>{insertPlace.about}</Words>
        </>
      )}
      {land === undefined && <p className="map quiet">Reading the map …</p>}
      {typeof land === "string" && (
        <Message intent="warning">The map cannot be shown: {land}. All else works without it.</Message>
      )}
      {typeof land === "object" && (
        <>
          <PlaceMap
            network={network}
            land={land}
            best={found}
            bestAt={bestAt}
            spot={spot}
            belt={belt}
            lit={lit}
            shown={shown}
            onPick={onPick}
          />
          <Legend land={land} spot={spot} belt={belt} />
        </>
      )}
      {spot && belt && (
        <section className="part">
          <Title>Stations that could speak for it, best first</Title>
          {stations instanceof Problem ? (
            <Message intent="warning">
              None at {degrees(spot)}: {stations.message}.
            </Message>
          ) : (
            <StationList of={stations} spot={spot} belt={belt} onLight={setLit} onShow={setShown} />
          )}
        </section>
      )}
      {spot && belt && elevation !== undefined && (
        <YearAtPlace network={network} spot={spot} elevation={elevation} stations={found} />
      )}
    </>
  );
};

export default function Places() {
  const [network, again] = useNetwork();
  const [fields, setFields] = useState<PlaceFields>(kept);
  const set = (some: Partial<PlaceFields>): void => {
    kept = { ...fields, ...some };
    setFields(kept);
  };
  const read = readPlace(fields);
  // A year takes some milliseconds: what is typed appears first.
  const answered = useDeferredValue(fields);
  const needed = stillNeeded(read);
  const field = (name: FieldName, label: string, wide = false) => (
    <Input
      label={label}
      value={fields[name]}
      onChange={(value) => set({ [name]: value })}
      warning={read.warnings[name]}
      autoComplete="off"
      wide={wide}
    />
  );

  return (
    <>
      <Title>Where does the animal live?</Title>
      <Words>
        Type a place, or pick it on the map. Below stand the weather stations that could speak for it, best first, and
        the year where the animal lives, estimated from all of them together. Nothing that you type here leaves this
        computer.
      </Words>
      <div className="fields">
        {field("latitude", "Latitude, ° (south −)")}
        {field("longitude", "Longitude, ° (west −)")}
        {field("bandLow", "Lives from, m")}
        {field("bandHigh", "to, m")}
        {field("elevation", "Elevation for the year, m (blank: the middle)", true)}
      </div>
      <div role="status">
        {network === undefined && <p className="quiet">Reading the station network …</p>}
        {network instanceof Problem && <Message intent="error">{network.message}.</Message>}
        {network !== undefined && !(network instanceof Problem) && needed !== "" && (
          <p className="quiet">Still needed: {needed}.</p>
        )}
      </div>
      {network instanceof Problem && <Button onClick={again}>Try again</Button>}
      {network !== undefined && !(network instanceof Problem) && (
        <Answer
          network={network}
          read={readPlace(answered)}
          onPick={({ latitude, longitude }) => set({ latitude: latitude.toFixed(2), longitude: longitude.toFixed(2) })}
        />
      )}
    </>
  );
}
