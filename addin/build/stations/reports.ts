/**
 * A month of CLIMAT reports (FM 71) as the Wetterdienst publishes it, "CLIMAT_RAW_201207.txt": a line of titles, then a line
 * a station, fields parted by semicolons, numbers without a point. Missing is an empty field.
 */
export interface Report {
  readonly station: string;
  readonly year: number;
  /** 0 to 11. */
  readonly month: number;
  /** °C, °C, °C, hPa, mm, days; NaN where missing. */
  readonly mean: number;
  readonly high: number;
  readonly low: number;
  readonly vapour: number;
  readonly rain: number;
  readonly rainDays: number;
}

export const RAW_FILE = /^CLIMAT_RAW_(\d{4})(\d{2})\.txt$/;

const TITLES = "year;month;IIiii;G1;Po;G1;P;G1;sn;T;st;G1;sn;Tx;sn;Tn;G1;e;G1;R1;Rd;nr;";
const FIELDS = TITLES.split(";").length - 1;
/** "Rain, but less than could be measured." */
const TRACE = 9999;

const numberOf = (field: string): number => {
  const trimmed = field.trim();
  return trimmed === "" ? NaN : /^\d+$/.test(trimmed) ? Number(trimmed) : Infinity;
};

/** The reports of a file, and its lines that are none; words instead where the file is none of its kind. */
export const readReports = (
  name: string,
  text: string,
): { readonly reports: readonly Report[]; readonly damaged: readonly number[] } | string => {
  const [, fileYear, fileMonth] = RAW_FILE.exec(name) ?? [];
  if (fileYear === undefined) return `${name} is not named as a month of reports: CLIMAT_RAW_201207.txt`;
  const lines = text.split(/\r?\n/);
  if (!lines[0]?.startsWith(TITLES)) return `${name} does not begin with the titles of a CLIMAT file (${TITLES}…)`;
  const reports: Report[] = [];
  const damaged: number[] = [];
  for (let i = 1; i < lines.length; i++) {
    const line = lines[i] as string;
    if (line.trim() === "" || line === "\u001a") continue; // the last line may hold the old sign for the end of a file
    const fields = line.split(";", FIELDS).map(numberOf);
    const [year, month, station, , , , , , meanSign, mean, , , highSign, high, lowSign, low, , vapour, , rain, , days] =
      fields as readonly [...number[]];
    const signed = (sign: number | undefined, value: number | undefined): number =>
      sign === 0 || sign === 1 ? ((sign === 1 ? -1 : 1) * (value as number)) / 10 : NaN;
    const isReport =
      fields.length === FIELDS &&
      [meanSign, mean, highSign, high, lowSign, low, vapour, rain, days].every((value) => value !== Infinity) &&
      year === Number(fileYear) &&
      month === Number(fileMonth) &&
      /^\d{5}$/.test(line.split(";", 3)[2]?.trim() ?? "") &&
      (station as number) > 0;
    if (!isReport) {
      damaged.push(i + 1);
      continue;
    }
    reports.push({
      station: String(station).padStart(5, "0"),
      year,
      month: month - 1,
      mean: signed(meanSign, mean),
      high: signed(highSign, high),
      low: signed(lowSign, low),
      vapour: (vapour as number) / 10,
      rain: rain === TRACE ? 0 : (rain as number),
      rainDays: days as number,
    });
  }
  return { reports, damaged };
};

/** A station of the list beside the reports. */
export interface Listed {
  readonly id: string;
  readonly name: string;
  readonly country: string;
  readonly latitude: number;
  readonly longitude: number;
  readonly elevation: number;
}

/** The list of stations, "stations_list_CLIMAT_data.txt". A station without a place is left out. */
export const readList = (text: string): ReadonlyMap<string, Listed> | string => {
  const lines = text.split(/\r?\n/);
  if (!/^WMO-Station ID;\s*StationName;\s*Latitude;\s*Longitude;\s*Height;\s*Country/.test(lines[0] ?? "")) {
    return "the list of stations does not begin with WMO-Station ID; StationName; Latitude; Longitude; Height; Country";
  }
  const listed = lines.slice(1).flatMap((line): [string, Listed][] => {
    const [id = "", name = "", ...rest] = line.split(";").map((field) => field.trim().replace(/\s+/g, " "));
    const [latitude = NaN, longitude = NaN, elevation = NaN] = rest
      .slice(0, 3)
      .map((field) => (field === "" ? NaN : Number(field)));
    const isPlaced =
      /^\d{5}$/.test(id) && Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180 && Number.isFinite(elevation);
    return isPlaced ? [[id, { id, name, country: rest[3] ?? "", latitude, longitude, elevation }]] : [];
  });
  return new Map(listed);
};
