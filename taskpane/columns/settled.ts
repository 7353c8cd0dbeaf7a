import { dateOf, serialOfIso } from "../../functions/dates";
import { areaOf } from "../actions/place";
import { readFigure } from "../text/readFigure";
import { fixed } from "../sheets/shared/address";
import type { SheetContents } from "../workbook";
import type { Want } from "./wish";

/** What was typed for something that stands once: as formula text, and what it holds. */
export interface Settled {
  readonly text: string;
  readonly value: unknown;
}

const REFERENCE =
  /^=?(?:(?:'((?:[^']|'')+)'|([\p{L}_][\p{L}\p{N}_]*))!)?(\$?[A-Z]{1,3}\$?[1-9]\d*(?::\$?[A-Z]{1,3}\$?[1-9]\d*)?)$/u;

/** Cells of the workbook that are named by their address; undefined where the text is none. */
const cellsAt = (typed: string, own: string, sheets: readonly SheetContents[]): Settled | string | undefined => {
  const found = REFERENCE.exec(typed.trim());
  if (!found) return undefined;
  const [, quoted, plain, address = ""] = found;
  const name = quoted?.replaceAll("''", "'") ?? plain;
  const contents = sheets.find((sheet) => sheet.name === (name ?? own));
  if (!contents) return `there is no sheet "${name ?? own}"`;
  const area = areaOf(address.replaceAll("$", ""));
  if (!area) return `${address} is no address`;
  const rows = Array.from({ length: area.rows }, (_, i) =>
    Array.from({ length: area.columns }, (_, j) => contents.cells[area.row + i]?.[area.column + j]?.value ?? null),
  );
  const sheet =
    name === undefined ? "" : `${/^[\p{L}_][\p{L}\p{N}_]*$/u.test(name) ? name : `'${name.replaceAll("'", "''")}'`}!`;
  return {
    text: `${sheet}${fixed(address.replaceAll("$", ""))}`,
    value: area.rows * area.columns === 1 ? rows[0]?.[0] : rows,
  };
};

/** Reads what was typed for a want; a text says what is wrong. */
export const settled = (want: Want, typed: string, own: string, sheets: readonly SheetContents[]): Settled | string => {
  const cells = cellsAt(typed, own, sheets);
  if (typeof cells === "string") return cells;
  if (cells) return cells;
  if (want.from === "cells") return `${want.label} wants cells, such as B4:B9`;
  const text = typed.trim();
  const { parameter } = want;
  if (parameter.unit === "date" || parameter.unit === "date and time") {
    const serial = serialOfIso(text);
    if (serial === undefined) return `${want.label}: give a date as 2026-10-05, or a cell`;
    const day = dateOf(serial);
    return { text: `DATE(${day.getFullYear()},${day.getMonth() + 1},${day.getDate()})`, value: Math.floor(serial) };
  }
  const figure = readFigure(text, text.includes(",") ? "," : ".");
  if (figure !== undefined) return { text: String(figure), value: figure };
  const words = parameter.reads === "cell" ? (parameter.words ?? []) : [];
  if (words.includes(text.toLowerCase()) || parameter.kind === "text") {
    return { text: `"${text.replaceAll('"', '""')}"`, value: text };
  }
  return `${want.label}: give ${words.length > 0 ? words.join(" or ") : "a figure"}, or a cell`;
};
