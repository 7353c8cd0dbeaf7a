import type { Chart } from "../sheets/sheet";
import { tones } from "./tones";

/** A series of a spreadsheet program's own chart. `line` is solid, or tells its lines apart where colours do not print. */
export interface PlainSeries {
  readonly name: string;
  readonly values: string;
  readonly bar: boolean;
  readonly colour: string;
  readonly dash: number;
  /** pt */
  readonly weight: number;
}

/**
 * What a spreadsheet program's own chart can show of ours. A band is two lines, low and high, of one colour, and its likely line: areas
 * stacked on one another, the only filled band, need a column of differences and go wrong where a temperature falls
 * below zero. Stages and ticks are words and marks, which such a chart would plot as 0: they stand in the sheet's table.
 */
export const plainSeries = ({ series }: Chart): PlainSeries[] =>
  series.flatMap((one, i): PlainSeries[] => {
    const common = { colour: tones[i % tones.length] ?? "#000000", dash: i, bar: false, name: one.name };
    switch (one.draw) {
      case "line":
        return [{ ...common, values: one.values, weight: 2 }];
      case "bar":
        return [{ ...common, values: one.values, bar: true, weight: 2 }];
      case "threshold":
        return [{ ...common, values: one.values, colour: "#000000", dash: 1, weight: 1.25 }];
      case "band":
        return [
          ...(one.likely === undefined ? [] : [{ ...common, values: one.likely, weight: 2.25 }]),
          { ...common, name: `${one.name}: high`, values: one.high, weight: one.likely === undefined ? 2.25 : 1 },
          { ...common, name: `${one.name}: low`, values: one.low, weight: 1 },
        ];
      case "ticks":
      case "stages":
        return [];
    }
  });
