import { cautions, type CautionKey } from "../../functions/cautions";
import type { Page } from "./page";

/** Text that holds no Markdown, for a place where Markdown is read. */
export const plain = (text: string): string => text.replace(/[\\`*_{}[\]<>|~#]/g, "\\$&").replace(/\s*\n\s*/g, " ");

export const linkTo = ({ path, title }: Pick<Page, "path" | "title">): string => `[${plain(title)}](${path})`;

export const points = (lines: readonly string[]): string => lines.map((line) => `- ${line}`).join("\n");

/** A table of Markdown cells; the columns that `right` names stand to the right, as figures do. */
export const table = (
  head: readonly string[],
  rows: readonly (readonly string[])[],
  right: readonly number[] = [],
): string =>
  [head, head.map((_, i) => (right.includes(i) ? "---:" : "---")), ...rows]
    .map((cells) => `| ${cells.join(" | ")} |`)
    .join("\n");

/** Cautions, each with the word: a colour alone says nothing. */
export const cautionLines = (keys: readonly CautionKey[]): string =>
  keys.map((key) => `> **Caution.** ${plain(cautions[key])}`).join("\n\n");

/** Paragraphs, tables and lists with a free line between; what is empty is left out. */
export const together = (...parts: readonly string[]): string => parts.filter((part) => part !== "").join("\n\n");

export const code = (lines: string): string => `\`\`\`\n${lines}\n\`\`\``;
