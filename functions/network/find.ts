import { notAvailable, notUsable, type Problem } from "../problem";
import { editDistance } from "../shared/nearest";
import type { Station } from "./station";

const SHOWN = 5;

/** As it is compared: without capitals, accents and runs of other signs. */
const plain = (text: string): string =>
  text
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();

/** A station's name as STATIONS answers it. */
export const fullName = ({ name, country }: Station): string => `${name}, ${country}`;

const shown = (stations: readonly Station[]): string => {
  const names = stations.slice(0, SHOWN).map((station) => `${fullName(station)} (${station.id})`);
  const more = stations.length - names.length;
  return `${names.join("; ")}${more > 0 ? `; and ${more} more` : ""}`;
};

interface Named {
  readonly station: Station;
  readonly name: string;
  readonly full: string;
}

const LIKE = 3;

/** Those spelled most like a text, best first; what differs more in length alone is not compared letter by letter. */
const nearestOf = (all: readonly Named[], text: string): readonly Named[] => {
  const best: { readonly one: Named; readonly apart: number }[] = [];
  for (const one of all) {
    const worst = best.length === LIKE ? (best.at(-1)?.apart ?? Infinity) : Infinity;
    const spellings = [one.name, one.full].filter((spelling) => Math.abs(spelling.length - text.length) < worst);
    const apart = Math.min(...spellings.map((spelling) => editDistance(text, spelling)));
    if (apart >= worst) continue;
    best.push({ one, apart });
    best.sort((some, other) => some.apart - other.apart).splice(LIKE);
  }
  return best.map(({ one }) => one);
};

/** Finds a station by its identifier, by its name with the country, by its name, or by how its name begins. */
export const finder = (stations: readonly Station[]): ((wanted: string) => Station | Problem) => {
  const byId = new Map(stations.map((station) => [station.id.toLowerCase(), station]));
  let all: readonly Named[] | undefined;
  return (wanted) => {
    const id = wanted.trim().toLowerCase();
    // A WMO number that a sheet took for a number has lost its zeros.
    const known = byId.get(id) ?? (/^\d{4,5}$/.test(id) ? byId.get(id.padStart(5, "0")) : undefined);
    if (known) return known;
    if (/^\d+$/.test(id)) {
      return notAvailable(`station holds '${wanted}': no station has this number; a WMO number has five digits`);
    }
    const named = (all ??= stations.map((station) => ({
      station,
      name: plain(station.name),
      full: plain(fullName(station)),
    })));
    const text = plain(wanted);
    if (text === "") return notUsable(`station holds '${wanted}': give a WMO number or a name as STATIONS answers it`);
    const rules: readonly ((one: (typeof named)[number]) => boolean)[] = [
      ({ full }) => full === text,
      ({ name }) => name === text,
      ({ full }) => full.startsWith(text),
    ];
    for (const rule of rules) {
      const found = named.filter(rule).map(({ station }) => station);
      if (found.length === 1) return found[0] as Station;
      if (found.length > 1) {
        return notUsable(`station holds '${wanted}': ${found.length} stations fit, ${shown(found)}; give the number`);
      }
    }
    const near = nearestOf(named, text).map(({ station }) => station);
    return notAvailable(`station holds '${wanted}': no station is called so; the nearest names are ${shown(near)}`);
  };
};
