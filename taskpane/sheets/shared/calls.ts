import published from "../../../functions/published.json";
import type { System } from "../../../functions/units";

/** Where each function takes its units, counted from 0. */
const places: ReadonlyMap<string, number> = new Map(
  published.flatMap(({ name, arguments: given }) => (given.includes("units") ? [[name, given.indexOf("units")]] : [])),
);

const CALL = /^VIV\.([A-Z][A-Z0-9]*)\(/;
const TEXT = /^"(?:[^"]|"")*"/;

/** The arguments from the bracket that opens at a place on, and the place behind the one that closes. */
const argumentsFrom = (formula: string, from: number): { readonly given: readonly string[]; readonly next: number } => {
  const given: string[] = [];
  let [depth, begins] = [0, from];
  for (let i = from; i < formula.length;) {
    const [text = formula.charAt(i)] = TEXT.exec(formula.slice(i)) ?? [];
    if (depth === 0 && (text === "," || text === ")")) {
      given.push(formula.slice(begins, i));
      begins = i + 1;
      if (text === ")") return { given, next: i + 1 };
    }
    if ("({".includes(text)) depth++;
    if (")}".includes(text)) depth--;
    i += text.length;
  }
  throw new Error(`a bracket is not closed: ${formula}`);
};

/** A formula in whose calls the functions are told the system; what stood there before them is filled up with blank texts. */
export const callsIn = (formula: string, system: System): string => {
  let written = "";
  for (let i = 0; i < formula.length;) {
    const rest = formula.slice(i);
    const [text = rest.charAt(0)] = TEXT.exec(rest) ?? [];
    const call = text.length > 1 ? null : CALL.exec(rest);
    if (!call) {
      written += text;
      i += text.length;
      continue;
    }
    const [opened, name = ""] = call;
    const { given, next } = argumentsFrom(formula, i + opened.length);
    const inner = given.map((one) => callsIn(one, system));
    const place = places.get(name);
    if (place !== undefined) {
      const before = inner[place] ?? "";
      if (!["", '""', '"metric"'].includes(before)) throw new Error(`${name} has units of its own: ${formula}`);
      while (inner.length < place) inner.push('""');
      inner[place] = `"${system}"`;
    }
    written += `${opened}${inner.join(",")})`;
    i = next;
  }
  return written;
};
