import { catalogue } from "../../functions/catalogue";
import { VERSION } from "../../functions/release";
import type { Evaluate } from "../columns/expression";
import { sheets } from "../sheets/catalogue";
import { carePage, whenToCall } from "./carePage";
import { creditsPage } from "./creditsPage";
import { functionPage, functionsPage } from "./functionPage";
import { howSurePage, sourcesPage } from "./howSure";
import { together } from "./markdown";
import type { Page } from "./page";
import { sheetPage, sheetsPage } from "./sheetPage";
import { tableIn, under, withoutLinks, writtenPage, type Written } from "./written";

const changesPage = ({ changes }: Written): Page => ({
  path: "changes",
  title: "Version and changes",
  about: `This is version ${VERSION}. What changed, by version.`,
  markdown: together(`This is version ${VERSION}.`, withoutLinks(changes.slice(changes.indexOf("\n## ")).trim())),
});

const costsPage = ({ costs, readme }: Written): Page => ({
  path: "costs",
  title: "What it costs",
  about: "Seconds, megabytes, and how it compares with other tools in one run.",
  markdown: together(
    withoutLinks(under("## What it costs", readme)),
    "## Beside other tools",
    withoutLinks(costs.slice(costs.indexOf("\n")).trim()),
  ),
});

/** Every page of the handbook; `evaluate` works out what stands in the samples. */
export const pagesOf = (written: Written, evaluate: Evaluate): readonly Page[] => {
  const byHand = (name: string, fill: Readonly<Record<string, string>> = {}): Page =>
    writtenPage(name, written.words[name] ?? "", fill);
  return [
    byHand("index", { functionCount: String(catalogue.length), sheetCount: String(sheets.length) }),
    byHand("first-hour"),
    byHand("own-spreadsheet"),
    byHand("for-a-club", { loading: tableIn(under("## In Excel", written.readme)) }),
    byHand("winter-trouble", { whenToCall }),
    functionsPage(),
    sheetsPage(),
    carePage(),
    howSurePage(written),
    sourcesPage(),
    byHand("glossary"),
    byHand("support", { version: VERSION }),
    byHand("privacy"),
    creditsPage(written),
    costsPage(written),
    changesPage(written),
    ...sheets.map(sheetPage),
    ...catalogue.map((definition) => functionPage(definition, evaluate)),
  ];
};

/** The pages to which every page leads, at its top. */
export const PARTS: readonly Pick<Page, "path" | "title">[] = [
  { path: "first-hour", title: "First hour" },
  { path: "functions/index", title: "Functions" },
  { path: "sheets/index", title: "Sheets" },
  { path: "winter-trouble", title: "Trouble in winter" },
  { path: "how-sure", title: "How sure" },
  { path: "glossary", title: "Glossary" },
  { path: "support", title: "Support" },
];
