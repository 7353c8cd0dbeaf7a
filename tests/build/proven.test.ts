import { readFileSync } from "node:fs";
import { join } from "node:path";
import { figuresOf, filled, withProven, withRun, type Run, type Runs } from "../../addin/build/proven";
import { catalogue } from "../../functions/catalogue";
import { VERSION } from "../../functions/release";

const ROOT = join(__dirname, "..", "..");
const words = readFileSync(join(ROOT, "tests", "proven.md"), "utf8");
const runs = JSON.parse(readFileSync(join(ROOT, "tests", "proven.json"), "utf8")) as Runs;

const run = (changes: Partial<Run> = {}): Run => ({
  date: "2026-12-01",
  version: VERSION,
  cores: 2,
  figures: { found: 1 },
  ...changes,
});

test("the README says what the records say", () => {
  const readme = readFileSync(join(ROOT, "README.md"), "utf8");
  expect(withProven(readme)).toBe(readme);
  const typed = readme.replace("inside the band", "100 % inside the band");
  expect(withProven(typed)).toBe(readme);
  expect(() => withProven(readme.replace("<!-- From here", "<!-- Here"))).toThrow("README.md has to hold once");
});

test("so many functions go on without the add-in as the README says", () => {
  const twins = catalogue.filter((definition) => "twin" in definition).length;
  expect(readFileSync(join(ROOT, "README.md"), "utf8").replaceAll("\n", " ")).toContain(
    `${twins} functions are rewritten in functions`,
  );
});

/** Figures in the words that no run could change, and why they stand there. */
const UNMEASURED: Readonly<Record<string, string>> = {
  "from 500 m": "which stations are left out",
  "6.5 K per km": "what an estimate is held against",
  "Network, 2020": "a year of the open data",
  "kept to 1e-9": "the test's own limit",
  "agree to 1e-9": "the test's own limit",
  "held to three": "the test's own limit, in minutes",
  "below 60°": "where that limit begins",
  "to 66°": "where that limit ends",
  "A year of four animals": "the animals of the story",
  "no two sheets": "a way to say none",
  "three times over": "how often a sheet is inserted",
  "come as 0": "what an old Excel hands over",
  "no stray 0": "what is looked for",
  "320 px": "the width at which the pane is tried",
  "MB of 5": "the platform's limit",
  "prints ten more": "what npm run excel:report prints",
  "20 000 readings": "what it asks to be tried",
  "four winter plans": "as many as the sheets have room for",
  "as two lines": "how a spreadsheet draws a band",
  "more than 100 000 spilled rows": "the preview's limit",
};
const FIGURE =
  /\d[\d .,]*\d|\d|\b(?:two|three|four|five|six|seven|eight|nine|ten|twelve|hundred|thousand|million|half|twice)\b/gi;

test("no figure of a run is typed into the words: each stands in the records, or no run could change it", () => {
  const typed = words.replace(/\{\{.*?\}\}/g, "").replaceAll("\n", " ");
  for (const phrase of Object.keys(UNMEASURED)) expect(typed).toContain(phrase);
  const rest = Object.keys(UNMEASURED).reduce((left, phrase) => left.replaceAll(phrase, ""), typed);
  expect(rest.match(FIGURE) ?? []).toEqual([]);
});

test("every run that is recorded is told, and every figure that is told is known", () => {
  const figures = figuresOf(runs);
  expect(filled(words, figures)).not.toMatch(/\{\{|\}\}|NaN|undefined/);
  for (const command of Object.keys(runs)) expect([command, words.includes(`{{${command}.`)]).toEqual([command, true]);
  expect(() => filled("{{stories.lost}}", figures)).toThrow("stories.lost, which no run and no register holds");
  expect(() => filled("{{stories.model | °C}}", figures)).toThrow("is unknown");
});

test("figures are written as the words ask for", () => {
  const figures = { many: 1234567.25, share: 0.9382, seed: "20261126", none: 0, one: 1 };
  expect(
    ["many", "many | 0", "share | %", "share | 0.0 %", "share | 0.0", "share | 0.00", "seed"].map((name) =>
      filled(`{{${name}}}`, figures),
    ),
  ).toEqual(["1 234 567.25", "1 234 567", "94 %", "93.8 %", "0.9", "0.94", "20261126"]);
  const words = "{{NAME | all but}}, {{NAME | or none}}, {{NAME | idle}}";
  expect(["none", "one"].map((name) => filled(words.replaceAll("NAME", name), figures))).toEqual([
    "all, none, idle",
    "all but 1, 1, busy",
  ]);
});

test("a run of another version says so, and one that was entered by hand too", () => {
  const told = (changes: Partial<Run>): string => filled("{{fuzz.when}}", figuresOf({ fuzz: run(changes) }));
  expect(told({})).toBe("1 December 2026");
  expect(told({ version: "1.0.0" })).toBe("1 December 2026, version 1.0.0");
  expect(told({ version: "1.0.0", byHand: true })).toBe("1 December 2026, version 1.0.0, copied by hand");
});

test("a run takes the place of the one before, and a smaller one only where it is asked for", () => {
  const before = { twins: run({ size: 500, byHand: true }), proof: run() };
  const again = run({ size: 500, figures: { found: 2 } });
  expect(withRun(before, "twins", again, false)).toEqual({ proof: run(), twins: again });
  const small = run({ size: 50 });
  expect(withRun(before, "twins", small, false)).toBeUndefined();
  expect(withRun(before, "twins", small, true)).toEqual({ proof: run(), twins: small });
  expect(withRun(before, "stories", small, false)).toEqual({ ...before, stories: small });
  expect(Object.keys(withRun(before, "stories", small, false) ?? {})).toEqual(["proof", "stories", "twins"]);
});
