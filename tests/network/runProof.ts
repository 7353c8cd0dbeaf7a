/** npm run proof: the leave-one-out table over every station from 500 m, as the README shows it. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { openNetwork } from "../../functions/network/open";
import type { Station } from "../../functions/network/station";
import { regionOf } from "../../addin/build/stations/rates";
import { isInValley, median, prove, rms, share, type Residual } from "./proof";

const network = openNetwork(readFileSync(join(__dirname, "../../functions/network/stations.json"), "utf8"));
if (!network) throw new Error("functions/network/stations.json is damaged");
const high = network.stations.filter(({ elevation }) => elevation >= 500);
const { residuals, rain, humidity, none } = prove(network, high);

const percent = (part: number): string => `${(100 * part).toFixed(0)} %`;
const line = (what: string, of: (station: Station) => boolean): void => {
  const cells = (["high", "low"] as const).flatMap((kind) => {
    const own: readonly Residual[] = residuals.filter((one) => one.kind === kind && of(one.station));
    return [
      `${rms(own.map(({ off }) => off)).toFixed(2)}, ${median(own.map(({ off }) => Math.abs(off))).toFixed(2)} K, ${percent(share(own.map(({ isInside }) => isInside)))}`,
      rms(own.map(({ nearest }) => nearest)).toFixed(2),
      `${rms(own.map(({ lapse }) => lapse)).toFixed(2)}, ${percent(share(own.map(({ isInLapse }) => isInLapse)))}`,
    ];
  });
  console.log(
    `| ${what} | ${new Set(residuals.map(({ station }) => station).filter(of)).size} | ${cells.join(" | ")} |`,
  );
};

console.log(
  "| stations | number | highs: RMSE, median error, inside | nearest + 6.5 K/km | LAPSEBAND: RMSE, inside | lows | nearest | LAPSEBAND |",
);
console.log("| --- | ---: | --- | --- | --- | --- | --- | --- |");
line("from 500 m", () => true);
line("from 1000 m", ({ elevation }) => elevation >= 1000);
line("from 2000 m", ({ elevation }) => elevation >= 2000);
line("CLIMAT reports, from 500 m", (station) => station.network === "climat");
line("CLIMAT reports, from 1000 m", (station) => station.network === "climat" && station.elevation >= 1000);
for (const region of [...new Set(high.map(regionOf))].sort()) line(region, (station) => regionOf(station) === region);
const valleys = new Set(
  high.filter((station) => station.network === "noaa" && station.elevation >= 1000 && isInValley(network, station)),
);
line("valleys of US mountains, from 1000 m", (station) => valleys.has(station));
const mean = (pairs: readonly (readonly [number, number])[], i: 0 | 1): string =>
  (pairs.reduce((sum, pair) => sum + pair[i], 0) / pairs.length).toFixed(1);
console.log(`\nRain: off by ${mean(rain, 0)} mm a month on average (nearest station ${mean(rain, 1)}).`);
console.log(`Relative humidity: ${mean(humidity, 0)} points (nearest station ${mean(humidity, 1)}).`);
console.log(`${none} stations without an estimate: beyond 80°, or too far from others.`);
