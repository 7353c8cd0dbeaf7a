import { guessLayout } from "../../taskpane/actions/readings/guessLayout";
import type { Layout } from "../../taskpane/actions/readings/layout";
import { readReadings, type Landed, type Refused } from "../../taskpane/actions/readings/readReadings";

/** A whole file, read to its end. */
export const readAll = async (
  text: string,
  layout: Layout = guessLayout(text).layout,
  signal?: AbortSignal,
): Promise<{ rows: (readonly Landed[])[]; refused: Refused[]; shares: number[] }> => {
  const all = { rows: [] as (readonly Landed[])[], refused: [] as Refused[], shares: [] as number[] };
  for await (const { rows, refused, share } of readReadings(text, layout, { signal })) {
    for (const row of rows) all.rows.push(row);
    all.refused.push(...refused);
    all.shares.push(share);
  }
  return all;
};

const two = (figure: number): string => String(figure).padStart(2, "0");

/** How a date is written in each order. */
export const written = {
  ymd: (date: Date) => `${date.getUTCFullYear()}-${two(date.getUTCMonth() + 1)}-${two(date.getUTCDate())}`,
  dmy: (date: Date) => `${two(date.getUTCDate())}.${two(date.getUTCMonth() + 1)}.${date.getUTCFullYear()}`,
  mdy: (date: Date) => `${date.getUTCMonth() + 1}/${date.getUTCDate()}/${date.getUTCFullYear()}`,
} as const;

export const clock = (date: Date): string => `${two(date.getUTCHours())}:${two(date.getUTCMinutes())}`;
