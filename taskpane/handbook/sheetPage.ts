import { sources } from "../../functions/sources";
import { clearExample } from "../actions/clearExample";
import { everydayWords } from "../search/everydayWords";
import { EXAMPLE } from "../sheets/shared/assemble";
import { sheetGroups } from "../sheets/catalogue";
import type { Sheet } from "../sheets/sheet";
import { inputsOf } from "./inputs";
import { functionLine, sheetLine, sheetLink } from "./links";
import { cautionLines, plain, points, table, together } from "./markdown";
import type { Page } from "./page";
import { sheetPath } from "./paths";
import { functionsOf, linksOf } from "./relations";

const inputs = (sheet: Sheet): string => {
  const found = inputsOf(sheet);
  return found.length === 0
    ? "Nothing has to be filled in."
    : together(
        "Framed cells that are not listed here take any words.",
        table(
          ["Cells", "What", "What it takes", "More"],
          found.map(({ at, label, takes, note }) => [at, label, takes, note].map(plain)),
        ),
      );
};

const needed = ({ needed: cells }: Sheet): string => {
  const words = [...new Set(cells.map(({ words: one }) => plain(one)))];
  return words.length === 0 ? "" : `A line under its title names what is still missing of these: ${words.join(", ")}.`;
};

const linked = (lines: ReturnType<typeof linksOf>["takes"], verb: string): string =>
  points(lines.map(({ sheet, words }) => `${verb} ${sheetLink(sheet)}: ${words.map(plain).join(", ")}.`));

const around = (sheet: Sheet): string => {
  const { takes, gives } = linksOf(sheet);
  if (takes.length + gives.length === 0) return "It stands alone: no cell of it repeats another sheet's.";
  return together(
    linked(takes, "Takes from"),
    linked(gives, "Gives to"),
    "Where the other sheet stands in the workbook these cells are live links; where it does not, they are typed.",
  );
};

/** What the sheet itself says of its example; undefined of a sheet that takes no figures. */
const exampleOf = ({ blocks }: Sheet): string | undefined =>
  blocks
    .map(({ rows }) => String(rows[0]?.[0] ?? ""))
    .find((words) => words.startsWith(EXAMPLE))
    ?.split(/(?<=\.) /)[0];

/** The picture, and below it what the example is and how it goes. */
const shown = (sheet: Sheet): string => {
  const example = exampleOf(sheet);
  const opens = `${sheet.name} as it opens${example === undefined ? "" : ", filled with its example"}`;
  return together(
    `![${plain(opens)}: ${plain(sheet.sentence)}](pictures/${sheet.key})`,
    example === undefined
      ? ""
      : `${plain(example)} **${clearExample.label}** in the pane empties the cells that are yours to fill and keeps everything else.`,
  );
};

/** What looks at the figures and names what stands out, a level and words a line; and what is marked beside them. */
const warns = (sheet: Sheet): string => {
  const judging =
    inputsOf(sheet).length === 0
      ? []
      : functionsOf(sheet).filter(({ result }) => result.columns.some(({ name }) => name === "Level"));
  return together(
    judging.length === 0
      ? ""
      : together("It judges what you type, and says stop, care or note in words:", points(judging.map(functionLine))),
    sheet.rules.some(({ look }) => look === "stop" || look === "care")
      ? "Cells that ask for a look are coloured, and a word or a sign beside them says why."
      : "",
    "Its cautions, as above, stand on the sheet itself.",
  );
};

/** A sheet's page: its picture, what to fill in, what it takes and gives, what it warns of. */
export const sheetPage = (sheet: Sheet): Page => ({
  path: sheetPath(sheet),
  title: sheet.name,
  about: sheet.sentence,
  alsoFoundBy: everydayWords[sheet.key] ?? "",
  markdown: together(
    plain(sheet.sentence),
    cautionLines(sheet.cautions),
    shown(sheet),
    "## What to fill in",
    needed(sheet),
    inputs(sheet),
    "## Beside other sheets",
    around(sheet),
    "## What it warns of",
    warns(sheet),
    ...(functionsOf(sheet).length === 0
      ? []
      : ["## What it is worked out with", points(functionsOf(sheet).map(functionLine))]),
    "## Where its figures come from",
    points(sheet.sources.map((key) => plain(sources[key].text))),
  ),
});

export const sheetsPage = (): Page => ({
  path: "sheets/index",
  title: "Sheets",
  about: "Every templated sheet: its picture, what to fill in, what it takes from others and what it warns of.",
  markdown: together(
    "A sheet is inserted from the pane, filled with an invented example that works at once, and cleared with one button. Cells that are yours to fill look different from those that are worked out.",
    ...sheetGroups.flatMap(({ title, sheets }) => [`## ${plain(title)}`, points(sheets.map(sheetLine))]),
  ),
});
