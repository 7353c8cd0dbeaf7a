/** How the cells of a line are kept apart; the comma last, because it may be a decimal mark between any of the others. */
export const separators = ["\t", ";", "|", ","] as const;
export type Separator = (typeof separators)[number];

/** In which order a date names its year, month and day. */
export const dateOrders = ["ymd", "dmy", "mdy"] as const;
export type DateOrder = (typeof dateOrders)[number];

export const decimals = [".", ","] as const;
export type Decimal = (typeof decimals)[number];

/** How a person or a program writes dates and figures. */
export interface Manner {
  readonly dateOrder: DateOrder;
  readonly decimal: Decimal;
}

/** How a text of rows and cells is to be read. */
export interface Form extends Manner {
  readonly separator: Separator;
}

export const separatorWords: Readonly<Record<Separator, string>> = {
  "\t": "tab",
  ";": "semicolon ;",
  ",": "comma ,",
  "|": "bar |",
};
export const orderWords: Readonly<Record<DateOrder, string>> = {
  ymd: "year, month, day",
  dmy: "day, month, year",
  mdy: "month, day, year",
};
export const decimalWords: Readonly<Record<Decimal, string>> = { ".": "point 21.5", ",": "comma 21,5" };
