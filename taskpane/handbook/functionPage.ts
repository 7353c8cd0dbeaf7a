import { topics } from "../../functions/catalogue";
import type { AnyDefinition } from "../../functions/define";
import { giveWords, resultWords, shapeWords, sourceWords } from "../../functions/entryWords";
import published from "../../functions/published.json";
import { signature } from "../../functions/words";
import { yardsticksOf, type Yardstick } from "../../functions/yardsticks";
import type { Evaluate } from "../columns/expression";
import { everydayWords } from "../search/everydayWords";
import { cannotKnow } from "./cannotKnow";
import { functionLine, functionLink, sheetLine } from "./links";
import { cautionLines, code, plain, points, table, together } from "./markdown";
import type { Page } from "./page";
import { functionPath, functionTitle } from "./paths";
import { relatedTo, sheetsWith } from "./relations";
import { samples } from "./sample";

const figure = (value: number): string => String(Number(value.toPrecision(2)));

const outcome = ({ worst, figure: what, within, unit }: Yardstick): readonly [string, string] => {
  const sign = unit === "share" || unit === "" ? "" : ` ${unit}`;
  if (what !== undefined) return [`${what}: ${figure(worst)}${sign}`, ""];
  const part = unit === "share";
  return [
    worst === 0 ? "nothing" : part ? `${figure(worst)} of the value` : `${figure(worst)}${sign}`,
    within === undefined || within === 0
      ? "nothing"
      : part
        ? `${figure(within)} of the value`
        : `${figure(within)}${sign}`,
  ];
};

const heldAgainst = ({ name }: AnyDefinition): string => {
  const found = yardsticksOf(name);
  if (found.length === 0) {
    return "Nothing outside: it rests on its own definition, and on tests of that. [Why](how-sure#what-no-outside-truth-exists-for).";
  }
  return together(
    "In the last run of the tests:",
    table(
      ["Against", "Values", "Off at worst", "Allowed"],
      found.map((one) => [plain(one.against), String(one.values), ...outcome(one).map(plain)]),
      [1],
    ),
  );
};

const since = ({ name }: AnyDefinition): string =>
  `In the add-in since version ${published.find((one) => one.name === name)?.since ?? ""}.`;

/** A function's page, from its definition. */
export const functionPage = (definition: AnyDefinition, evaluate: Evaluate): Page => {
  const topic = topics.find(({ functions }) => functions.includes(definition));
  const around = sheetsWith(definition);
  return {
    path: functionPath(definition),
    title: functionTitle(definition),
    about: definition.summary,
    alsoFoundBy: everydayWords[definition.name] ?? "",
    markdown: together(
      code(signature(definition)),
      plain(definition.summary),
      cautionLines(definition.cautions),
      "## In a sheet of your own",
      samples(definition, evaluate),
      "## What it takes",
      Object.keys(definition.parameters).length === 0
        ? "Nothing: the brackets stay empty."
        : table(
            ["Argument", "What it is", "What to give"],
            Object.entries(definition.parameters).map(([name, parameter]) => [
              `**${plain(name)}**`,
              `${plain(parameter.about)}.`,
              plain(giveWords(parameter)),
            ]),
          ),
      "## What it answers",
      points(resultWords(definition).map(plain)),
      shapeWords(definition),
      "## What it cannot know",
      plain(cannotKnow[definition.name] ?? ""),
      "## Where it comes from",
      points(
        definition.sources.map((key) => {
          const { status, text } = sourceWords(key);
          return `${status === "" ? "" : `**${status}.** `}${plain(text)}`;
        }),
      ),
      "## What it was held against",
      heldAgainst(definition),
      "## Without the add-in",
      definition.twin
        ? "It can be rewritten in functions that every spreadsheet has: a working copy goes on calculating."
        : "It cannot be rewritten in functions that every spreadsheet has: in a working copy its answers stay as values.",
      since(definition),
      "## See also",
      points([
        ...relatedTo(definition, topic?.functions ?? []).map(functionLine),
        ...around.map((sheet) => `Sheet ${sheetLine(sheet)}`),
      ]),
    ),
  };
};

export const functionsPage = (): Page => ({
  path: "functions/index",
  title: "Functions",
  about: "Every worksheet function, by topic, and how all of them behave.",
  markdown: together(
    "Type a function into a cell as you type any other: `=VIV.LAPSE(24,300,1400)`. All of them behave alike:",
    points([
      "A blank is never 0. A row that is still empty answers nothing; a half-filled one answers `#N/A` and says what is blank.",
      "A cell, a row, a column or a block may be given wherever one cell is asked for; the answer has the same shape. One bad cell spoils its own answer, not the others.",
      "Bad input answers `#VALUE!` with the argument, what it holds and what is wanted.",
      '°C, metres, grams, millimetres; where a function has `units`, "imperial" takes and answers °F, feet, ounces, inches.',
      'Dates are the spreadsheet\'s own, or ISO text such as "2026-11-02".',
      'Nothing is volatile: "today" is a cell that you fill.',
      "Names and the order of arguments never change: a workbook of today opens in the next version.",
    ]),
    ...topics.flatMap(({ title, functions }) => [
      `## ${plain(title)}`,
      table(
        ["Function", "What it answers"],
        functions.map((definition) => [functionLink(definition), plain(definition.summary)]),
      ),
    ]),
  ),
});
