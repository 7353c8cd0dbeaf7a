import { areaOf, beside, block, columnLetters, type Area } from "./address";

/**
 * Cells are spoken of by name while a sheet is written: a name printed into a formula is a token, and the page puts the
 * address in its place once it knows where everything stands.
 */

/** Where each named cell or column of a sheet stands, as an address: "animal.start" is "B8", "log.mass" is "C38:C97". */
export type Places = Readonly<Record<string, string>>;

/** How an address is printed: to stay when a formula is copied, to go along, or to go along within its column. */
type Anchor = "stays" | "goes" | "goesDown";
const SIGNS: Readonly<Record<Anchor, string>> = { stays: "", goes: "~", goesDown: "|" };

const token = (name: string, anchor: Anchor = "stays"): string => `⟦${SIGNS[anchor]}${name}⟧`;

/** A cell by its name. */
export class Cell {
  constructor(
    readonly name: string,
    private readonly anchor: Anchor = "stays",
  ) {}
  toString(): string {
    return token(this.name, this.anchor);
  }
}

/** A column of cells by its name. */
export class Column {
  constructor(readonly name: string) {}
  toString(): string {
    return token(this.name);
  }
  /** One of its cells, counted from 1. */
  at(row: number): Cell {
    return new Cell(`${this.name}[${row}]`);
  }
}

/** The cell of a column in the row that a formula stands in. */
export class RowCell extends Cell {
  constructor(
    private readonly column: string,
    readonly row: number,
    anchor: Anchor = "goes",
  ) {
    super(`${column}[${row}]`, anchor);
  }
  /** The cell above it; not there in the first row. */
  get before(): Cell {
    return new Cell(`${this.column}[${this.row - 1}]`, "goes");
  }
  /** From the first cell of the column to the one above. */
  get above(): string {
    return token(`${this.column}[1..${this.row - 1}]`);
  }
  /** From the first cell of the column to this one. */
  get upToHere(): string {
    return token(`${this.column}[1..${this.row}]`);
  }
  /** All of its column. */
  get whole(): Column {
    return new Column(this.column);
  }
  get isFirst(): boolean {
    return this.row === 1;
  }
}

/** All cells from one to another, both included. */
export const through = (first: Cell | Column, last: Cell | Column): string => token(`${first.name}>${last.name}`);

/** A cell of a part that is written further down. */
export const named = (name: string): Cell => new Cell(name);
/** A column of a part that is written further down. */
export const namedColumn = (name: string): Column => new Column(name);

const placeOf = (places: Places, name: string): string => {
  const found = places[name];
  if (found === undefined) throw new Error(`no cell is called ${name}: there are ${Object.keys(places).join(", ")}`);
  return found;
};

/** The address of a name: "animal.start", "log.mass" for the whole column, "log.mass[3]" for its third cell. */
export const addressIn = (places: Places, name: string): string => {
  const found = /^([^[]+)\[(\d+)\]$/.exec(name);
  if (!found) return placeOf(places, name);
  const [, column, row] = found as unknown as [string, string, string];
  const { top, left, bottom } = areaOf(placeOf(places, column));
  const number = top + Number(row) - 1;
  if (Number(row) < 1 || number > bottom) throw new Error(`${column} has no row ${row}`);
  return `${columnLetters(left)}${number}`;
};

const bounds = (one: Area, other: Area): string => {
  const corner = `${columnLetters(Math.min(one.left, other.left))}${Math.min(one.top, other.top)}`;
  const [bottom, right] = [Math.max(one.bottom, other.bottom), Math.max(one.right, other.right)];
  return block(corner, bottom - areaOf(corner).top + 1, right - areaOf(corner).left + 1);
};

const printed = (places: Places, name: string, anchor: Anchor): string => {
  const toHere = /^(.+)\[1\.\.(\d+)\]$/.exec(name);
  if (toHere) {
    const [, column, row] = toHere as unknown as [string, string, string];
    const first = addressIn(places, `${column}[1]`);
    return `${first.replace(/\d+/, "$$$&")}:${beside(first, Number(row) - 1, 0)}`;
  }
  const [first, last] = name.split(">") as [string, string?];
  const address = last
    ? bounds(areaOf(addressIn(places, first)), areaOf(addressIn(places, last)))
    : addressIn(places, first);
  if (anchor === "goes") return address;
  return address.replace(/([A-Z]+)(\d+)/g, anchor === "stays" ? "$$$1$$$2" : "$$$1$2");
};

/** Text in which the names have become addresses; `plain` without dollar signs, for a range that is no formula. */
export const withAddresses = (text: string, places: Places, plain = false): string =>
  text.replace(/⟦([~|]?)([^⟧]+)⟧/g, (_, sign: string, name: string) => {
    const anchor = (Object.keys(SIGNS) as Anchor[]).find((one) => SIGNS[one] === sign) as Anchor;
    return printed(places, name, plain ? "goes" : anchor);
  });
