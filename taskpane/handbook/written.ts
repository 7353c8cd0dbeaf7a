import type { Page } from "./page";

/** What the handbook is made from beside the code: Markdown that stands in files, and what is installed. */
export interface Written {
  /** The pages that are written by hand, by their names: "first-hour". */
  readonly words: Readonly<Record<string, string>>;
  /** tests/benchmark/results.md, CHANGELOG.md, functions/network/NOTICE.md, DEVELOPERS.md and README.md. */
  readonly costs: string;
  readonly changes: string;
  readonly notice: string;
  readonly developers: string;
  readonly readme: string;
  /** Every package whose code is part of what is built. */
  readonly packages: readonly { readonly name: string; readonly version: string; readonly licence: string }[];
}

/** What stands under a heading of a Markdown file, up to the next of its kind. */
export const under = (heading: string, markdown: string): string => {
  const lines = markdown.split("\n");
  const at = lines.indexOf(heading);
  if (at < 0) throw new Error(`no heading "${heading}"`);
  const depth = heading.indexOf(" ");
  const end = lines.findIndex((line, i) => i > at && /^#+ /.test(line) && line.indexOf(" ") <= depth);
  return lines
    .slice(at + 1, end < 0 ? undefined : end)
    .join("\n")
    .trim();
};

/** The first table of a text. */
export const tableIn = (markdown: string): string => {
  const [table] = /(?:^\|.*\|$\n?)+/m.exec(markdown) ?? [];
  if (table === undefined) throw new Error("there is no table");
  return table.trim();
};

/** Text of a file of the project, which links to its neighbours there: a page of the handbook has other neighbours. */
export const withoutLinks = (markdown: string): string => markdown.replace(/\[([^\]]*)\]\([^)]*\)/g, "$1");

/** A written page: its first line is the title, its first paragraph what it is about. */
export const writtenPage = (path: string, text: string, fill: Readonly<Record<string, string>> = {}): Page => {
  const [, title, about, rest] = /^# (.+)\n\n(.+)\n\n([\s\S]+)$/.exec(text.trim()) ?? [];
  if (title === undefined || about === undefined || rest === undefined) {
    throw new Error(`the page ${path} has to begin with a title and a paragraph`);
  }
  const markdown = `${about}\n\n${rest}`.replace(/\{\{(\w+)\}\}/g, (_, name: string) => {
    const filled = fill[name];
    if (filled === undefined) throw new Error(`the page ${path} asks for ${name}, which nothing fills`);
    return filled;
  });
  return { path, title, about, markdown };
};
