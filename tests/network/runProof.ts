/** npm run proof: leave-one-out over every station from 500 m, as a table, and into the file from which the handbook draws it. */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { formatted } from "../../addin/build/formatted";
import { record } from "../../addin/build/proven";
import type { Left, LeftOut } from "../../functions/network/leaveOneOut";
import { openNetwork } from "../../functions/network/open";
import type { Station } from "../../functions/network/station";
import { regionOf } from "../../addin/build/stations/rates";
import { isInValley, median, prove, rms, share, type Residual } from "./proof";

const network = openNetwork(readFileSync(join(__dirname, "../../functions/network/stations.json"), "utf8"));
if (!network) throw new Error("functions/network/stations.json is damaged");
const high = network.stations.filter(({ elevation }) => elevation >= 500);
const { residuals, rain, humidity, none } = prove(network, high);

const percent = (part: number): string => `${(100 * part).toFixed(0)} %`;
const rounded = (value: number): number => Number(value.toFixed(2));
const lines: LeftOut[] = [];
const line = (what: string, of: (station: Station) => boolean): void => {
  const [highs, lows] = (["high", "low"] as const).map((kind): Left => {
    const own: readonly Residual[] = residuals.filter((one) => one.kind === kind && of(one.station));
    return {
      off: rounded(rms(own.map(({ off }) => off))),
      median: rounded(median(own.map(({ off }) => Math.abs(off)))),
      inside: rounded(share(own.map(({ isInside }) => isInside))),
      nearest: rounded(rms(own.map(({ nearest }) => nearest))),
      lapseBand: rounded(rms(own.map(({ lapse }) => lapse))),
      insideLapseBand: rounded(share(own.map(({ isInLapse }) => isInLapse))),
    };
  }) as [Left, Left];
  const number = new Set(residuals.map(({ station }) => station).filter(of)).size;
  lines.push({ stations: what, number, highs, lows });
  const cells = [highs, lows].flatMap((one) => [
    `${one.off.toFixed(2)}, ${one.median.toFixed(2)} K, ${percent(one.inside)}`,
    one.nearest.toFixed(2),
    `${one.lapseBand.toFixed(2)}, ${percent(one.insideLapseBand)}`,
  ]);
  console.log(`| ${what} | ${number} | ${cells.join(" | ")} |`);
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
const entered = async (): Promise<void> => {
  writeFileSync(join(__dirname, "../../functions/network/leaveOneOut.json"), await formatted(lines));
  await record("proof", { stations: lines[0]?.number ?? 0 });
};
void entered();
