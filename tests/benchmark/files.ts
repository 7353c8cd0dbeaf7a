import Papa from "papaparse";
import { isoOf } from "../../functions/dates";
import { guessLayout } from "../../taskpane/actions/readings/guessLayout";
import { readReadings, type Landed } from "../../taskpane/actions/readings/readReadings";
import { START, temperatureAt, YEAR } from "./logs";
import { agree, race, type Table } from "./race";

const text = [
  "Time,Temperature (°C)",
  ...Array.from(
    { length: YEAR },
    (_, i) => `${isoOf(START + i / 1440).replace("T", " ")},${temperatureAt(i).toFixed(1)}`,
  ),
].join("\n");

const alone = (): string[][] => Papa.parse<string[]>(text, { delimiter: "," }).data;
const toCells = async (): Promise<(readonly Landed[])[]> => {
  const cells: (readonly Landed[])[] = [];
  for await (const { rows } of readReadings(text, guessLayout(text).layout)) for (const row of rows) cells.push(row);
  return cells;
};

export const tables = async (): Promise<Table[]> => {
  const cells = await toCells();
  agree("rows of the file", cells.length, YEAR, 0);
  agree("last temperature", cells.at(-1)?.[1] as number, Number(alone().at(-1)?.[1]), 0);
  const papaparse = "papaparse alone: text to text";
  return [
    {
      title: `A file of 525 600 rows (${(text.length / 1e6).toFixed(0)} MB) to cells`,
      lines: await race(
        [
          { what: papaparse, run: alone },
          { what: "guessed, parsed, read as times and figures", run: toCells, against: papaparse },
        ],
        5,
        2,
      ),
    },
  ];
};
