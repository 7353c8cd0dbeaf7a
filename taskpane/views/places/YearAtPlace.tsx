import { siteNote } from "../../../functions/climate/siteNote";
import type { Network, SiteYear } from "../../../functions/network/network";
import { Problem } from "../../../functions/problem";
import { Message } from "../../components/Message";
import { Cautions, SmallTitle, Title, Words } from "../Parts";
import type { Spot } from "./readPlace";
import type { Speaking } from "./speaking";
import { metres } from "./words";
import { estimated, inWords, MONTHS, reachOf, recorded } from "./year";
import { YearPictures } from "./YearPictures";
import { YearChart } from "./YearChart";

const WIDE = 320;
const NARROW = 170;

/** How many stations are drawn beside the estimate. */
export const BESIDE = 2;

const tenth = (value: number): string => value.toFixed(1).replace("-", "−");
const whole = (value: number): string => (Number.isNaN(value) ? "" : String(Math.round(value)));

const Months = ({ of: { high, low, rain, humidity } }: { readonly of: SiteYear }) => (
  <details>
    <summary>The twelve months in figures</summary>
    <div className="scroll" tabIndex={0} role="region" aria-label="The twelve months in figures">
      <table>
        <thead>
          <tr>
            <th scope="col">Month</th>
            <th scope="col">High, °C: least, likely, most</th>
            <th scope="col">Low, °C: least, likely, most</th>
            <th scope="col">Rain, mm</th>
            <th scope="col">Humidity, %</th>
          </tr>
        </thead>
        <tbody>
          {MONTHS.map((month, i) => (
            <tr key={month}>
              <th scope="row">{month}</th>
              {[high[i], low[i]].map((band, kind) => (
                <td key={kind}>{band && [band.least, band.likely, band.most].map(tenth).join(", ")}</td>
              ))}
              <td>{whole(rain[i] ?? NaN)}</td>
              <td>{whole(humidity[i] ?? NaN)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  </details>
);

interface YearAtPlaceProps {
  readonly network: Network;
  readonly spot: Spot;
  readonly elevation: number;
  readonly stations: readonly Speaking[];
}

/** The estimated year, what it rests on, and real stations beside it. */
export const YearAtPlace = ({ network, spot, elevation, stations }: YearAtPlaceProps) => {
  const year = network.yearAt(spot.latitude, spot.longitude, elevation);
  const beside = stations.slice(0, BESIDE);
  const years = [
    ...(year instanceof Problem ? [] : [estimated(year)]),
    ...beside.map(({ station }) => recorded(station)),
  ];
  const reach = reachOf(years);
  const note = siteNote.calculate({ ...spot, elevation, units: undefined, part: undefined }, network);
  return (
    <section className="part">
      <Title>The year at {metres(elevation)}</Title>
      {year instanceof Problem ? (
        <Message intent="warning">No estimate: {year.message}.</Message>
      ) : (
        <>
          <p className="yearKey">
            <span className="high">daily highs</span>
            <span className="low">daily lows</span>
            <span className="quiet">shaded: where nine months in ten lie</span>
          </p>
          <YearChart of={estimated(year)} reach={reach} width={WIDE} />
          <Words>{inWords(estimated(year))}</Words>
          <Months of={year} />
          <YearPictures network={network} spot={spot} elevation={elevation} stations={beside} />
          <SmallTitle>How sure it is</SmallTitle>
          <Words>{note instanceof Problem ? note.message : note}</Words>
          <Cautions of={siteNote.cautions} />
        </>
      )}
      {beside.length > 0 && (
        <>
          <SmallTitle>Real stations, as they stand</SmallTitle>
          <div className="stationYears">
            {beside.map(({ station, name, verdict, figures }) => (
              <div key={station.id}>
                <p>
                  <strong>{name}</strong>, {metres(station.elevation)}. {verdict}.
                </p>
                <YearChart of={recorded(station)} reach={reach} width={NARROW} />
                <Words quiet>{figures}, not corrected for elevation</Words>
              </div>
            ))}
          </div>
        </>
      )}
    </section>
  );
};
