import { lexer, type Token, type Tokens } from "marked";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { entriesOf } from "../../addin/handbook/entries";
import { evaluate } from "../../addin/boundary/evaluate";
import { handbookFiles } from "../../addin/handbook/make";
import { takenIn } from "../../addin/handbook/pictures";
import { fingerprint, SHOWN } from "../../addin/handbook/shown";
import { asText } from "../../addin/handbook/text";
import { writtenIn } from "../../addin/handbook/written";
import { functionsJson } from "../../addin/metadata";
import { evaluateFormulas } from "../../addin/preview/formulas";
import { startHeadless } from "../../addin/preview/headless";
import { cellDataOf } from "../../addin/preview/cellData";
import { catalogue } from "../../functions/catalogue";
import { cautions } from "../../functions/cautions";
import { serialOfIso } from "../../functions/dates";
import { sources, type Source } from "../../functions/sources";
import { yardsticksOf } from "../../functions/yardsticks";
import { cannotKnow } from "../../taskpane/handbook/cannotKnow";
import { pagesOf } from "../../taskpane/handbook/pages";
import { fileOf, functionPath, sheetPath } from "../../taskpane/handbook/paths";
import { searchOver } from "../../taskpane/search/searchOver";
import { sheets } from "../../taskpane/sheets/catalogue";

const root = join(__dirname, "..", "..");
const written = writtenIn(root);
const pages = pagesOf(written, evaluate);
const files = handbookFiles(root);
const html = [...files].flatMap(([name, text]) => (name.endsWith(".html") ? [[name, String(text)] as const] : []));

/** Where an address of a page leads, from the handbook's top. */
const from = (page: string, address: string): string => {
  const { pathname } = new URL(address, `http://handbook/${page}`);
  return pathname.slice(1);
};
const idsOf = (text: string): ReadonlySet<string> =>
  new Set([...text.matchAll(/\bid="([^"]*)"/g)].map(([, id]) => id as string));

test("every function, every sheet and every help address of the spreadsheet has its page", () => {
  for (const definition of catalogue) expect(files.has(fileOf(functionPath(definition)))).toBe(true);
  for (const sheet of sheets) expect(files.has(fileOf(sheetPath(sheet)))).toBe(true);
  for (const { helpUrl } of functionsJson("https://example.org/handbook").functions) {
    expect(files.has(helpUrl.replace("https://example.org/handbook/", ""))).toBe(true);
  }
  expect(new Set(pages.map(({ path }) => path)).size).toBe(pages.length);
});

test("every link leads to a page and to a part of it, every picture is there, and nothing lies elsewhere", () => {
  const dead: string[] = [];
  for (const [name, text] of html) {
    for (const [, address = ""] of text.matchAll(/\b(?:href|src)="([^"]*)"/g)) {
      if (address === "data:,") continue;
      const [path = "", part] = address.split("#");
      const to = path === "" ? name : from(name, path);
      const target = files.get(to);
      if (target === undefined) dead.push(`${name}: ${address}`);
      else if (part !== undefined && !idsOf(String(target)).has(part)) dead.push(`${name}: ${address}`);
    }
    if (/\b(?:href|src)="(?:[a-z]+:)?\/\//i.test(text)) dead.push(`${name} leads out of the handbook`);
  }
  expect(dead).toEqual([]);
  expect(html.flatMap(([, text]) => [...text.matchAll(/<img /g)]).length).toBe(Object.keys(SHOWN).length);
});

test("no page, with all that it shows, has more than 300 kB", () => {
  const size = (name: string): number => Buffer.byteLength(files.get(name) as string);
  const heavy = html
    .map(([name, text]) => {
      const parts = new Set(
        [...text.matchAll(/\b(?:src|href)="([^"]+\.(?:webp|js|css))"/g)].map(([, one]) => from(name, one as string)),
      );
      return [name, [name, ...parts].reduce((sum, one) => sum + size(one), 0)] as const;
    })
    .filter(([, bytes]) => bytes > 300_000);
  expect(heavy).toEqual([]);
});

test("every picture shows what is there now: npm run pictures -- handbook takes those anew that do not", () => {
  const taken = takenIn(root);
  expect(Object.keys(taken).sort()).toEqual(Object.keys(SHOWN).sort());
  const stale = Object.entries(SHOWN).filter(([name, shown]) => taken[name]?.of !== fingerprint(root, shown));
  expect(stale.map(([name]) => name)).toEqual([]);
});

test("what a function cannot know stands on every function's page, and of no function that is gone", () => {
  expect(Object.keys(cannotKnow).sort()).toEqual(catalogue.map(({ name }) => name).sort());
});

test("a function's page has its arguments, its cautions, what it was held against, and which sources are from memory", () => {
  for (const definition of catalogue) {
    const text = asText(pages.find(({ path }) => path === functionPath(definition)) ?? { title: "", markdown: "" });
    const flat = text.replace(/\s+/g, " ");
    for (const name of Object.keys(definition.parameters)) expect(text).toMatch(new RegExp(`^${name}\\b`, "m"));
    for (const key of definition.cautions) expect(flat).toContain(`Caution. ${cautions[key]}`);
    for (const { against } of yardsticksOf(definition.name)) expect(flat).toContain(against);
    for (const key of definition.sources) {
      const { status, text: words }: Source = sources[key];
      expect(flat).toContain(`${status === "recalled" ? "From memory, not looked up. " : ""}${words}`);
    }
  }
});

// ------------------------------------------------------------------------------------ the examples that are written by hand

interface WrittenExample {
  readonly page: string;
  readonly cells: readonly (readonly string[])[];
  readonly formula: string;
  readonly answer: readonly (readonly string[])[];
}

const rowsOf = ({ rows }: Tokens.Table): readonly (readonly string[])[] =>
  rows.map((row) => row.map(({ text }) => text.replaceAll("**", "")));

/** A table of cells, a formula over it, and what it answers: in bold in a line, or in a table. */
const examplesOf = (page: string, markdown: string): readonly WrittenExample[] => {
  const tokens = lexer(markdown).filter(({ type }) => type !== "space");
  const isCells = (token: Token): token is Tokens.Table =>
    token.type === "table" && (token as Tokens.Table).header[0]?.text === "";
  return tokens.flatMap((token, i) => {
    const text = token.type === "code" ? (token as Tokens.Code).text : "";
    if (!text.startsWith("=")) return [];
    const cells = tokens.slice(0, i).filter(isCells).at(-1);
    const [said, table] = [tokens[i + 1], tokens[i + 2]];
    const bold = /\*\*(.+)\*\*/.exec(said?.raw ?? "")?.[1];
    return [
      {
        page,
        cells: cells ? rowsOf(cells).map((row) => row.slice(1)) : [],
        formula: text,
        answer: bold === undefined ? rowsOf(table as Tokens.Table) : [[bold]],
      },
    ];
  });
};

const examples = Object.entries(written.words).flatMap(([name, text]) => examplesOf(name, text));

test("there are examples on the written pages", () => expect(examples.length).toBeGreaterThan(2));

test.each(examples.map((one) => [`${one.page}: ${one.formula}`, one] as const))(
  "%s",
  async (_, { cells, formula, answer }) => {
    const data = cells.map((row) =>
      row.map((text) => {
        if (text === "") return null;
        return serialOfIso(text) ?? (Number.isFinite(Number(text)) ? Number(text) : text);
      }),
    );
    const engine = startHeadless(catalogue, {
      sheets: { sheet: { id: "sheet", name: "Sheet1", rowCount: 100, columnCount: 26, cellData: cellDataOf(data) } },
    });
    const [rows] = await evaluateFormulas(engine, [formula]);
    engine.univer.dispose();
    const shown = rows?.map((row) => row.map((cell) => ("value" in cell ? String(cell.value) : JSON.stringify(cell))));
    expect(shown).toEqual(answer);
  },
);

// ------------------------------------------------------------------------------------------------------------ words

/** Names that the written pages may hold beside those of our own functions and sheets. */
const NAMES = new Set(
  `Vivarium Almanac Handbook Excel Windows Mac Node Home Add-ins More Upload My Add-in Formulas Calculate Now CSV PNG SVG XLSX
  Access-Control-Allow-Origin Köppen-Geiger Student Q10 Cfb RMSE K I Salmonella Celsius Ash Birch Latitude Places Sheets
  Functions Readings Share Care Stage Who May October Start Clearing Cold Warming Settling`.split(/\s+/),
);
const own = new Set([...sheets.flatMap(({ name }) => name.split(" ")), ...catalogue.map(({ name }) => name), "VIV"]);

test("the written pages name no program, maker or person that is not on the list, and no address", () => {
  const strange: string[] = [];
  for (const [name, text] of Object.entries(written.words)) {
    const prose = text
      .replace(/```[\s\S]*?```|`[^`]*`/g, " ")
      .replace(/\]\([^)]*\)/g, "]")
      .replace(/\{\{\w+\}\}/g, " ");
    expect(prose).not.toMatch(/https?:|www\.|@\w|™|®|©/);
    // A capital in the middle of a sentence is a name; after a stop, in a heading and in a cell it may be any word.
    for (const [, word = ""] of prose.matchAll(/(?<=[a-zäöü0-9,;)] )([A-ZÄÖÜ][\w-]*)/g)) {
      if (!NAMES.has(word) && !own.has(word)) strange.push(`${name}: ${word}`);
    }
  }
  expect(strange).toEqual([]);
});

test("the written pages call buttons, sections and sheets as they are called", () => {
  const code = [
    ...readdirSync(join(root, "taskpane/actions"), { withFileTypes: true }).flatMap((file) =>
      file.isFile() ? [`taskpane/actions/${file.name}`] : [],
    ),
    "taskpane/views/Pane.tsx",
  ].map((file) => readFileSync(join(root, file), "utf8"));
  const buttons = readdirSync(join(root, "taskpane/views"), { withFileTypes: true }).flatMap((file) =>
    file.name.endsWith(".tsx") ? [readFileSync(join(root, "taskpane/views", file.name), "utf8")] : [],
  );
  const called = new Set<string>([
    ...code.flatMap((text) => [...text.matchAll(/\blabel: "([^"]+)"/g)].map(([, label]) => label as string)),
    ...buttons.flatMap((text) =>
      [...text.matchAll(/>\s*([A-Z][^<{]+?)\s*<\/Button>/g)].map(([, label]) => label as string),
    ),
    ...sheets.map(({ name }) => name),
    "Show pane",
  ]);
  const bold = Object.entries(written.words).flatMap(([name, text]) =>
    [...text.matchAll(/\*\*([^*]+)\*\*/g)].map(([, words = ""]) => [name, words] as const),
  );
  const unknown = bold.filter(([, words]) => !called.has(words) && !/^(Caution\.|-?\d+)$/.test(words));
  expect(bold.length).toBeGreaterThan(10);
  expect(unknown).toEqual([]);
  // In quotation marks with a capital: a heading of the pane or of a sheet.
  const headings = [...buttons, JSON.stringify(sheets.map(({ blocks }) => blocks))].join("\n");
  const quoted = Object.values(written.words).flatMap((text) =>
    [...text.replace(/```[\s\S]*?```/g, "").matchAll(/"([A-Z][^"]+)"/g)].map(([, words]) => words as string),
  );
  expect(quoted.length).toBeGreaterThan(2);
  expect(quoted.filter((words) => !headings.includes(words))).toEqual([]);
});

test("every page leads to the cautions and to when a vet is called, and the page for trouble begins with it", () => {
  const trouble = asText(pages.find(({ path }) => path === "winter-trouble") ?? { title: "", markdown: "" });
  expect(trouble.indexOf("CALL A REPTILE VET")).toBeGreaterThan(0);
  expect(trouble.indexOf("CALL A REPTILE VET")).toBeLessThan(trouble.indexOf("HAVE THIS READY"));
  for (const [, text] of html) expect(text).toMatch(/No veterinary advice: <a href="[./]*care\.html">/);
});

// ----------------------------------------------------------------------------------------------------------- search

const find = searchOver(entriesOf(pages));

test.each([
  ["lapse", "functions/LAPSE"],
  ["=VIV.RAMP", "functions/RAMP"],
  ["hibernation", "functions/RAMPDATES"],
  ["oxygen", "functions/BOXAIR"],
  ["cooling plan", "sheets/coolingPlan"],
  ["first hour", "first-hour"],
  ["privacy", "privacy"],
  ["wheezing", "winter-trouble"],
  ["koppen", "functions/KOPPEN"],
  ["not eating", "functions/REFUSALS"],
  ["hybernation", "sheets/coolingPlan"],
  ["limp", "winter-trouble"],
  ["what is kriging", "glossary"],
])("the search finds %s", (typed, path) => {
  expect(find(typed).slice(0, 3)).toContain(fileOf(path));
});

test("what the README, the change list and the notice say of files of the project leads nowhere here", () => {
  for (const name of ["how-sure", "credits", "changes"]) {
    const page = pages.find(({ path }) => path === name);
    expect(page?.markdown).not.toMatch(/\]\((?!functions\/|sheets\/|drawn\/|[a-z-]+(#|\)))/);
  }
});

test("the readme leads here: it holds no table of functions, and no more than 150 lines", () => {
  expect(written.readme.trim().split("\n").length).toBeLessThanOrEqual(150);
  expect(written.readme.includes("| `VIV.")).toBe(false);
  expect(written.readme).toContain("dist/handbook/");
});
