import { serialOfIso } from "../../functions/dates";
import { ELEVATION } from "../../functions/shared/limits";
import { limitIn, type System, type Unit } from "../../functions/units";
import { inSystem } from "../sheets/shared/systems";
import { sheets as templates } from "../sheets/catalogue";
import { cleared } from "../sheets/clear";
import { areaOf } from "../sheets/shared/address";
import { cellOf } from "../sheets/shared/page";
import { LATITUDE, LONGITUDE, MASS } from "../sheets/shared/takes";
import type { Content, Sheet } from "../sheets/sheet";
import { withEntries } from "../sheets/withEntries";
import { WorkbookError } from "../workbook";
import { CHOOSE_A_SHEET, counted, impossible, sheetsInWords, type Action } from "./action";
import { insertLinked, undrawn, unlistedWords } from "./insertLinked";
import { tabsOf } from "./links";

/** What the form asks, as typed; all but the name may stay blank. Dates are ISO text. */
export interface YearForm {
  readonly label: string;
  readonly sex: "" | "female" | "male" | "unknown";
  readonly born: string;
  readonly mass: string;
  readonly age: "adult" | "young";
  readonly latitude: string;
  readonly longitude: string;
  readonly elevation: string;
  readonly way: "forwards" | "backwards";
  readonly when: string;
  /** Those of the mass and the elevation, and of the sheets; metric where nothing is said. */
  readonly units?: System;
  /** The keys of the sheets to insert. */
  readonly sheets: readonly string[];
}

/** The sheets of a keeper's year, in the order of their tabs. */
export const YEAR = [
  "animals",
  "nativeClimate",
  "yearPlan",
  "coolingPlan",
  "winterLog",
  "feedingLog",
  "weights",
  "aboutThisWorkbook",
] as const;
/** Whether a young animal is cooled is decided with a vet, not by a form: its year begins without the sheets of a winter. */
const OF_WINTER: readonly string[] = ["coolingPlan", "winterLog"];
export const usualSheets = (age: YearForm["age"]): readonly string[] =>
  YEAR.filter((key) => age === "adult" || !OF_WINTER.includes(key));

/** The form before anything is typed. */
export const blankYear: YearForm = {
  label: "",
  sex: "",
  born: "",
  mass: "",
  age: "adult",
  latitude: "",
  longitude: "",
  elevation: "",
  way: "forwards",
  when: "",
  sheets: usualSheets("adult"),
};

const template = (key: string): Sheet => {
  const found = templates.find((one) => one.key === key);
  if (!found) throw new Error(`there is no sheet ${key}`);
  return found;
};
export const yearSheets: readonly Sheet[] = YEAR.map(template);

interface Figures {
  readonly label: string;
  readonly born: number | null;
  readonly mass: number | null;
  readonly latitude: number | null;
  readonly longitude: number | null;
  readonly elevation: number | null;
  readonly when: number | null;
}

/** A mass or an elevation that may have its thousands set apart: 1.500 is one and a half, or fifteen hundred. */
const THOUSANDS = /^\s*-?[1-9]\d{0,2}[.,]\d{3}\s*$/;

/** The form read, or in words what in it cannot be. */
const read = (form: YearForm): Figures | string => {
  const { units = "metric" } = form;
  const wrong: string[] = [];
  const figure = (
    words: string,
    typed: string,
    [lowest, highest]: readonly [number, number],
    unit: Unit = "none",
  ): number | null => {
    if (typed.trim() === "") return null;
    const value = Number(typed.trim().replace(",", "."));
    if (unit !== "none" && THOUSANDS.test(typed)) {
      wrong.push(
        `${words} is "${typed}", which can be read in two ways: write ${typed.trim().replace(/[.,]/, "")} or ${value}.`,
      );
      return null;
    }
    const [least, most] = [limitIn("least", lowest, unit, units), limitIn("most", highest, unit, units)];
    if (Number.isFinite(value) && value >= least && value <= most) return value;
    wrong.push(`${words} is "${typed}": give a number from ${least} to ${most}, or leave it blank.`);
    return null;
  };
  const day = (words: string, typed: string): number | null => {
    if (typed.trim() === "") return null;
    const serial = serialOfIso(typed.trim());
    if (serial !== undefined) return serial;
    wrong.push(`${words} is "${typed}": give a date such as 2026-10-05, or leave it blank.`);
    return null;
  };
  const label = form.label.trim();
  if (label === "") wrong.push("Give the animal's name: the sheets find it by that.");
  if (form.sheets.length === 0) wrong.push(CHOOSE_A_SHEET);
  const figures = {
    label,
    born: day("Born", form.born),
    mass: figure("Mass", form.mass, MASS, "gram"),
    latitude: figure("Latitude", form.latitude, LATITUDE),
    longitude: figure("Longitude", form.longitude, LONGITUDE),
    elevation: figure("Elevation", form.elevation, ELEVATION, "metre"),
    when: day("The day of the meal", form.when),
  };
  return wrong.length > 0 ? wrong.join(" ") : figures;
};

/** What is known of each sheet's cells. What is not stays blank, and the sheet asks for it. */
const entriesOf = (
  { sex, way, age }: YearForm,
  { label, born, mass, latitude, longitude, elevation, when }: Figures,
): Readonly<Record<(typeof YEAR)[number], Readonly<Record<string, Content>>>> => ({
  animals: {
    "reminders.today": "=TODAY()",
    "list.label[1]": label,
    "list.winters[1]": age === "adult" ? "yes" : "no",
    "list.sex[1]": sex === "" ? null : sex,
    "list.born[1]": born,
    "list.mass[1]": mass,
  },
  nativeClimate: { "place.latitude": latitude, "place.longitude": longitude, "place.elevation": elevation },
  yearPlan: { "year.latitude": latitude },
  coolingPlan: { "plan.label": label, "plan.way": way, "plan.when": when, "air.mass": mass },
  winterLog: { "animal.label": label },
  feedingLog: { "who.label[1]": label },
  weights: { "animal.label": label },
  aboutThisWorkbook: { "workbook.animals": label },
});

const chosen = ({ sheets }: YearForm): readonly Sheet[] => yearSheets.filter(({ key }) => sheets.includes(key));

/** Where a cell of a template stands, rows and columns counted from 0. */
const placeOf = (key: string, name: string): { readonly row: number; readonly column: number } => {
  const { top, left } = areaOf(cellOf(template(key), name));
  return { row: top - 1, column: left - 1 };
};

export const startYear: Action<YearForm> = {
  key: "start-year",
  label: "Start my year",
  about:
    "Adds the sheets of a year for one animal, blank and linked: what you give here stands once, and the sheets follow one " +
    "another. What is left blank each sheet asks for, in one line under its title.",
  async describe(workbook, form) {
    const figures = read(form);
    if (typeof figures === "string") return impossible(`${figures} Nothing was changed.`);
    const { tabs } = tabsOf(await workbook.read());
    const there = tabs.filter(({ template }) => form.sheets.includes(template.key)).map(({ name }) => name);
    return {
      text:
        `Adds ${counted(form.sheets.length, "sheet")} after your last one.` +
        (there.length > 0
          ? ` ${sheetsInWords(there)} ${there.length === 1 ? "is" : "are"} in the workbook already and ${there.length === 1 ? "stays" : "stay"} as ${there.length === 1 ? "it is" : "they are"}. Untick what you do not want twice: the new sheets then follow those that are there.`
          : ""),
      possible: true,
      ask: there.length > 0,
    };
  },
  async run(workbook, form, options) {
    const figures = read(form);
    if (typeof figures === "string") throw new WorkbookError(`${figures} Nothing was changed.`);
    const entries = entriesOf(form, figures);
    const sheets = chosen(form);
    const { names, linked, unlisted, left } = await insertLinked(
      workbook,
      sheets.map((sheet) =>
        withEntries(cleared(inSystem(sheet, form.units ?? "metric")), entries[sheet.key as (typeof YEAR)[number]]),
      ),
      options,
      (inserted) => {
        const nameOf = (key: string): string | undefined => inserted[sheets.findIndex((sheet) => sheet.key === key)];
        const [today, plan] = [nameOf("animals"), nameOf("coolingPlan")];
        // Others may stand in the workbook: this animal's is the one that came with it.
        return today !== undefined && plan !== undefined
          ? [{ ...placeOf("animals", "list.plan[1]"), sheet: today, cells: [[plan]] }]
          : [];
      },
    );
    return {
      text:
        `${names.map((name) => `"${name}"`).join(", ")} ${names.length === 1 ? "is" : "are"} in the workbook, blank; ` +
        `${counted(linked.length, "cell")} of them ${linked.length === 1 ? "follows" : "follow"} another sheet. Each names under its ` +
        "title what is still needed. Ask a reptile vet before an animal is cooled." +
        unlistedWords(unlisted) +
        undrawn(workbook, left),
      left,
    };
  },
};
