import { useDeferredValue, useState } from "react";
import type { Network } from "../../functions/network/network";
import { Problem } from "../../functions/problem";
import { Button } from "../components/Button";
import { Input } from "../components/Input";
import { Message } from "../components/Message";
import { Title, Words } from "./Parts";
import { NO_FIELDS, readPlace, type FieldName, type PlaceFields, type PlaceRead } from "./places/readPlace";
import { speakingFor } from "./places/speaking";
import { StationList } from "./places/StationList";
import { useNetwork } from "./places/useNetwork";
import { degrees } from "./places/words";
import { YearAtPlace } from "./places/YearAtPlace";

const LISTED = 6;

/** What was typed stays while the pane is open: who looks at another section comes back to the same place. */
let kept = NO_FIELDS;

const stillNeeded = ({ spot, belt, elevation }: PlaceRead): string =>
  [
    ...(spot ? [] : ["latitude and longitude"]),
    ...(belt ? [] : ["the elevations between which the animal lives"]),
    ...(spot && belt && elevation === undefined ? ["an elevation"] : []),
  ].join(", and ");

const Answer = ({
  network,
  read: { spot, belt, elevation },
}: {
  readonly network: Network;
  readonly read: PlaceRead;
}) => {
  if (!spot || !belt) return null;
  const stations = speakingFor(network, spot, belt, LISTED);
  return (
    <>
      <section className="part">
        <Title>Stations that could speak for it, best first</Title>
        {stations instanceof Problem ? (
          <Message intent="warning">
            None at {degrees(spot)}: {stations.message}.
          </Message>
        ) : (
          <StationList of={stations} spot={spot} belt={belt} />
        )}
      </section>
      {elevation !== undefined && (
        <YearAtPlace
          network={network}
          spot={spot}
          elevation={elevation}
          stations={stations instanceof Problem ? [] : stations}
        />
      )}
    </>
  );
};

export default function Places() {
  const [network, again] = useNetwork();
  const [fields, setFields] = useState<PlaceFields>(kept);
  const change = (name: FieldName) => (value: string) => {
    kept = { ...fields, [name]: value };
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
      onChange={change(name)}
      warning={read.warnings[name]}
      inputMode="text"
      autoComplete="off"
      wide={wide}
    />
  );

  return (
    <>
      <Title>Where does the animal live?</Title>
      <Words>
        Weather stations near the place, best first, and the year where the animal lives, estimated from all of them
        together. Nothing that you type here leaves this computer.
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
        <Answer network={network} read={readPlace(answered)} />
      )}
    </>
  );
}
