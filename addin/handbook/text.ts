import { lexer, type Token, type Tokens } from "marked";
import type { Page } from "../../taskpane/handbook/page";

const WIDTH = 100;

const unescaped = (text: string): string =>
  text
    .replace(/&lt;/g, "<")
    .replace(/&gt;/g, ">")
    .replace(/&quot;/g, '"')
    .replace(/&#39;/g, "'")
    .replace(/&amp;/g, "&");

/** The words of a line, without emphasis, links and pictures. */
const words = (tokens: readonly Token[] = []): string =>
  tokens
    .map((token) => {
      if (token.type === "image") return "";
      if (token.type === "br") return "\n";
      const inner = (token as Partial<Tokens.Strong>).tokens;
      return inner ? words(inner) : unescaped("text" in token ? (token as Tokens.Text).text : "");
    })
    .join("");

const wrapped = (text: string, indent: string, first = indent): string => {
  const lines: string[] = [];
  for (const word of text.split(/\s+/)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= WIDTH) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(`${lines.length === 0 ? first : indent}${word}`);
  }
  return lines.join("\n");
};

/** Letters of a sheet's cell that are shown. */
const CELL = 36;
/** Tables of so many columns say in each row what their cells are, where they do not stand in columns. */
const MANY = 4;

/** A table whose lines fit stands in columns, and so do cells of a sheet; one with sentences in it is a paragraph a row. */
const tableText = ({ header, rows }: Tokens.Table): string => {
  const whole = [header, ...rows].map((row) => row.map(({ tokens }) => words(tokens)));
  const isSheet = whole[0]?.[0] === "";
  const cells = isSheet
    ? whole.map((row) => row.map((cell) => (cell.length > CELL ? `${cell.slice(0, CELL)} …` : cell)))
    : whole;
  const widths = header.map((_, i) => Math.max(...cells.map((row) => (row[i] ?? "").length)));
  const [titles = []] = cells;
  if (isSheet || widths.reduce((sum, width) => sum + width + 3, 0) <= WIDTH) {
    return cells
      .map((row) =>
        row
          .map((cell, i) => cell.padEnd(widths[i] ?? 0))
          .join("   ")
          .trimEnd(),
      )
      .join("\n");
  }
  return cells
    .slice(1)
    .map(([name = "", ...others]) => {
      const said = others.flatMap((cell, i) => {
        if (cell === "") return [];
        const sentence = /[.!?]$/.test(cell) ? cell : `${cell}.`;
        return [titles.length < MANY && !/^[\d\s.,%]+$/.test(cell) ? sentence : `${titles[i + 1]}: ${sentence}`];
      });
      return `${name}\n${wrapped(said.join(" "), "    ")}`;
    })
    .join("\n");
};

const blockText = (token: Token): string => {
  switch (token.type) {
    case "heading":
      return token.depth === 2 ? words(token.tokens).toUpperCase() : words(token.tokens);
    case "paragraph":
      return words(token.tokens).trim() === "" ? "" : wrapped(words(token.tokens), "");
    case "code":
      return (token as Tokens.Code).text.replace(/^/gm, "    ");
    case "list": {
      const { items, ordered } = token as Tokens.List;
      return items
        .map((item, i) => {
          const mark = ordered ? `${i + 1}. ` : "- ";
          return wrapped(words(item.tokens), " ".repeat(mark.length), mark);
        })
        .join("\n");
    }
    case "blockquote":
      return wrapped((token as Tokens.Blockquote).tokens.map((one) => words([one])).join(" "), "  ", "! ");
    case "table":
      return tableText(token as Tokens.Table);
    default:
      return "";
  }
};

/** A page as plain text, for a terminal and for the search. */
export const asText = ({ title, markdown }: Pick<Page, "title" | "markdown">): string =>
  [title, ...lexer(markdown).map(blockText)].filter((block) => block !== "").join("\n\n") + "\n";
