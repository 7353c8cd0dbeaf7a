import { catalogue } from "../../functions/catalogue";
import type { AnyDefinition } from "../../functions/define";
import { Problem } from "../../functions/problem";
import { formats } from "../../taskpane/sheets/sheet";
import { SheetError } from "../boundary/cell";
import { evaluate, type Reply } from "../boundary/evaluate";
import { fetchBy, waitFor } from "../fetch";
import "../network/load";

fetchBy(
  "texts",
  async () => (await import("../../functions/texts")).texts,
  "the words of sources and cautions cannot be read",
);

/** A number that carries its format, as the platform spells it: until ExcelApi 1.19 as a kind of its own, since then as any number. */
interface WithFormat {
  readonly type: "Double" | "FormattedNumber";
  readonly basicValue: number;
  readonly numberFormat: string;
}
type Sent = number | string | boolean | WithFormat | CustomFunctions.Error;

/**
 * A cell as it arrives: an error object or a data type becomes what the boundary knows. An entity or a picture calls
 * its plain value an error, and so it is for arithmetic.
 */
const received = (cell: unknown): unknown => {
  if (typeof cell !== "object" || cell === null) return cell;
  if (cell instanceof CustomFunctions.Error) return new SheetError(cell.code);
  const { basicType, basicValue } = cell as { readonly basicType?: unknown; readonly basicValue?: unknown };
  if (basicType === "Error" || (cell as { readonly type?: unknown }).type === "Error")
    return new SheetError(String(basicValue));
  return basicValue === undefined ? cell : basicValue;
};

const isObject = (cell: unknown): boolean => typeof cell === "object" && cell !== null;

/**
 * An argument as it arrives: rows of cells, or null where it is left out. Anything else is the platform's record of
 * the call, which stands behind the arguments; where an older description of the functions is still cached, it slides
 * into the place of an optional argument. It is never read.
 */
const argument = (given: unknown): unknown => {
  if (!Array.isArray(given))
    return isObject(given) && !("basicValue" in (given as object)) ? undefined : received(given);
  const block = given as readonly (readonly unknown[])[];
  return block.some((row) => row.some(isObject)) ? block.map((row) => row.map(received)) : block;
};

/** How a number with a format is sent; undefined where it cannot be: older versions of the platform show it as an error. */
const kindWithFormat = (): WithFormat["type"] | undefined => {
  const { requirements } = Office.context;
  if (!requirements.isSetSupported("CustomFunctionsRuntime", "1.4")) return undefined;
  if (requirements.isSetSupported("ExcelApi", "1.19")) return "Double";
  return requirements.isSetSupported("ExcelApi", "1.16") ? "FormattedNumber" : undefined;
};

const errorOf = ({ code, message }: Problem): CustomFunctions.Error =>
  new CustomFunctions.Error(
    code === "#N/A" ? CustomFunctions.ErrorCode.notAvailable : CustomFunctions.ErrorCode.invalidValue,
    message,
  );

/** An answer as it is sent. One of a single cell that is a problem is thrown, with its words. */
const sent = ({ cells, unit }: Reply): Sent[][] => {
  const [only] = cells.length === 1 && cells[0]?.length === 1 ? cells[0] : [];
  // The platform's own class is what it wants thrown: only then do the words reach the cell.
  // eslint-disable-next-line @typescript-eslint/only-throw-error -- its types do not say that it is an Error
  if (only instanceof Problem) throw errorOf(only);
  const type = kindWithFormat();
  return cells.map((row, i) =>
    row.map((cell, j): Sent => {
      if (cell instanceof Problem) return errorOf(cell);
      if (type === undefined || typeof cell !== "number") return cell;
      const kind = unit(i, j);
      if (kind !== "date" && kind !== "date and time") return cell;
      return {
        type,
        basicValue: cell,
        numberFormat: kind === "date" ? formats.date : formats.moment,
      };
    }),
  );
};

/** A catalogue function as the platform calls it. It answers later only where something has to be fetched first. */
export const customFunction =
  (definition: AnyDefinition) =>
  (...given: readonly unknown[]): Sent[][] | Promise<Sent[][]> => {
    const args = given.slice(0, Object.keys(definition.parameters).length).map(argument);
    const answer = (): Sent[][] => sent(evaluate(definition, args));
    return waitFor(definition)?.then(answer) ?? answer();
  };

/** Tells the platform which code stands behind each function of functions.json. */
export const register = (): void => {
  for (const definition of catalogue) CustomFunctions.associate(definition.name, customFunction(definition));
};

// Once and at once: the platform's script keeps the list until its runtime starts, however that was started, and
// complains of every name that is told again. Without office.js, as when there is no network, there is nobody to tell.
if (typeof CustomFunctions !== "undefined") register();
