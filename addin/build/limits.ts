import type { AnyDefinition, CellParameter } from "../../functions/define";

/** The ends of the limits of every argument, by "LAPSE.temperature" or, of a column, "STATIONRANK.stations.latitude". */
export type Ends = Readonly<Record<string, readonly [least: number, most: number]>>;

/** The limits as they stand in the code; but dates, whose limits are the spreadsheet's and stand once. */
export const endsOf = (catalogue: readonly AnyDefinition[]): Ends =>
  Object.fromEntries(
    catalogue.flatMap(({ name, parameters }) =>
      Object.entries(parameters).flatMap(([key, parameter]) => {
        const cells: readonly (readonly [string, CellParameter])[] =
          parameter.reads === "cell" ? [["", parameter]] : parameter.columns;
        return cells.flatMap(([column, { limits, kind }]) =>
          limits && kind !== "date"
            ? [[[name, key, column].filter(Boolean).join("."), [limits.least, limits.most] as const] as const]
            : [],
        );
      }),
    ),
  );

/** What was agreed, with the limits of arguments that are new: what stands there already does not change by itself. */
export const agreed = (before: Ends, catalogue: readonly AnyDefinition[]): Ends => ({
  ...endsOf(catalogue),
  ...before,
});
