import { PREFIX, type AnyDefinition, type Argument, type Parameter, type Value } from "../../functions/define";
import type { UseCell } from "./grid";
import { roleOf, type Role } from "./role";

/** An argument of the example, and where it stands. */
export interface Given {
  readonly name: string;
  readonly parameter: Parameter;
  readonly argument: Argument;
  readonly role: Role;
}

export const asCell = (value: Value | null, { unit }: Pick<Parameter, "unit">): UseCell =>
  value === "" || value === null
    ? null
    : typeof value === "string" && (unit === "date" || unit === "date and time")
      ? { day: value }
      : value;

export const isBlock = (argument: Argument): argument is readonly (readonly (Value | null)[])[] =>
  Array.isArray(argument);
export const flat = (argument: Argument): readonly (Value | null)[] =>
  isBlock(argument) ? argument.flat() : [argument];

/** What the first example is given; with a role for each argument. */
export const givenTo = (definition: AnyDefinition): readonly Given[] =>
  definition.examples[0].given.map((argument, i) => {
    const [name, parameter] = Object.entries(definition.parameters)[i] as [string, Parameter];
    return { name, parameter, argument, role: roleOf(definition, name) };
  });

/** The formula; each argument as it is written, a blank as "", a word of the formula's own as itself. */
export const call = (
  definition: AnyDefinition,
  given: readonly Given[],
  written: ReadonlyMap<string, string>,
): string => {
  const all = given.map(({ name, argument, role }) => {
    if (argument === null) return '""';
    return role === "word" ? `"${String(argument)}"` : (written.get(name) ?? '""');
  });
  return `=${PREFIX}.${definition.name}(${all.join(",")})`;
};
