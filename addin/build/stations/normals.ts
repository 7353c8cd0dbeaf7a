import { parse } from "papaparse";
import type { NetworkKey } from "../../../functions/network/networks";
import type { Station } from "../../../functions/network/station";

/** Normals of a denser network, a row a station: "us-normals-8110.csv". Which network a file holds, and what its identifiers begin with. */
export const NORMALS: Readonly<Record<string, { readonly network: NetworkKey; readonly prefix: string }>> = {
  "us-normals-8110.csv": { network: "noaa", prefix: "USN8110-" },
  "jma-normals-9120.csv": { network: "jma", prefix: "" },
  "cwa-normals-9120.csv": { network: "cwa", prefix: "" },
};

/** Fewer years than this are no normals, where the file says how many. */
const LEAST_YEARS = 10;

const numberOf = (text: string | undefined): number => (text === undefined || text.trim() === "" ? NaN : Number(text));

/** The name in Latin letters; the same name in others may stand behind it. */
const latin = (name: string): string =>
  name
    .replace(/[\u2E80-\u9FFF\uF900-\uFAFF]+/g, " ")
    .replace(/\s+/g, " ")
    .trim();

/** The stations of a file of normals, and the rows that are none or too short; words where it lacks a column. */
export const readNormals = (
  file: string,
  text: string,
): { readonly stations: readonly Station[]; readonly leftOut: readonly string[] } | string => {
  const kind = NORMALS[file];
  if (!kind) return `${file} is no file of normals: ${Object.keys(NORMALS).join(", ")}`;
  const { data, meta } = parse<Record<string, string>>(text, { header: true, skipEmptyLines: true });
  const twelve = (column: string): string[] => Array.from({ length: 12 }, (_, month) => `${column}_${month + 1}`);
  const needed = [
    "id",
    "name",
    "country",
    "latitude",
    "longitude",
    "elevation_m",
    ...twelve("high_c"),
    ...twelve("low_c"),
  ];
  const missing = needed.filter((column) => !meta.fields?.includes(column));
  if (missing.length > 0) return `${file} lacks ${missing.join(", ")}`;

  const stations: Station[] = [];
  const leftOut: string[] = [];
  for (const row of data) {
    const series = (column: string): number[] => twelve(column).map((title) => numberOf(row[title]));
    const [high, low] = [series("high_c"), series("low_c")];
    const [latitude, longitude, elevation] = [row.latitude, row.longitude, row.elevation_m].map(numberOf) as [
      number,
      number,
      number,
    ];
    const years = numberOf(row.years);
    const isWhole =
      [latitude, longitude, elevation, ...high, ...low].every(Number.isFinite) &&
      high.every((value, month) => value > (low[month] as number));
    if (!isWhole || years < LEAST_YEARS) {
      leftOut.push(row.id ?? "");
      continue;
    }
    stations.push({
      network: kind.network,
      id: (row.id ?? "").replace(kind.prefix, ""),
      name: latin(row.name ?? ""),
      country: row.country ?? "",
      latitude,
      longitude,
      elevation,
      years,
      high,
      low,
      vapour: series("vapour_hpa"),
      rain: series("rain_mm"),
      rainDays: series("rain_days"),
    });
  }
  return { stations, leftOut };
};
