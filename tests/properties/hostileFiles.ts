import fc from "fast-check";
import { evaluate } from "../../addin/boundary/evaluate";
import { supplies } from "../../addin/boundary/supplies";
import { readCsv } from "../../addin/file/csv";
import { plainFileSheet } from "../../addin/file/plain";
import { readXlsx } from "../../addin/file/read";
import { writeXlsx } from "../../addin/file/write";
import { catalogue } from "../../functions/catalogue";
import type { AnyDefinition } from "../../functions/define";
import { writeStations } from "../../functions/network/file";
import { openNetwork } from "../../functions/network/open";
import { readReadings } from "../../taskpane/actions/readings/readReadings";
import { guessLayout } from "../../taskpane/actions/readings/guessLayout";
import { WorkbookError } from "../../taskpane/workbook";
import { networkAsShipped } from "../network";
import { wrongWith } from "./wrong";

/** Files that a disk, a mail or a stranger has spoilt. Each check answers the number tried and the first thing wrong. */
export interface Outcome {
  readonly tried: number;
  readonly wrong?: string;
}

const outcomeOf = <T>({ failed, numRuns, errorInstance, counterexample }: fc.RunDetails<T>): Outcome =>
  failed
    ? { tried: numRuns, wrong: `${String(errorInstance)}; ${fc.stringify(counterexample).slice(0, 2000)}` }
    : { tried: numRuns };

/** A place in a text and what is put there instead of a few letters. */
const damage = fc.array(
  fc.tuple(
    fc.nat(9999).map((part) => part / 10_000),
    fc.nat(3),
    fc.constantFrom(
      "",
      "0",
      "9",
      "-",
      "e9",
      "1e308",
      "null",
      '"',
      "[",
      "]",
      ",",
      "{",
      "}",
      "\\",
      '"x"',
      "true",
      "\0",
      ".",
    ),
  ),
  { minLength: 1, maxLength: 3 },
);
const damaged = (text: string, places: readonly (readonly [number, number, string])[]): string =>
  places.reduce((all, [share, length, put]) => {
    const at = Math.floor(share * all.length);
    return `${all.slice(0, at)}${put}${all.slice(at + length)}`;
  }, text);

/** A figure or a word of a JSON text, and what is put there instead: the text stays JSON. */
const exchange = fc.array(
  fc.tuple(
    fc.nat(9999).map((part) => part / 10_000),
    fc.constantFrom(
      "0",
      "-1",
      "99999",
      "1e308",
      "-1e308",
      "5e-324",
      "1.5",
      "null",
      '"x"',
      '""',
      '"__proto__"',
      "[]",
      "{}",
    ),
  ),
  { minLength: 1, maxLength: 4 },
);
const exchanged = (text: string, changes: readonly (readonly [number, string])[]): string =>
  changes.reduce((all, [share, put]) => {
    const tokens = [...all.matchAll(/"[^"]*"|-?\d+/g)];
    const { 0: token, index } = tokens[Math.floor(share * tokens.length)] as RegExpExecArray;
    return `${all.slice(0, index)}${put}${all.slice(index + token.length)}`;
  }, text);

/** The network's file with a few letters changed: it is refused, or every function that reads it answers for a sheet. */
export const hostileNetworks = (runs: number, seed: number): Outcome => {
  const shipped = networkAsShipped();
  const near = shipped.around(46.5, 10, 300).map(({ station }) => station);
  const text = writeStations(near.slice(0, 30), "2026-01-01");
  const readers: readonly AnyDefinition[] = catalogue.filter((one) => "needs" in one && one.needs === "network");
  if (near.length < 20 || readers.length === 0) throw new Error("there is nothing to try");
  const before = supplies.network;
  let opened = 0;
  try {
    const outcome = outcomeOf(
      fc.check(
        fc.property(damage, exchange, fc.boolean(), (places, changes, keepsForm) => {
          const network = openNetwork(keepsForm ? exchanged(text, changes) : damaged(text, places));
          if (!network) return;
          opened++;
          supplies.network = () => network;
          for (const definition of readers) {
            for (const { given } of definition.examples) {
              const wrong = wrongWith(given, definition.name, evaluate(definition, [...given]).cells);
              if (wrong !== undefined) throw new Error(wrong);
            }
          }
          const answer = evaluate(
            readers.find(({ name }) => name === "SITECLIMATE") as AnyDefinition,
            [46.5, 10, 1500],
          );
          const wrong = wrongWith([46.5, 10, 1500], "SITECLIMATE", answer.cells);
          if (wrong !== undefined) throw new Error(wrong);
        }),
        { numRuns: runs, seed },
      ),
    );
    // Where all were refused, nothing but the refusal was tried.
    return opened * 30 < outcome.tried ? { ...outcome, wrong: outcome.wrong ?? `only ${opened} opened` } : outcome;
  } finally {
    supplies.network = before;
  }
};

const csvPiece = fc.oneof(
  fc.constantFrom(
    ",",
    ";",
    "\t",
    "|",
    "\n",
    "\r\n",
    "\r",
    '"',
    '""',
    " ",
    "\0",
    "\ufeff",
    "=1+1",
    "#N/A",
    "1,5",
    "1.5",
    "-",
  ),
  fc.constantFrom("2026-01-02", "02/01/2026 12:00", "31.12.2026", "2026-13-45", "99:99", "46000.5", "1e400", "21.5 °C"),
  fc.string({ unit: "binary", maxLength: 8 }),
  fc.constantFrom("x".repeat(5000), ",".repeat(300), '"'.repeat(301), "\n".repeat(300)),
);

/** What is no table: it is refused in words, or each of its cells is one that a sheet can hold; and no row is lost. */
export const hostileCsvs = async (runs: number, seed: number): Promise<Outcome> =>
  outcomeOf(
    await fc.check(
      fc.asyncProperty(fc.array(csvPiece, { maxLength: 60 }), fc.boolean(), async (pieces, latin) => {
        const text = pieces.join("");
        const bytes = latin
          ? Uint8Array.from(text, (sign) => sign.charCodeAt(0) & 0xff)
          : new TextEncoder().encode(text);
        try {
          const { sheets } = readCsv("log.csv", bytes, { dateOrder: "dmy" });
          for (const { value } of sheets.flatMap(({ cells }) => cells.flat())) {
            if (typeof value === "number" && !Number.isFinite(value)) throw new Error(`a cell holds ${value}`);
          }
        } catch (error) {
          if (!(error instanceof WorkbookError)) throw error;
        }
        const { layout } = guessLayout(text, { dateOrder: "dmy" });
        for await (const { rows } of readReadings(text, layout)) {
          for (const value of rows.flat()) {
            if (typeof value === "number" && !Number.isFinite(value)) throw new Error(`a reading lands as ${value}`);
          }
        }
      }),
      { numRuns: runs, seed },
    ),
  );

/** A workbook's bytes with a few changed, cut off or repeated: opened, or refused by an error; never for ever. */
export const hostileWorkbooks = async (runs: number, seed: number): Promise<Outcome> => {
  const cells = [
    ["Date", "Mass"],
    ...Array.from({ length: 20 }, (_, i) => [46_000 + i, { formula: `=VIV.MASSLOSS(300,${300 - i})` }]),
  ];
  const bytes = await writeXlsx([plainFileSheet({ name: "Log", cells })], "own");
  const change = fc.oneof(
    fc.record({ at: fc.nat(bytes.length - 1), byte: fc.nat(255) }),
    fc.record({ cut: fc.nat(bytes.length) }),
    fc.record({ twice: fc.nat(bytes.length) }),
  );
  return outcomeOf(
    await fc.check(
      fc.asyncProperty(fc.array(change, { minLength: 1, maxLength: 6 }), async (changes) => {
        let spoilt: Uint8Array = Uint8Array.from(bytes);
        for (const one of changes) {
          if ("at" in one) spoilt[one.at % Math.max(1, spoilt.length)] = one.byte;
          else if ("cut" in one) spoilt = spoilt.slice(0, one.cut);
          else spoilt = Uint8Array.from([...spoilt, ...spoilt.slice(0, one.twice)]);
        }
        try {
          const { sheets } = await readXlsx(spoilt, "spoilt.xlsx");
          for (const { value } of sheets.flatMap((sheet) => sheet.cells.flat())) {
            if (typeof value === "number" && !Number.isFinite(value)) throw new TypeError(`a cell holds ${value}`);
          }
        } catch (error) {
          // Whoever opens a file says in words that it is none; what may not happen is a wrong figure.
          if (String(error).includes("a cell holds")) throw error;
        }
      }),
      { numRuns: runs, seed, timeout: 10_000 },
    ),
  );
};
