import { useMemo } from "react";
import { isoOf } from "../../functions/dates";
import { formOf, type OpenedFile } from "../actions/openFile";
import { dateOrders, decimals, decimalWords, orderWords, separators, separatorWords } from "../text/form";
import { firstRows } from "../text/pieces";
import { readMoment } from "../text/readMoment";
import { readTable, type TextCell } from "../text/readTable";
import { textOf } from "../text/textOf";
import { Select } from "../components/Select";
import { FirstRows } from "./FirstRows";
import { SmallTitle, Words } from "./Parts";

const SHOWN_ROWS = 6;

const shown = (cell: TextCell | undefined): string => {
  if (cell === null || cell === undefined) return "";
  if (typeof cell === "object") return isoOf(cell.date).replace("T", " ");
  return typeof cell === "boolean" ? String(cell).toUpperCase() : String(cell);
};

interface CsvFormProps {
  readonly file: OpenedFile;
  readonly onSay: (said: OpenedFile["said"]) => void;
}

/** How a CSV file is read: guessed, shown with its first rows, and changed where it is wrong. */
export const CsvForm = ({ file, onSay }: CsvFormProps) => {
  const guess = useMemo(() => formOf(file), [file]);
  if (!guess) return null;
  const { form, ambiguous } = guess;
  const { said = {} } = file;
  const text = textOf(file.bytes);
  // Put together anew from the first rows alone: a long file is read once, when it is opened.
  const start = firstRows(text, form.separator, SHOWN_ROWS)
    .map((row) => row.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(form.separator))
    .join("\n");
  const orders = dateOrders
    .map((order) => ({ order, moment: ambiguous === undefined ? undefined : readMoment(ambiguous, order) }))
    .filter(({ moment }) => ambiguous === undefined || moment !== undefined)
    .map(
      ({ order, moment }) => [order, `${orderWords[order]}${moment ? `: ${isoOf(Math.floor(moment))}` : ""}`] as const,
    );
  return (
    <>
      <SmallTitle>How {file.name} is read</SmallTitle>
      <Words quiet>This has been guessed. Change what is wrong.</Words>
      <Select
        label="Order of the date"
        value={ambiguous === undefined ? form.dateOrder : undefined}
        options={orders}
        first={ambiguous === undefined ? undefined : "please choose"}
        warning={ambiguous === undefined ? undefined : `"${ambiguous}" can be read in more than one way.`}
        onChoose={(dateOrder) => dateOrder && onSay({ ...said, dateOrder })}
      />
      <Select
        label="Decimal mark"
        value={form.decimal}
        options={decimals.map((decimal) => [decimal, decimalWords[decimal]] as const)}
        onChoose={(decimal) => decimal && onSay({ ...said, decimal })}
      />
      <Select
        label="Between cells"
        value={form.separator}
        options={separators.map((separator) => [separator, separatorWords[separator]] as const)}
        onChoose={(separator) => separator && onSay({ ...said, separator })}
      />
      {ambiguous === undefined && <FirstRows rows={readTable(start, form).cells.map((row) => row.map(shown))} />}
    </>
  );
};
