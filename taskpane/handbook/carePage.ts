import { cautions } from "../../functions/cautions";
import { catalogue } from "../../functions/catalogue";
import { cautionsByTopic, notThis, practice, signs } from "../care";
import { sheets } from "../sheets/catalogue";
import { functionLink, sheetLink } from "./links";
import { plain, points, together } from "./markdown";
import type { Page } from "./page";

/** The signs for which a reptile vet is called. */
export const whenToCall = points(signs.map(plain));

export const carePage = (): Page => ({
  path: "care",
  title: "Cautions, and when to call a vet",
  about: "Everything that can hurt animal or keeper, in one place; what the tool is not.",
  markdown: together(
    "## What this tool is not",
    points(notThis.map(plain)),
    ...practice.flatMap(({ title, points: lines }) => [
      `## ${plain(title)}`,
      "Common practice, no source.",
      points(lines.map(plain)),
    ]),
    "## Cautions by topic",
    "Each stands also where the work is done: on the sheet, in the pane, on the function's page.",
    ...cautionsByTopic().flatMap(({ title, keys }) => [
      `### ${plain(title)}`,
      ...keys.map((key) => {
        const where = [
          ...catalogue.filter(({ cautions: own }) => own.includes(key)).map(functionLink),
          ...sheets.filter(({ cautions: own }) => own.includes(key)).map(sheetLink),
        ];
        return `> **Caution.** ${plain(cautions[key])}\n>\n> ${where.length === 0 ? "Everywhere." : `${where.join(", ")}.`}`;
      }),
    ]),
  ),
});
