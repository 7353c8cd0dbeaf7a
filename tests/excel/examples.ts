import { evaluate } from "../../addin/boundary/evaluate";
import { serialOfIso } from "../../functions/dates";
import type { AnyDefinition, Argument, Example, Parameter, Value } from "../../functions/define";
import type { Sent } from "./runtime";

/** A value as Excel sends it where it has a data type: JSON within JSON. */
export const rich = (value: unknown) => ({
  value: JSON.stringify(
    typeof value === "number"
      ? { type: "Double", basicType: "Double", basicValue: value, numberFormat: "0.00" }
      : { type: "String", basicType: "String", basicValue: value },
  ),
});
const isDated = (parameter: Parameter, column: number): boolean =>
  parameter.reads === "cell"
    ? parameter.kind === "date"
    : parameter.columns[Math.min(column, parameter.columns.length - 1)]?.[1].kind === "date";

/** An argument as Excel sends it: a block of cells, dates as serial numbers, null where it is left out. */
const sent = (
  argument: Argument,
  parameter: Parameter,
  dress: (value: unknown) => unknown = (value) => value,
): unknown => {
  if (argument === null) return null;
  const block = Array.isArray(argument) ? (argument as readonly (readonly (Value | null)[])[]) : [[argument as Value]];
  return block.map((row) =>
    row.map((value, i) => {
      const plain = typeof value === "string" && isDated(parameter, i) ? (serialOfIso(value) ?? value) : value;
      return plain === null || typeof plain === "boolean" ? plain : dress(plain);
    }),
  );
};
/** The arguments of an example as Excel sends them. */
export const argumentsOf = (
  definition: AnyDefinition,
  { given }: Example,
  dress?: (value: unknown) => unknown,
): unknown[] => {
  const parameters = Object.values(definition.parameters);
  return parameters.map((parameter, i) => sent(given[i] ?? null, parameter, dress));
};
const rowsOf = ({ gives }: Example): readonly (readonly Value[])[] =>
  Array.isArray(gives) ? (gives as readonly (readonly Value[])[]) : [[gives as Value]];

/** Whether what Excel gets is what the example says, dates as Excel wants them. */
export const expectAnswer = (
  definition: AnyDefinition,
  example: Example,
  answer: Sent,
  type: string | undefined,
): void => {
  const words = typeof answer.value === "string" ? answer.value : "";
  expect([definition.name, Boolean(answer.failed), words]).toEqual([definition.name, false, ""]);
  const cells = answer.value as unknown[][];
  const reply = evaluate(definition, example.given);
  const wanted = rowsOf(example);
  expect([cells.length, cells[0]?.length]).toEqual([example.rows ?? wanted.length, wanted[0]?.length]);
  expect(new Set(cells.map((row) => row.length)).size).toBe(1);
  wanted.forEach((row, i) =>
    row.forEach((value, j) => {
      const kind = reply.unit(i, j);
      const serial =
        (kind === "date" || kind === "date and time") && typeof value === "string" ? serialOfIso(value) : undefined;
      const got = cells[i]?.[j];
      if (serial !== undefined && type !== undefined) {
        const format = kind === "date" ? "yyyy-mm-dd" : "yyyy-mm-dd hh:mm";
        expect(got).toEqual({ type, basicValue: expect.closeTo(serial, 5) as number, numberFormat: format });
      } else if (typeof value === "number" || serial !== undefined) {
        expect(typeof got).toBe("number");
        expect(Math.abs((got as number) - (serial ?? (value as number)))).toBeLessThanOrEqual(
          Math.max(example.within, 1e-9),
        );
      } else {
        expect(got).toBe(value);
      }
    }),
  );
};
