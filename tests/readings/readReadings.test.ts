import Papa from "papaparse";
import fc from "fast-check";
import { serialOfIso } from "../../functions/dates";
import { guessLayout } from "../../taskpane/actions/readings/guessLayout";
import type { Layout } from "../../taskpane/actions/readings/layout";
import { separators } from "../../taskpane/text/form";
import { piecesOf } from "../../taskpane/text/pieces";
import { readFigure } from "../../taskpane/text/readFigure";
import { readMoment } from "../../taskpane/text/readMoment";
import { previewReadings, readReadings } from "../../taskpane/actions/readings/readReadings";
import { textOf } from "../../taskpane/text/textOf";
import { clock, readAll, written } from "./files";

const at = (text: string): number => serialOfIso(text) as number;
const plain: Layout = {
  separator: ",",
  decimal: ".",
  headings: 1,
  dateOrder: "ymd",
  unit: "celsius",
  timeColumn: 0,
  temperatureColumn: 1,
  others: [],
};

describe("moments", () => {
  test.each([
    ["2026-11-02", "ymd", "2026-11-02"],
    ["2026-11-02T14:30", "ymd", "2026-11-02T14:30"],
    ["2026-11-02 14:30:15.250", "ymd", "2026-11-02T14:30:15"],
    ["2026-11-02T14:30:15Z", "ymd", "2026-11-02T14:30:15"],
    ["2026-11-02T14:30:15+01:00", "ymd", "2026-11-02T14:30:15"],
    ["2026/11/2 7:05", "ymd", "2026-11-02T07:05"],
    ["02.11.2026 14.30", "dmy", "2026-11-02T14:30"],
    ["2.11.26, 14:30", "dmy", "2026-11-02T14:30"],
    ["11/2/2026 2:30 PM", "mdy", "2026-11-02T14:30"],
    ["11/2/2026 12:00:00 AM", "mdy", "2026-11-02"],
    ["11/2/2026 12:15 p.m.", "mdy", "2026-11-02T12:15"],
    ["29-02-2028", "dmy", "2028-02-29"],
  ] as const)("%s in the order %s", (text, order, iso) => {
    expect(readMoment(text, order)).toBeCloseTo(at(iso), 9);
  });

  test.each([
    ["29.02.2027", "dmy"],
    ["31.04.2026", "dmy"],
    ["13/13/2026", "mdy"],
    ["2026-11-02 24:00", "ymd"],
    ["2026-11-02 8:60", "ymd"],
    ["11/2/2026 13:00 PM", "mdy"],
    ["02.11.2026", "ymd"],
    ["0026-11-02", "ymd"],
    ["1899-12-31", "ymd"],
    ["noon", "ymd"],
    ["", "ymd"],
    ["12345", "ymd"],
    ["2026-11-02 and more", "ymd"],
    ["002.11.2026", "dmy"],
  ] as const)("%s is none in the order %s", (text, order) => expect(readMoment(text, order)).toBeUndefined());

  test("the clock in a cell of its own", () => {
    expect(readMoment("02.11.2026", "dmy", "14:30:30")).toBeCloseTo(at("2026-11-02T14:30:30"), 9);
    expect(readMoment("02.11.2026", "dmy", "later")).toBeUndefined();
  });

  test("a serial number stands for itself", () => expect(readMoment("46327,5", "dmy")).toBe(46_327.5));
});

describe("figures", () => {
  test.each([
    ["21.5", ".", 21.5],
    ["-0.25", ".", -0.25],
    ["+3", ".", 3],
    ["−4.5", ".", -4.5],
    [" 21.5 °C ", ".", 21.5],
    ["70.1F", ".", 70.1],
    ["21,5", ",", 21.5],
    ["-,5", ",", -0.5],
    ["1e1", ".", 10],
    ["21", ",", 21],
  ] as const)("%s with the mark %s", (text, mark, figure) => expect(readFigure(text, mark)).toBe(figure));

  test.each([
    ["21,5", "."],
    ["21.5", ","],
    ["", "."],
    ["-", "."],
    ["1.234,5", ","],
    ["=1+1", "."],
    ["0x10", "."],
    ["Infinity", "."],
  ] as const)("%s is none with the mark %s", (text, mark) => expect(readFigure(text, mark)).toBeUndefined());
});

describe("pieces", () => {
  test("are the rows that papaparse reads in one go, however small they are cut", () => {
    const cell = fc.string({
      unit: fc.constantFrom("a", "1", ",", ";", "\t", "|", '"', "\n", " ", "°", "="),
      maxLength: 8,
    });
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 20 }),
        fc.constantFrom(...separators),
        fc.integer({ min: 1, max: 40 }),
        (rows, separator, size) => {
          const text = Papa.unparse(rows, { delimiter: separator, newline: "\n" });
          const whole = Papa.parse<string[]>(text, { delimiter: separator, newline: "\n" }).data;
          const pieces = [...piecesOf(text, separator, size)];
          const cut = pieces.flatMap((piece) => piece.rows);
          // A line end at the very end of a text is no further row of its own here.
          const trimmed = (list: readonly (readonly string[])[]) =>
            list.at(-1)?.join("") === "" ? list.slice(0, -1) : list;
          expect(trimmed(cut)).toEqual(trimmed(whole));
          if (text !== "") expect(pieces.at(-1)?.share).toBe(1);
        },
      ),
      { numRuns: 300 },
    );
  });
});

test("text of a file: UTF-8 with and without its mark, UTF-16, and the older Western alphabet", () => {
  const words = "Zeit;°C";
  expect(textOf(new TextEncoder().encode(words))).toBe(words);
  expect(textOf(new Uint8Array([0xef, 0xbb, 0xbf, ...new TextEncoder().encode(words)]))).toBe(words);
  expect(textOf(new Uint8Array([0xff, 0xfe, ...Buffer.from(words, "utf16le")]))).toBe(words);
  expect(textOf(new Uint8Array(Buffer.from(words, "latin1")))).toBe(words);
});

describe("rows", () => {
  test("land with their time and temperature; those that cannot be read are listed with number and reason", async () => {
    const text = [
      "Time,T",
      "2026-11-02 08:00,21.5",
      "",
      "2026-13-02 08:00,21.5",
      "2026-11-02 08:10,",
      "2026-11-02 08:15,lost",
      ",21.5",
      "2026-11-02 08:20,=1+1",
      "2026-11-02 08:25",
      "2026-11-02 08:30,22",
    ].join("\n");
    expect(await readAll(text, plain)).toEqual({
      rows: [
        [at("2026-11-02T08:00"), 21.5],
        [at("2026-11-02T08:10"), null],
        [at("2026-11-02T08:15"), "lost"],
        [at("2026-11-02T08:20"), "=1+1"],
        [at("2026-11-02T08:25"), null],
        [at("2026-11-02T08:30"), 22],
      ],
      refused: [
        { row: 4, reason: "time '2026-13-02 08:00' is no moment in the order year, month, day", lands: false },
        { row: 5, reason: "no temperature", lands: true },
        { row: 6, reason: "temperature 'lost' is no number", lands: true },
        { row: 7, reason: "no time", lands: false },
        { row: 8, reason: "temperature '=1+1' is no number", lands: true },
        { row: 9, reason: "no temperature", lands: true },
      ],
      shares: [1],
    });
  });

  test("°F lands in °C: the freezing and the boiling point of water, and where the scales meet", async () => {
    const text = "t,x\n2026-11-02,32\n2026-11-03,212\n2026-11-04,-40";
    const { rows } = await readAll(text, { ...plain, unit: "fahrenheit" });
    expect(rows.map(([, temperature]) => temperature)).toEqual([0, 100, -40]);
  });

  test("further columns come along: figures as figures, text as text whatever it begins with", async () => {
    const notes = ['=HYPERLINK("x")', "+1+cmd", "-2+3", "@sum", "\ttab", "fine", "", "12.5", "21 C"];
    const text = Papa.unparse([["t", "x", "note"], ...notes.map((note) => ["2026-11-02", "20", note])]);
    const { rows } = await readAll(text, { ...plain, others: [2] });
    expect(rows.map((row) => row[2])).toEqual([
      '=HYPERLINK("x")',
      "+1+cmd",
      "-2+3",
      "@sum",
      "\ttab",
      "fine",
      null,
      12.5,
      "21 C",
    ]);
  });

  test("a quoted cell with the separator and a line break in it", async () => {
    const { rows } = await readAll('t,x,n\n"2026-11-02","20","one, two\nthree"\n2026-11-03,21,', {
      ...plain,
      others: [2],
    });
    expect(rows).toEqual([
      [at("2026-11-02"), 20, "one, two\nthree"],
      [at("2026-11-03"), 21, null],
    ]);
  });
});

test("the first rows as they will land", async () => {
  const text = ["t,x", ...Array.from({ length: 60_000 }, (_, i) => `2026-11-02 08:00,${i}.5`)].join("\n");
  const preview = await previewReadings(text, plain, 3);
  expect(preview).toEqual({ rows: [0.5, 1.5, 2.5].map((one) => [at("2026-11-02T08:00"), one]), refused: [] });
});

describe("a long file: 100 000 rows, decimal commas, bad rows and a formula-like cell among them", () => {
  const bad = new Map([
    [17, "sonntags"],
    [50_000, ""],
    [99_999, "31.02.2026 10:00"],
  ]);
  const start = Date.UTC(2026, 0, 1);
  const lines = Array.from({ length: 100_000 }, (_, i) => {
    const date = new Date(start + i * 60_000);
    const figure = i === 4711 ? "=2+2" : `${20 + (i % 7)},${i % 10}`;
    return `${bad.get(i) ?? `${written.dmy(date)} ${clock(date)}`};${figure}`;
  });
  const text = ["Zeit;Temperatur °C", ...lines].join("\r\n");

  test("none is lost: each row lands or is refused, with its number", async () => {
    const { layout, ask } = guessLayout(text);
    expect(ask).toEqual([]);
    const { rows, refused, shares } = await readAll(text, layout);
    expect(rows.length + refused.filter(({ lands }) => !lands).length).toBe(100_000);
    expect(refused.map(({ row, lands }) => [row, lands])).toEqual([
      [19, false],
      [4713, true],
      [50_002, false],
      [100_001, false],
    ]);
    expect(rows[4710]).toEqual([expect.closeTo(25_569 + start / 86_400_000 + 4711 / 1440, 9), "=2+2"]);
    expect(rows[0]?.[1]).toBe(20);
    expect(rows.filter(([, temperature]) => typeof temperature === "number").length).toBe(99_996);
    expect(shares.length).toBeGreaterThan(5);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
  });

  test("cancel stops it before the next block", async () => {
    const stop = new AbortController();
    const shares: number[] = [];
    const run = async (): Promise<void> => {
      for await (const { share } of readReadings(text, guessLayout(text).layout, { signal: stop.signal })) {
        shares.push(share);
        if (shares.length === 2) stop.abort();
      }
    };
    await expect(run()).rejects.toMatchObject({ name: "AbortError" });
    expect(shares.length).toBe(2);
  });

  test("cancelled beforehand, nothing is read; cancelled at the very end, it is still cancelled", async () => {
    await expect(readAll(text, plain, AbortSignal.abort())).rejects.toMatchObject({ name: "AbortError" });
    const stop = new AbortController();
    const run = async (): Promise<void> => {
      for await (const { share } of readReadings("t,x\n2026-11-02,20", plain, { signal: stop.signal }))
        if (share === 1) stop.abort();
    };
    await expect(run()).rejects.toMatchObject({ name: "AbortError" });
  });
});
