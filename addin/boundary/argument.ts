import type { AnyDefinition, CellParameter, Parameter, RangeParameter, Values } from "../../functions/define";
import { blockOf, CellsAt, type Block } from "./cell";

/** A parameter and the block of cells that is given for it. */
export interface Argument<P extends Parameter = Parameter> {
  readonly name: string;
  readonly parameter: P;
  readonly block: Block;
  /** Of an excerpt: the row of each of its entries in the whole. */
  readonly rows?: readonly number[];
  /** Where its cells stand on the sheet, where that is known. */
  readonly at: CellsAt | undefined;
  /** Its name, for a message. */
  readonly place: () => string;
}

/** What a definition's calls have in common, worked out once: a column may be a hundred thousand calls of a cell each. */
interface Form {
  readonly parameters: readonly (readonly [name: string, parameter: Parameter])[];
  /** A place for every argument. Its copies are of one shape to the engine, whose compiled code so outlasts a call. */
  readonly unread: Readonly<Values>;
}

const forms = new WeakMap<AnyDefinition, Form>();

const formOf = (definition: AnyDefinition): Form => {
  const known = forms.get(definition);
  if (known) return known;
  const parameters = Object.entries(definition.parameters);
  const form = { parameters, unread: Object.fromEntries(parameters.map(([name]) => [name, undefined])) };
  forms.set(definition, form);
  return form;
};

export const argumentsOf = (definition: AnyDefinition, given: readonly unknown[]): readonly Argument[] =>
  formOf(definition).parameters.map(([name, parameter], i) => {
    const one = given[i];
    const at = one instanceof CellsAt ? one : undefined;
    return { name, parameter, block: blockOf(at ? at.cells : one), at, place: () => name };
  });

/** A place for the value of every argument, none of them read yet. */
export const unreadValues = (definition: AnyDefinition): Values => ({ ...formOf(definition).unread });

export const isUnits = (argument: Argument): argument is Argument<CellParameter> => argument.parameter.kind === "units";

export const isRange = (argument: Argument): argument is Argument<RangeParameter> =>
  argument.parameter.reads === "range";

/** Whether the function answers for each of its cells. */
export const isSpread = (argument: Argument): argument is Argument<CellParameter> =>
  argument.parameter.reads === "cell" && argument.parameter.kind !== "units";

export const isSingle = ({ block }: { readonly block: Block }): boolean => block.length === 1 && block[0].length === 1;
