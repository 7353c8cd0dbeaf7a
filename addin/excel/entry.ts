import type { CellContent, CellState } from "../../taskpane/workbook";

/** What is handed to Excel for a cell. A leading apostrophe is Excel's own mark for text, and is not part of it. */
export type Entry = string | number | boolean;

/**
 * Text that Excel would take for something else: a formula, an error, TRUE, or, where there is a digit in it, a number
 * or a date. Longer text cannot be one of these.
 */
const LONGEST_NUMBER_OR_DATE = 40;
const isTakenForElse = (text: string): boolean =>
  /^[=+\-@'#\t\r\n]/.test(text) ||
  /^\s*(true|false)\s*$/i.test(text) ||
  (/\d/.test(text) && text.length <= LONGEST_NUMBER_OR_DATE) ||
  /^\s+[=+\-@]/.test(text);

export const asText = (text: string): string => (isTakenForElse(text) ? `'${text}` : text);

export const entryOf = (content: CellContent | undefined): Entry => {
  if (content === null || content === undefined) return "";
  if (typeof content === "object") return content.formula;
  return typeof content === "string" ? asText(content) : content;
};

/** A cell as Excel told it. Text that starts with "=" is told twice alike; a formula never answers its own text. */
export const stateOf = (formula: unknown, value: unknown, type: string, format: unknown): CellState => ({
  ...(typeof formula === "string" && formula.startsWith("=") && formula !== value ? { formula } : {}),
  value: type === "Empty" ? null : type === "Error" ? { error: String(value) } : (value as number | string | boolean),
  ...(typeof format === "string" && format !== "General" ? { format } : {}),
});

/** The entry that brings a cell back to a state that it was in; nothing for a cell that another one fills. */
export const entryBack = ({ formula, value, spilledFrom }: CellState): Entry => {
  if (spilledFrom || value === null) return formula ?? "";
  if (formula !== undefined) return formula;
  return typeof value === "object" ? value.error : typeof value === "string" ? asText(value) : value;
};
