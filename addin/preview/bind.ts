import { BooleanNumber, type Nullable } from "@univerjs/core";
import {
  ArrayValueObject,
  AsyncObject,
  BaseFunction,
  BooleanValueObject,
  ErrorType,
  ErrorValueObject,
  FunctionType,
  NumberValueObject,
  StringValueObject,
  type BaseValueObject,
  type IFunctionInfo,
} from "@univerjs/engine-formula";
import { PREFIX, type AnyDefinition, type Answer, type Argument, type Parameter } from "../../functions/define";
import { Problem } from "../../functions/problem";
import type { Unit } from "../../functions/units";
import { takesInWords } from "../../functions/words";
import { formats } from "../../taskpane/sheets/sheet";
import { CellsAt, SheetError } from "../boundary/cell";
import { evaluate } from "../boundary/evaluate";
import "../carried";
import { mayWait, waitFor } from "../fetch";
import "../network/load";

const ERRORS: Readonly<Record<Problem["code"], ErrorType>> = { "#N/A": ErrorType.NA, "#VALUE!": ErrorType.VALUE };

/** The number format of a figure that only reads well in one. */
const patternOf = (unit: Unit): string =>
  unit === "date" ? formats.date : unit === "date and time" ? formats.moment : "";

const cellIn = (value: Nullable<BaseValueObject>): unknown => {
  if (!value || value.isNull()) return null;
  return value.isError() ? new SheetError(String(value.getValue())) : value.getValue();
};

/** An argument; `own` is the cell in which the formula stands, where that is known. */
const argumentIn = (value: BaseValueObject, own: { readonly row: number; readonly column: number }): unknown => {
  if (!(value instanceof ArrayValueObject)) return cellIn(value);
  const columns = value.getColumnCount();
  const cells = value.getArrayValue().map((row) => Array.from({ length: columns }, (_, column) => cellIn(row[column])));
  // What another function has made stands nowhere: the engine says of it that it stands where the formula does.
  const [row, column] = [value.getCurrentRow(), value.getCurrentColumn()];
  const isMade = row < 0 || column < 0 || (row === own.row && column === own.column);
  return isMade ? cells : new CellsAt(cells, row, column);
};

/** A problem's words travel with the error, and into its cell. */
export const problemOut = ({ code, message }: Problem): BaseValueObject =>
  ErrorValueObject.create(ERRORS[code], message).withCustomData({ message });

const cellOut = (answer: Answer, unit: Unit): BaseValueObject => {
  if (answer instanceof Problem) return problemOut(answer);
  if (typeof answer === "number") return NumberValueObject.create(answer, patternOf(unit));
  return typeof answer === "boolean" ? BooleanValueObject.create(answer) : StringValueObject.create(answer);
};

/**
 * One definition as a function of the engine. It takes the engine's own values: the engine's shorter way of adding
 * functions hands a blank over as 0 and an error as text, and turns answers that look like numbers into numbers.
 */
class BoundFunction extends BaseFunction {
  private readonly least: number;
  private readonly most: number;
  private readonly wanted: string;

  constructor(private readonly definition: AnyDefinition) {
    super(`${PREFIX}.${definition.name}`);
    const parameters: Parameter[] = Object.values(definition.parameters);
    this.least = parameters.filter(({ optional }) => !optional).length;
    this.most = parameters.length;
    const counts = this.least === this.most ? `${this.most}` : `${this.least} to ${this.most}`;
    this.wanted = `${counts} ${this.most === 1 ? "argument" : "arguments"}`;
  }

  /** Text in a formula stays text, as in other spreadsheets: "12%" is not 0.12. */
  override isArgumentsIgnoreNumberPattern(): boolean {
    return true;
  }

  /** The engine asks before it knows whether there is something to wait for. */
  override isAsync(): boolean {
    return mayWait(this.definition);
  }

  override calculate(...given: BaseValueObject[]): BaseValueObject | AsyncObject {
    if (given.length < this.least) {
      const missing = Object.keys(this.definition.parameters)[given.length];
      return problemOut(new Problem("#VALUE!", `${missing} is missing: ${this.name} takes ${this.wanted}`));
    }
    if (given.length > this.most) {
      return problemOut(new Problem("#VALUE!", `${this.name} takes ${this.wanted}: ${given.length} given`));
    }
    const waiting = waitFor(this.definition);
    return waiting ? new AsyncObject(waiting.then(() => this.answer(given))) : this.answer(given);
  }

  private answer(given: readonly BaseValueObject[]): BaseValueObject {
    const { cells, unit } = evaluate(
      this.definition,
      given.map((one) => argumentIn(one, this)),
    );
    const out = cells.map((row, i) => row.map((cell, j) => cellOut(cell, unit(i, j))));
    const rowCount = out.length;
    const columnCount = out[0]?.length ?? 0;
    if (rowCount === 1 && columnCount === 1) return out[0]?.[0] as BaseValueObject;
    return ArrayValueObject.create({
      calculateValueList: out,
      rowCount,
      columnCount,
      unitId: "",
      sheetId: "",
      row: -1,
      column: -1,
    });
  }
}

/** The functions for the engine, to be registered once the first workbook exists. */
export const bind = (catalogue: readonly AnyDefinition[]): BaseFunction[] =>
  catalogue.map((definition) => new BoundFunction(definition));

const shownArgument = (argument: Argument | undefined): string => {
  if (argument === undefined || argument === null) return "";
  if (Array.isArray(argument)) {
    const rows = argument as readonly (readonly (string | number | boolean | null)[])[];
    return `{${rows.map((row) => row.map(shownArgument).join(",")).join(";")}}`;
  }
  return typeof argument === "string" ? `"${argument}"` : String(argument).toUpperCase();
};

const detail = (parameter: Parameter): string =>
  `${parameter.about}: ${takesInWords(parameter)}${parameter.without === undefined ? "" : `. Left out: ${parameter.without}`}`;

/**
 * The engine shows an example as those of all arguments, joined with commas: what is left out at the end leaves none. Its
 * own copies, which it makes with `map`, are of this class too.
 */
class Joined<T> extends Array<T> {
  override join(sign?: string): string {
    const all = Array.from(this);
    while (all.at(-1) === "") all.pop();
    return all.join(sign);
  }
}

/** What the formula bar says while a function is typed. */
export const hints = (catalogue: readonly AnyDefinition[]): IFunctionInfo[] =>
  catalogue.map((definition) => ({
    functionName: `${PREFIX}.${definition.name}`,
    functionType: FunctionType.User,
    description: definition.summary,
    abstract: definition.summary,
    functionParameter: Joined.from(
      Object.entries(definition.parameters).map(([name, parameter], i) => ({
        name,
        detail: detail(parameter),
        example: shownArgument(definition.examples[0].given[i]),
        require: parameter.optional ? BooleanNumber.FALSE : BooleanNumber.TRUE,
        repeat: BooleanNumber.FALSE,
      })),
    ),
  }));
