import { plain, table, together } from "./markdown";
import type { Page } from "./page";
import { withoutLinks, type Written } from "./written";

/** Licences and credits: of the data, which ask to be carried along, and of every package that is part of the build. */
export const creditsPage = ({ notice, packages }: Written): Page => ({
  path: "credits",
  title: "Licences and credits",
  about: "Whose data and whose code are in the add-in, and under which terms.",
  markdown: together(
    "Vivarium Almanac is under the MIT licence. It carries data and code of others; whoever hands on a picture, a workbook or the folder carries these credits along.",
    withoutLinks(notice.slice(notice.indexOf("\n") + 1).trim()).replace(/^/, "## The station network\n\n"),
    "## Packages",
    "Every package whose code may be part of what is built, with its licence as it declares it. Their full texts stand in `licences.txt` beside these pages.",
    table(
      ["Package", "Version", "Licence"],
      packages.map(({ name, version, licence }) => [name, version, licence].map(plain)),
    ),
  ),
});
