import type { Form } from "../../text/form";

export const temperatureUnits = ["celsius", "fahrenheit"] as const;
export type TemperatureUnit = (typeof temperatureUnits)[number];

/** How a file of readings is to be read. Each of these is guessed, shown, and can be overruled. Columns count from 0. */
export interface Layout extends Form {
  /** Lines above the first reading: a heading, and whatever a logger says of itself. */
  readonly headings: number;
  readonly unit: TemperatureUnit;
  readonly timeColumn: number;
  /** The column of the time of day, where it stands apart from the date. */
  readonly clockColumn?: number | undefined;
  readonly temperatureColumn: number;
  /** Further columns to bring along as they stand. */
  readonly others: readonly number[];
}

/** What stands in a file, as far as it can be told without asking. */
export interface Guess {
  readonly layout: Layout;
  /** What cannot be told from the file: the keeper has to say before anything is written. */
  readonly ask: readonly "dateOrder"[];
  /** The words over the columns; "column 3" where there are none. */
  readonly titles: readonly string[];
}
