/**
 * npm run stations -- FOLDER: makes the network's file from the open data. FOLDER holds the CLIMAT reports as the
 * Wetterdienst publishes them, a file a month, with the list of stations; normals of other networks (see normals.ts) are taken
 * from there too, and where they are missing, kept as the present file has them.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { readStations, writeStations } from "../../../functions/network/file";
import { networkKeys, networks } from "../../../functions/network/networks";
import type { Station } from "../../../functions/network/station";
import { averagesOf } from "./averages";
import { extremesIn } from "./extremes";
import { NORMALS, readNormals } from "./normals";
import { RAW_FILE, readList, readReports, type Report } from "./reports";
import { addingTo, twinsOf } from "./thin";

const FILE = join(__dirname, "..", "..", "..", "functions", "network", "stations.json");
const LIST = "stations_list_CLIMAT_data.txt";
/** Stations that no rule catches, with the reason. */
const DISTRUSTED: Readonly<Record<string, string>> = {
  "31960": "Vladivostok's range of 12 K in January is that of extremes; its coast has 7 K (from memory)",
};
/** kB gzipped. */
const BUDGET = 450;
const SHOWN = 12;

const some = (all: readonly string[]): string =>
  `${all.length}${all.length > 0 ? `: ${all.slice(0, SHOWN).join(", ")}${all.length > SHOWN ? ", …" : ""}` : ""}`;
const signed = (value: number): string => `${value >= 0 ? "+" : "-"}${Math.abs(value).toFixed(2)}`;

const valueOf = <T>(read: T | string): T => {
  if (typeof read === "string") throw new Error(read);
  return read;
};

const run = (): void => {
  const [folder] = process.argv.slice(2);
  if (folder === undefined || !existsSync(folder)) {
    throw new Error("give the folder of the CLIMAT reports: npm run stations -- FOLDER");
  }
  const files = readdirSync(folder).filter((name) => RAW_FILE.test(name));
  if (files.length === 0) throw new Error(`${folder} holds no month of reports: CLIMAT_RAW_201207.txt`);
  if (!existsSync(join(folder, LIST))) throw new Error(`${folder} holds no list of stations: ${LIST}`);
  const say = (words: string): void => console.log(words);

  const reports: Report[] = [];
  for (const name of files) {
    const read = valueOf(readReports(name, readFileSync(join(folder, name), "latin1")));
    for (const report of read.reports) reports.push(report);
    if (read.damaged.length > 0)
      say(`${name}: lines left out because they are damaged, ${some(read.damaged.map(String))}`);
  }
  const list = valueOf(readList(readFileSync(join(folder, LIST), "latin1")));
  const { stations: averages, leftOut } = averagesOf(reports, list);
  say(`${reports.length} reports of ${files.length} months`);
  say(`reports whose temperatures contradict one another: ${leftOut.contradictions}`);
  say(`figures far from all others of their station and month: ${leftOut.strays}`);
  say(`stations without a place in the list: ${some(leftOut.unlisted)}`);
  say(`stations with too few years: ${some(leftOut.short)}`);
  say(`stations whose vapour can't be, kept without it: ${some(leftOut.supersaturated)}`);
  const extremes = extremesIn(averages);
  for (const { station, high, low } of extremes) {
    say(`left out, reports extremes: ${station.id} ${station.name}, highs ${signed(high)} K, lows ${signed(low)} K`);
  }
  const isExtreme = new Set(extremes.map(({ station }) => station));
  for (const [id, reason] of Object.entries(DISTRUSTED)) say(`left out, ${reason}: ${id}`);
  const climat = averages.filter((station) => !isExtreme.has(station) && DISTRUSTED[station.id] === undefined);
  say(`CLIMAT: ${climat.length} stations`);

  const present = existsSync(FILE) ? readStations(readFileSync(FILE, "utf8")) : [];
  if (!present) throw new Error(`${FILE} is damaged`);
  const all: Station[] = [...climat];
  for (const [file, { network }] of Object.entries(NORMALS)) {
    if (!existsSync(join(folder, file))) {
      const before = present.filter((station) => station.network === network);
      all.push(...before);
      say(`${networks[network].title}: ${before.length} stations of the present file (${file} is not in the folder)`);
      continue;
    }
    const read = valueOf(readNormals(file, readFileSync(join(folder, file), "utf8")));
    const twins = twinsOf(climat, read.stations);
    const added = addingTo(all, read.stations);
    all.push(...added.stations);
    say(
      `${networks[network].title}: ${added.stations.length} of ${read.stations.length} stations; ${read.leftOut.length} damaged or short, ${added.same} held already, ${added.dispensable} whose neighbour says the same`,
    );
    const { warming } = networks[network];
    const differ = twins.pairs > 0 ? ` differ by ${signed(twins.high)} (highs) and ${signed(twins.low)} K (lows)` : "";
    say(`  ${twins.pairs} twins of CLIMAT${differ}; ${warming.high} and ${warming.low} K are added`);
  }

  const months = files.sort();
  const text = writeStations(all, `CLIMAT ${months[0]?.slice(11, 17) ?? ""} to ${months.at(-1)?.slice(11, 17) ?? ""}`);
  const kilobytes = gzipSync(text, { level: 9 }).length / 1000;
  if (kilobytes > BUDGET) throw new Error(`the file would be ${kilobytes.toFixed(0)} kB gzipped, more than ${BUDGET}`);
  writeFileSync(FILE, text);
  const higher = [500, 1000, 2000].map((metres) => all.filter(({ elevation }) => elevation >= metres).length);
  say(
    `${all.length} stations (from 500, 1000, 2000 m: ${higher.join(", ")}) of ${networkKeys.length} networks, ${kilobytes.toFixed(0)} kB gzipped`,
  );
};

try {
  run();
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
