import { isoOf } from "../dates";
import { anything, column, columns, date, defineFunction, optional, type Value } from "../define";
import { EntryProblem, notAvailable, notUsable, type Problem } from "../problem";
import { severalAnimals } from "../shared/severalAnimals";

/** The problem with figures of a whole table that can hardly be one animal's; words are no figures. */
const mixed = (dates: readonly (number | undefined)[], values: readonly (Value | undefined)[]): Problem | undefined => {
  const rows = values
    .map((value, i) => ({ day: dates[i], value }))
    .filter((row): row is { day: number; value: number } => row.day !== undefined && typeof row.value === "number")
    .sort((a, b) => a.day - b.day);
  return severalAnimals(
    rows.map(({ day }) => day),
    rows.map(({ value }) => value),
    "values",
    "none",
  );
};

/** A row without a value is no entry yet. Of several entries of one day the one that stands last counts. */
export const latest = defineFunction({
  name: "LATEST",
  summary: "The last entry of a log on or before a day, and its day, such as the body mass before a meal.",
  parameters: {
    dates: column(date("Days of the entries, in any order"), { blank: "keep" }),
    values: column(anything("What was entered on each, such as body mass; a blank is no entry"), { blank: "keep" }),
    on: optional(date("The day; later entries are not looked at"), "the last entry of all"),
  },
  forEach: "animal",
  result: columns(
    { name: "Value", unit: "none", about: "What was entered" },
    { name: "Date", unit: "date", about: "The day of that entry" },
  ),
  sources: ["definition"],
  cautions: ["oldEntry"],
  examples: [
    {
      given: [[["2026-04-01"], ["2026-04-08"], ["2026-04-22"]], [[140], [142], [150]], "2026-04-20"],
      gives: [[142, "2026-04-08"]],
      within: 0,
    },
    {
      given: [
        [["2026-04-01"], ["2026-04-02"], ["2026-04-08"], ["2026-04-09"]],
        [[140], [310], [142], [309]],
        null,
        [["Ash"], ["Birch"], ["Ash"], ["Birch"]],
        [["Ash"], ["Birch"]],
      ],
      gives: [
        [142, "2026-04-08"],
        [309, "2026-04-09"],
      ],
      within: 0,
    },
  ],
  calculate({ dates, values, on = Infinity, named }) {
    if (dates.length !== values.length) {
      return notUsable(`dates holds ${dates.length} cells and values ${values.length}: give as many of each`);
    }
    const several = named === undefined ? mixed(dates, values) : undefined;
    if (several) return several;
    let [first, last] = [Infinity, -Infinity];
    let entry: Value | undefined;
    for (let row = 0; row < values.length; row++) {
      const value = values[row];
      if (value === undefined) continue;
      const day = dates[row];
      if (day === undefined) return new EntryProblem("#N/A", "dates", row, "is blank");
      if (day < first) first = day;
      if (day > on || day < last) continue;
      last = day;
      entry = value;
    }
    return entry === undefined
      ? notAvailable(`no entry on or before ${isoOf(on)}: the first is of ${isoOf(first)}`)
      : [entry, last];
  },
});
