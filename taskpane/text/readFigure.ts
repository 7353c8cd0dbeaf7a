import type { Decimal } from "./form";

const POINT = /^\s*([-+−]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)\s*(?:°\s*)?[CF]?\s*$/i;
const COMMA = /^\s*([-+−]?(?:\d+,?\d*|,\d+)(?:e[-+]?\d+)?)\s*(?:°\s*)?[CF]?\s*$/i;

/** A figure with that decimal mark, a unit behind it allowed; undefined where the text is none. */
export const readFigure = (text: string, decimal: Decimal): number | undefined => {
  const found = (decimal === "," ? COMMA : POINT).exec(text)?.[1];
  return found === undefined ? undefined : Number(found.replace(",", ".").replace("−", "-"));
};
