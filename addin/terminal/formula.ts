import { isUtf8 } from "node:buffer";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { catalogue } from "../../functions/catalogue";
import { isoOf } from "../../functions/dates";
import { NoTwin } from "../../functions/nativeCall";
import { nativeFormulas } from "../../taskpane/native/native";
import type { DateOrder, Decimal, Form } from "../../taskpane/text/form";
import { formWords, guessForm } from "../../taskpane/text/guessForm";
import { misfitsInWords, readTable, type TextCell } from "../../taskpane/text/readTable";
import type { FormulaCell } from "../preview/formulas";

const USAGE =
  "give a formula: npm run -s formula -- [--csv FILE [--dates day-month-year] [--decimal comma]] [--json] [--native] " +
  "'=VIV.LAPSE(24,300,1400)', or - to read one a line; or --help NAME for a page of the handbook";

/** Far more rows than a year of readings has, and few enough that a formula over a whole column stays quick. */
const ROWS = 131_072;
const COLUMNS = 1_024;

/** Something that the user can put right. */
class InputError extends Error {}

const inWords = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).split("\n")[0] ?? "";

/** Standard input has a number in place of a name. */
const called = (file: string | number): string => (typeof file === "number" ? "the input" : file);

const bytesOf = (file: string | number): Buffer => {
  try {
    return readFileSync(file);
  } catch (error) {
    throw new InputError(`${called(file)} cannot be read: ${inWords(error)}`);
  }
};

/** Bytes that are no UTF-8, or hold a NUL, are a picture or a text of another kind: guessing would make up cells. */
const read = (file: string | number): string => {
  const bytes = bytesOf(file);
  if (!isUtf8(bytes) || bytes.includes(0)) {
    throw new InputError(`${called(file)} is no UTF-8 text: save it as CSV in UTF-8`);
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

const OPTIONS = {
  csv: { type: "string" },
  dates: { type: "string" },
  decimal: { type: "string" },
  json: { type: "boolean" },
  native: { type: "boolean" },
  help: { type: "boolean" },
} as const;

const options = () => {
  try {
    return parseArgs({ allowPositionals: true, options: OPTIONS });
  } catch (error) {
    // What Node adds of other ways to begin with a minus helps nobody here.
    throw new InputError(`${inWords(error).replace(/\. To specify .*/, "")}; ${USAGE}`);
  }
};

const ORDERS: Readonly<Record<string, DateOrder>> = {
  "year-month-day": "ymd",
  "day-month-year": "dmy",
  "month-day-year": "mdy",
};
const MARKS: Readonly<Record<string, Decimal>> = { point: ".", comma: "," };

/** One of the words that an option takes. */
const oneOf = <T>(words: Readonly<Record<string, T>>, option: string, given: string | undefined): T | undefined => {
  if (given === undefined) return undefined;
  const found = words[given];
  if (found === undefined) throw new InputError(`--${option} ${given}: give ${Object.keys(words).join(", ")}`);
  return found;
};

/** The cells of a CSV file, and what was guessed of it. Where two guesses are as good, the user has to say. */
const cellsOf = (file: string, said: Partial<Form>): { cells: readonly (readonly TextCell[])[]; said: string } => {
  const text = read(file);
  const { form, ambiguous } = guessForm(text, said);
  if (ambiguous !== undefined) {
    throw new InputError(
      `${file}: '${ambiguous}' can be read in more than one way: say --dates day-month-year or another order`,
    );
  }
  const { cells, misfits } = readTable(text, form);
  const guessed = `${file}: read with ${formWords(form)} (--dates and --decimal change that)`;
  return { cells, said: [guessed, ...misfitsInWords(misfits)].join("; ") };
};

interface Answered {
  readonly out: string;
  /** What was guessed of a file. */
  readonly said?: string;
  /** Whether any answer is an error. */
  readonly failed: boolean;
}

/** The formula in functions that every spreadsheet has: a line for each of its cells, in reading order. */
const nativeOf = (formula: string): string => {
  const native = nativeFormulas(catalogue, formula);
  const { rows, columns } = native.extent ?? { rows: 1, columns: 1 };
  return Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_, column) => native.cell(row, column, row === rows - 1)).join("\t"),
  ).join("\n");
};

const nativeAnswers = (formulas: readonly string[]): Answered => {
  let failed = false;
  const lines = formulas.map((formula) => {
    try {
      return nativeOf(formula);
    } catch (error) {
      if (!(error instanceof NoTwin)) throw error;
      failed = true;
      return `${formula} has no native twin: ${error.message}`;
    }
  });
  return { out: `${lines.join("\n")}\n`, failed };
};

/**
 * The page of a function, by its name with or without the prefix, or another page of the handbook by its path or title. Of
 * none: how the terminal is asked, and every function.
 */
const helpOn = async (names: readonly string[]): Promise<Answered> => {
  const [{ pagesOf }, { writtenIn }, { asText }, { evaluate }] = await Promise.all([
    import("../../taskpane/handbook/pages"),
    import("../handbook/written"),
    import("../handbook/text"),
    import("../boundary/evaluate"),
  ]);
  const pages = pagesOf(writtenIn(join(__dirname, "..", "..")), evaluate);
  const plain = (name: string): string =>
    name
      .trim()
      .toLowerCase()
      .replace(/^=?viv\./, "");
  const found = (names.length === 0 ? ["functions/index"] : names).map((name) => {
    const page = pages.find(({ path, title }) =>
      [path, path.split("/").at(-1) ?? "", title].some((one) => plain(one) === plain(name)),
    );
    if (!page) {
      throw new InputError(
        `the handbook has no page ${name}: give the name of a function or of a sheet, or ${pages
          .filter(({ path }) => !path.includes("/"))
          .map(({ path }) => path)
          .join(", ")}`,
      );
    }
    return asText(page);
  });
  const how = names.length === 0 ? [`${USAGE.replace(/^g/, "G")}.\n`] : [];
  return { out: [...how, ...found].join("\n"), failed: false };
};

const run = async (): Promise<Answered> => {
  const { values, positionals } = options();
  if (values.help) return helpOn(positionals);
  const formulas = formulasOf(positionals);
  if (values.native) return nativeAnswers(formulas);
  const dateOrder = oneOf(ORDERS, "dates", values.dates);
  const decimal = oneOf(MARKS, "decimal", values.decimal);
  const said = { ...(dateOrder ? { dateOrder } : {}), ...(decimal ? { decimal } : {}) };
  const file = values.csv === undefined ? undefined : cellsOf(values.csv, said);
  const cells = file?.cells ?? [];
  // The engine is most of what there is to load: a page, a twin and what cannot be read do without. Of the rest it is the sheets,
  // which only the handbook's pages are made of.
  const [{ startHeadless }, { cellDataOf }, { evaluateFormulas }] = await Promise.all([
    import("../preview/headless"),
    import("../preview/cellData"),
    import("../preview/formulas"),
  ]);
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
  return {
    out: `${lines.join("\n")}\n`,
    ...(file ? { said: file.said } : {}),
    failed: answers.some((rows = []) => rows.some((row) => row.some((cell) => "error" in cell))),
  };
};

const oneLine = (words: string): string => `${words.replace(/[\r\n]+/g, " ")}\n`;

// The engine's timers would keep the process alive: it ends when all is written. 1: an answer is an error; 2: no answers.
run().then(
  ({ out, said, failed }) => {
    if (said !== undefined) process.stderr.write(oneLine(said));
    process.stdout.write(out, () => process.exit(failed ? 1 : 0));
  },
  (error: unknown) => {
    const words = error instanceof InputError ? error.message : `this should not happen: ${inWords(error)}`;
    process.stderr.write(oneLine(words), () => process.exit(2));
  },
);
