import { isUtf8 } from "node:buffer";
import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { catalogue } from "../../functions/catalogue";
import { isoOf } from "../../functions/dates";
import { readCsv } from "../file/csv";
import { cellDataOf } from "../preview/cellData";
import { startHeadless } from "../preview/headless";
import { evaluateFormulas, type FormulaCell } from "../preview/formulas";

const USAGE =
  "give a formula: npm run -s formula -- [--csv FILE] [--json] '=VIV.LAPSE(24,300,1400)', or - to read one a line";

/** Far more rows than a year of readings has, and few enough that a formula over a whole column stays quick. */
const ROWS = 131_072;
const COLUMNS = 1_024;

/** Something that the user can put right. */
class InputError extends Error {}

const inWords = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).split("\n")[0] ?? "";

const bytesOf = (file: string | number): Buffer => {
  try {
    return readFileSync(file);
  } catch (error) {
    throw new InputError(`${file} cannot be read: ${inWords(error)}`);
  }
};

/** Bytes that are no UTF-8, or hold a NUL, are a picture or a text of another kind: guessing would make up cells. */
const read = (file: string | number): string => {
  const bytes = bytesOf(file);
  if (!isUtf8(bytes) || bytes.includes(0)) {
    throw new InputError(`${file === 0 ? "the input" : file} is no UTF-8 text: save it as CSV in UTF-8`);
  }
  return bytes.toString("utf8");
};

/** What the engine's own errors mean; a VIV function's come with their words. */
const MEANING: Readonly<Record<string, string>> = {
  "#NAME?": "no function or name is called so",
  "#DIV/0!": "something is divided by 0",
  "#REF!": "a cell or a range that is not there",
  "#NUM!": "a number out of reach",
  "#N/A": "not available",
  "#VALUE!": "something is given that cannot be used",
};

const wordsOf = ({ error, message }: Extract<FormulaCell, { readonly error: string }>): string =>
  message === "" ? (MEANING[error] ?? "an error") : message;

const plain = (cell: FormulaCell): string => {
  if ("date" in cell) return isoOf(cell.date);
  if ("error" in cell) return `${cell.error} ${wordsOf(cell)}`;
  const { value } = cell;
  if (value === null) return "";
  return typeof value === "boolean" ? String(value).toUpperCase() : String(value).replace(/[\t\r\n]+/g, " ");
};

const json = (cell: FormulaCell): unknown => {
  if ("date" in cell) return cell.date;
  if ("error" in cell) return { error: cell.error, message: wordsOf(cell) };
  return cell.value === "" ? null : cell.value;
};

/** The formulas of the command line: one an argument, or one a line of standard input. */
const formulasOf = (given: readonly string[]): string[] => {
  const formulas = given.flatMap((one) => (one === "-" ? read(0).split(/\r?\n/) : [one])).map((one) => one.trim());
  const filled = formulas.filter((one) => one !== "");
  if (filled.length === 0) throw new InputError(USAGE);
  const wrong = filled.find((one) => !one.startsWith("="));
  if (wrong !== undefined) throw new InputError(`'${wrong}' is no formula: start it with =`);
  return filled;
};

const options = () => {
  try {
    return parseArgs({ allowPositionals: true, options: { csv: { type: "string" }, json: { type: "boolean" } } });
  } catch (error) {
    throw new InputError(`${inWords(error)}; ${USAGE}`);
  }
};

const run = async (): Promise<string> => {
  const { values, positionals } = options();
  const formulas = formulasOf(positionals);
  const cells = values.csv === undefined ? [] : readCsv(read(values.csv));
  const engine = startHeadless(catalogue, {
    sheets: {
      sheet: {
        id: "sheet",
        name: "Sheet1",
        rowCount: Math.max(ROWS, cells.length),
        columnCount: Math.max(COLUMNS, ...cells.map((row) => row.length + 1)),
        cellData: cellDataOf(cells),
      },
    },
  });
  const answers = await evaluateFormulas(engine, formulas);
  const unread = answers.indexOf(undefined);
  if (unread >= 0)
    throw new InputError(`${formulas[unread]} cannot be read: look at its brackets, commas and quotation marks`);
  const lines = answers.flatMap((rows = []) =>
    values.json ? [JSON.stringify(rows.map((row) => row.map(json)))] : rows.map((row) => row.map(plain).join("\t")),
  );
  return `${lines.join("\n")}\n`;
};

// The engine's timers would keep the process alive: it ends when all is written.
run().then(
  (text) => process.stdout.write(text, () => process.exit(0)),
  (error: unknown) => {
    const words = error instanceof InputError ? error.message : `this should not happen: ${inWords(error)}`;
    process.stderr.write(`${words.replace(/[\r\n]+/g, " ")}\n`, () => process.exit(2));
  },
);
