/** How the cells of a line are kept apart; the comma last, because it may be a decimal mark between any of the others. */
export const separators = ["\t", ";", "|", ","] as const;
export type Separator = (typeof separators)[number];

/** In which order a date names its year, month and day. */
export const dateOrders = ["ymd", "dmy", "mdy"] as const;
export type DateOrder = (typeof dateOrders)[number];

export const temperatureUnits = ["celsius", "fahrenheit"] as const;
export type TemperatureUnit = (typeof temperatureUnits)[number];

/** How a file of readings is to be read. Each of these is guessed, shown, and can be overruled. Columns count from 0. */
export interface Layout {
  readonly separator: Separator;
  readonly decimal: "." | ",";
  /** Lines above the first reading: a heading, and whatever a logger says of itself. */
  readonly headings: number;
  readonly dateOrder: DateOrder;
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
