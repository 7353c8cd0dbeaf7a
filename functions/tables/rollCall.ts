import { column, date, defineFunction, optional, quantity, table, text, type Answer } from "../define";
import { EntryProblem, notUsable } from "../problem";
import { byName, type Group } from "../shared/byName";
import { BODY_MASS } from "../shared/limits";

/** An animal of the roll, and the row of its first and of its last weighing. */
interface Called {
  readonly name: string;
  readonly entries: number;
  readonly first: number | undefined;
  readonly last: number | undefined;
}

type Days = readonly (number | undefined)[];

/** Of several weighings of one day, the one that stands first is the first, and the one that stands last the last. */
const called = ({ name, rows }: Group, dates: Days, masses: Days, on: number): Called => {
  let entries = 0;
  let first: number | undefined;
  let last: number | undefined;
  for (const row of rows) {
    const day = dates[row];
    if (day === undefined || day > on || masses[row] === undefined) continue;
    entries++;
    if (first === undefined || day < (dates[first] as number)) first = row;
    if (last === undefined || day >= (dates[last] as number)) last = row;
  }
  return { name, entries, first, last };
};

/** A row with a mass, but without the day or the animal that it belongs to. */
const homeless = (animals: readonly (string | undefined)[], dates: Days, masses: Days): EntryProblem | undefined => {
  for (let row = 0; row < masses.length; row++) {
    if (masses[row] === undefined) continue;
    if (animals[row] === undefined) return new EntryProblem("#N/A", "animals", row, "is blank");
    if (dates[row] === undefined) return new EntryProblem("#N/A", "dates", row, "is blank");
  }
  return undefined;
};

/** The animals stand in the order in which the log first names them; one without a weighing so far keeps its row. */
export const rollCall = defineFunction({
  name: "ROLLCALL",
  summary: "A row for each animal of one long log of weighings: entries, first, last, last mass, change, days since.",
  parameters: {
    animals: column(text("Whose weighing each row is; capitals and outer spaces are of no matter"), { blank: "keep" }),
    dates: column(date("Days of the weighings, in any order"), { blank: "keep" }),
    masses: column(quantity("gram", "Body mass on each; a blank is no weighing", BODY_MASS), { blank: "keep" }),
    on: optional(date("The day to count to; later weighings are not looked at"), "the latest day of the log"),
  },
  result: table(
    { name: "Animal", unit: "text", about: "As it is spelled first" },
    { name: "Entries", unit: "none", about: "Weighings so far" },
    { name: "First", unit: "date", about: "Day of the first" },
    { name: "Last", unit: "date", about: "Day of the last" },
    { name: "Last mass", unit: "gram", about: "Body mass then" },
    { name: "Change", unit: "gram", about: "Last mass less first; a loss is negative" },
    { name: "Days since", unit: "day", about: "Days from the last weighing to the day counted to" },
  ),
  sources: ["definition"],
  cautions: ["sameScales", "noVet"],
  examples: [
    {
      given: [
        [["Ash"], ["Birch"], ["ash"], ["Birch"]],
        [["2026-04-01"], ["2026-04-02"], ["2026-04-08"], ["2026-04-09"]],
        [[140], [310], [142], [309]],
        "2026-04-15",
      ],
      gives: [
        ["Ash", 2, "2026-04-01", "2026-04-08", 142, 2, 7],
        ["Birch", 2, "2026-04-02", "2026-04-09", 309, -1, 6],
      ],
      within: 0,
    },
  ],
  calculate({ animals, dates, masses, on }) {
    if (dates.length !== animals.length || masses.length !== animals.length) {
      return notUsable(
        `animals holds ${animals.length} cells, dates ${dates.length} and masses ${masses.length}: give as many of each`,
      );
    }
    const unplaced = homeless(animals, dates, masses);
    if (unplaced) return unplaced;
    const roll = [...byName(animals).values()].map((group) => called(group, dates, masses, on ?? Infinity));
    const dayOf = (row: number | undefined): number => (row === undefined ? -Infinity : (dates[row] as number));
    const until = on ?? roll.reduce((latest, { last }) => Math.max(latest, dayOf(last)), -Infinity);
    return roll.map(({ name, entries, first, last }): readonly Answer[] => {
      if (first === undefined || last === undefined) return [name, entries, "", "", "", "", ""];
      const [before, now] = [masses[first] as number, masses[last] as number];
      return [name, entries, dayOf(first), dayOf(last), now, now - before, until - dayOf(last)];
    });
  },
});
