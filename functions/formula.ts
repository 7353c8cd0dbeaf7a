import { dateOf, serialOfIso } from "./dates";
import { PREFIX, type AnyDefinition, type Argument, type Example, type Parameter, type Value } from "./define";

const text = (words: string): string => `"${words.replaceAll('"', '""')}"`;

const literal = (value: Value): string => {
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return typeof value === "number" ? String(value).toUpperCase() : text(value);
};

/** "DATE(2026,10,5)", and "+TIME(8,30,0)" where there is a time of day. */
const dateCall = (serial: number): string => {
  const day = dateOf(serial);
  const call = `DATE(${day.getFullYear()},${day.getMonth() + 1},${day.getDate()})`;
  const seconds = Math.round((serial - Math.floor(serial)) * 86_400);
  if (seconds === 0) return call;
  return `${call}+TIME(${Math.floor(seconds / 3600)},${Math.floor(seconds / 60) % 60},${seconds % 60})`;
};

/**
 * A block of cells as an array: it may hold no function and no blank, so a date stays ISO text and a blank is "",
 * which the functions read as the date and as the blank.
 */
const array = (rows: readonly (readonly (Value | null)[])[]): string =>
  `{${rows.map((row) => row.map((value) => literal(value ?? "")).join(",")).join(";")}}`;

const argument = (given: Argument, parameter: Parameter): string => {
  if (given === null) return "";
  if (typeof given === "object") return array(given);
  const isDate = parameter.unit === "date" || parameter.unit === "date and time";
  const serial = isDate && typeof given === "string" ? serialOfIso(given) : undefined;
  return serial === undefined ? literal(given) : dateCall(serial);
};

/** An example as a keeper would type it, in English with commas: "=VIV.LAPSE(24,300,1400)". */
export const formulaOf = ({ name, parameters }: AnyDefinition, { given }: Pick<Example, "given">): string => {
  const kinds = Object.values(parameters);
  const typed = given.map((one, i) => argument(one, kinds[i] as Parameter));
  while (typed.at(-1) === "") typed.pop();
  return `=${PREFIX}.${name}(${typed.join(",")})`;
};
