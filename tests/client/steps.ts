import type { Page } from "playwright-core";
import { evaluate } from "../../addin/boundary/evaluate";
import { WorkbookError, type Workbook } from "../../taskpane/workbook";
import { perform, type Action, type Words } from "../../taskpane/actions/action";
import { addColumn } from "../../taskpane/actions/addColumn";
import { addRows } from "../../taskpane/actions/addRows";
import { clearAll } from "../../taskpane/actions/clearAll";
import { clearExample } from "../../taskpane/actions/clearExample";
import { freeze } from "../../taskpane/actions/freeze";
import { importReadings } from "../../taskpane/actions/importReadings";
import { guessLayout } from "../../taskpane/actions/readings/guessLayout";
import { insertFormula } from "../../taskpane/actions/insertFormula";
import { speakingFor } from "../../taskpane/views/places/speaking";
import { insertPlace } from "../../taskpane/actions/insertPlace";
import { insertSheet } from "../../taskpane/actions/insertSheet";
import { linkLines, linkSheets } from "../../taskpane/actions/linkSheets";
import { probe } from "../../taskpane/actions/probe";
import { reenter } from "../../taskpane/actions/reenter";
import { saveFile } from "../../taskpane/actions/saveFile";
import { picturesOf, savePicture } from "../../taskpane/actions/savePicture";
import { sharedCopy } from "../../taskpane/actions/sharedCopy";
import { blankYear, startYear, yearSheets } from "../../taskpane/actions/startYear";
import { thaw } from "../../taskpane/actions/thaw";
import { workingCopy, workingFile } from "../../taskpane/actions/workingCopy";
import { lapse } from "../../functions/climate/lapse";
import { Problem } from "../../functions/problem";
import { wishes } from "../../taskpane/columns/wishes";
import { sheets } from "../../taskpane/sheets/catalogue";
import { networkAsShipped } from "../network";
import type { FakeExcel } from "../excel/fake";
import { press, turnTo } from "./pane";

/** One thing that a keeper does: in the pane by its own words, and the same in another workbook. */
export interface Step {
  readonly does: string;
  readonly action: Action<never>;
  /** The words on the pane's tab. */
  readonly section: string;
  /** The words on its button, where they are not those of the action. */
  readonly button?: string;
  /** Where the keeper stands in the workbook, or what is put there, before the pane is turned to. */
  readonly stands?: (excel: FakeExcel) => void;
  /** What is filled in first. */
  readonly filled?: (page: Page) => Promise<unknown>;
  /** The same without the pane; what the action says of it. */
  same(other: Workbook): Promise<string>;
  /** It is done before the functions have answered. */
  readonly early?: boolean;
  /** It hands over a file. */
  readonly saves?: boolean;
  /** What it adds is taken away again on both sides, to keep the workbook small. */
  readonly passes?: boolean;
}

/** All of it but the last: the button. */
export const upTo = async ({ section, stands, filled }: Step, page: Page, excel: FakeExcel): Promise<void> => {
  stands?.(excel);
  // Left and opened anew, so that nothing of before is said in it.
  await turnTo(page, section === "Care" ? "Share" : "Care");
  await turnTo(page, section);
  await filled?.(page);
};
export const last = ({ button, action }: Step, page: Page): Promise<string> => press(page, button ?? action.label);

/** Runs an action as the pane does, agreeing to what it asks. */
const done = async <Choice>(action: Action<Choice>, workbook: Workbook, choice: Choice): Promise<string> => {
  let agreed: Words | undefined;
  for (;;) {
    const outcome = await perform(action, workbook, choice, {}, agreed);
    if (outcome.kind === "done") return outcome.done.text;
    if (outcome.kind === "refused") return outcome.words.text;
    if (agreed) throw new WorkbookError("it asks again and again");
    agreed = outcome.words;
  }
};
const nowhere = { save: () => undefined };
const all = (workbook: Workbook) => workbook.sheetNames();

/** A table of a keeper's own, and what it is asked for. */
const TABLE = [
  ["Date", "Mass, g"],
  [46_300, 300],
  [46_330, 312],
  [46_360, 315],
];
const growth = wishes.find(({ key }) => key === "growth") as (typeof wishes)[number];

const READINGS = "Date,Time,Temp (C)\n2026-04-13,10:00,21.5\n2026-04-13,11:00,20.5\n2026-04-14,11:00,20.0";
const readings = (text: string) => {
  const { layout, titles } = guessLayout(text, {});
  return { name: "pasted readings", text, layout, titles, evaluate };
};

/** Of a whole year: the list of animals, and in the long form the plan that it is told of last. */
const ofYear = ["animals", ...(process.env.CLIENT === undefined ? [] : ["coolingPlan"])];

export const insertion = (name: string): Step => ({
  does: `insert ${name}`,
  action: insertSheet,
  section: "Sheets",
  button: `Insert ${name}`,
  same: (other) =>
    done(
      insertSheet,
      other,
      sheets.filter((sheet) => sheet.name === name),
    ),
});

const inShare = <Choice>(
  action: Action<Choice>,
  choice: (workbook: Workbook) => Choice | Promise<Choice>,
  more: Partial<Step> = {},
): Step => ({
  does: action.key,
  action,
  section: "Share",
  // The list of pictures comes once the sheets have been read.
  filled: (page) => page.getByLabel("Picture").waitFor(),
  same: async (other) => done(action, other, await choice(other)),
  ...more,
});

export const steps: readonly Step[] = [
  insertion("Weights"),
  {
    does: "re-enter what is not answered yet",
    action: reenter,
    early: true,
    section: "Share",
    same: (other) => done(reenter, other, undefined),
  },
  {
    does: "insert an example at the selected cell",
    action: insertFormula,
    section: "Functions",
    button: "Insert at the selected cell: example 1",
    stands: (excel) => {
      excel.active = excel.tab("Sheet1").id;
      excel.selected = { row: 1, column: 2 };
    },
    filled: (page) => page.getByRole("button", { name: /^VIV\.LAPSE / }).click(),
    same: async (other) => {
      await other.show("Sheet1", 1, 2);
      return done(insertFormula, other, { definition: lapse, example: lapse.examples[0] });
    },
  },
  {
    does: "add a column to a table of one's own",
    action: addColumn,
    section: "Functions",
    stands: (excel) => {
      const tab = excel.tab("Sheet1");
      TABLE.forEach((row, i) => row.forEach((entry, j) => excel.enter(tab, 4 + i, 4 + j, entry)));
      excel.active = tab.id;
      excel.selected = { row: 5, column: 4 };
    },
    filled: async (page) => {
      await page.getByRole("button", { name: "Add a column to your own table" }).click();
      await page.getByLabel("In each row").selectOption({ label: growth.words });
      for (const [name, heading] of [
        ["dates", "E: Date"],
        ["masses", "F: Mass, g"],
      ] as const) {
        const { label } = growth.wants.find((want) => want.name === name) as (typeof growth.wants)[number];
        await page.getByLabel(label, { exact: true }).selectOption({ label: heading });
      }
    },
    same: async (other) => {
      const at = { sheet: "Sheet1", row: 4, column: 4 };
      await other.write([{ ...at, cells: TABLE }]);
      await other.show("Sheet1", 5, 4);
      const columns = new Map([
        ["dates", 4],
        ["masses", 5],
      ]);
      return done(addColumn, other, { wish: growth, at: { ...at, row: 5 }, columns, once: new Map() });
    },
  },
  {
    does: "add rows to the log that is shown",
    action: addRows,
    section: "Sheets",
    stands: (excel) => (excel.active = excel.tab("Weights").id),
    filled: (page) => page.getByLabel("How many rows").fill("3"),
    same: async (other) => {
      await other.show("Weights", 0, 0);
      return done(addRows, other, 3);
    },
  },
  inShare(saveFile, async (workbook) => ({ names: await all(workbook), ...nowhere }), { saves: true }),
  inShare(workingFile, async (workbook) => ({ names: await all(workbook), ...nowhere }), { saves: true }),
  {
    ...inShare(savePicture, () => undefined as never, { saves: true }),
    same: async (other) => {
      const [picture] = await picturesOf(other);
      if (!picture) throw new Error("there is no picture");
      return `"${picture.sheet} - ${picture.picture}.png" is saved`;
    },
  },
  inShare(freeze, () => undefined),
  inShare(thaw, () => undefined),
  inShare(sharedCopy, all, { passes: true }),
  inShare(workingCopy, all, { passes: true }),
  {
    does: "start a year",
    action: startYear,
    section: "Sheets",
    filled: async (page) => {
      await page.getByLabel("Animal", { exact: true }).fill("Juniper");
      await page.getByLabel("Mass, g").fill("310");
      const boxes = page.getByRole("group", { name: "Which sheets" }).first().getByRole("checkbox");
      for (const [i, box] of (await boxes.all()).entries()) {
        if (!ofYear.includes(yearSheets[i]?.key ?? "")) await box.uncheck();
      }
    },
    same: (other) =>
      done(startYear, other, {
        ...blankYear,
        label: "Juniper",
        mass: "310",
        sheets: ofYear,
      }),
  },
  {
    does: "link sheets",
    action: linkSheets,
    section: "Sheets",
    filled: async (page) => {
      await page.getByRole("button", { name: "Look at the sheets" }).click();
      await page.locator("table.links input[type=checkbox]").first().waitFor();
      for (const box of await page.locator("table.links input[type=checkbox]").all()) await box.check();
    },
    same: async (other) => {
      const { lines } = await linkLines(other);
      const open = lines.filter(({ standing }) => standing !== "linked").map(({ place }) => place);
      return done(linkSheets, other, { ticked: open });
    },
  },
  {
    does: "clear the example of the sheet that is shown",
    action: clearExample,
    section: "Sheets",
    stands: (excel) => (excel.active = excel.tab("Weights").id),
    same: async (other) => {
      await other.show("Weights", 0, 0);
      return done(clearExample, other, undefined);
    },
  },
  {
    does: "bring readings in",
    action: importReadings,
    section: "Readings",
    filled: async (page) => {
      await page.getByLabel("Or paste readings here").fill(READINGS);
      await page.locator("table").waitFor();
    },
    same: (other) => done(importReadings, other, readings(READINGS)),
  },
  {
    does: "insert the sheets of a place",
    action: insertPlace,
    section: "Places",
    filled: async (page) => {
      for (const [label, value] of [
        ["Latitude", "46.5"],
        ["Longitude", "9.8"],
        ["Lives from", "1200"],
        ["to, m", "1800"],
      ] as const)
        await page.getByLabel(label).fill(value);
      await page.getByRole("button", { name: insertPlace.label }).waitFor();
    },
    same: (other) => {
      const spot = { latitude: 46.5, longitude: 9.8 };
      const stations = speakingFor(networkAsShipped(), spot, { low: 1200, high: 1800 }, 2);
      if (stations instanceof Problem) throw new Error(stations.message);
      return done(insertPlace, other, {
        ...spot,
        bandLow: 1200,
        bandHigh: 1800,
        elevation: 1500,
        words: "46.50° N, 9.80° E at 1500 m",
        stations: stations.map(({ name }) => name),
      });
    },
  },
  {
    does: "clear every sheet",
    action: clearAll,
    section: "Sheets",
    same: (other) => done(clearAll, other, undefined),
  },
  {
    does: "look at a blank cell",
    action: probe,
    section: "Care",
    same: (other) => done(probe, other, undefined),
  },
];
