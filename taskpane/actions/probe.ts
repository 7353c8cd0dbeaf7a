import { PREFIX } from "../../functions/define";
import { type Workbook, WorkbookError } from "../workbook";
import { stopIfCancelled, type Action } from "./action";
import { leaving, takeBack } from "./takeBack";

const WAITS = [0, 200, 500, 1000, 2000]; // ms: a program may work out a new sheet a moment later

const pause = (ms: number) => new Promise((done) => setTimeout(done, ms));

/** The answer of a formula whose first argument is a blank cell, on a sheet that is there only meanwhile. */
const answerOverBlank = async (workbook: Workbook, signal?: AbortSignal) => {
  // With 0 for the blank this is 10 − 0; with a blank it is #N/A.
  const name = await workbook.add("Blank cell probe", [[null, { formula: `=${PREFIX}.FLUCTUATION(10,A1)` }]]);
  let value;
  try {
    for (const wait of WAITS) {
      if (wait > 0) await pause(wait);
      if (signal?.aborted) throw new WorkbookError("Cancelled. Nothing was changed.");
      value = (await workbook.read([name]))[0]?.cells[0]?.[1]?.value;
      const pending = value === null || value === undefined || value === "";
      const unsure =
        typeof value === "object" && value !== null && ["#BUSY!", "#NAME?", "#CONNECT!"].includes(value.error);
      if (!pending && !unsure) break;
    }
  } catch (failure) {
    return takeBack(() => workbook.remove([name]), failure, `Remove the sheet "${name}" by hand.`);
  }
  try {
    await workbook.remove([name]);
  } catch (failure) {
    // Once more: the sheet must not stay for a moment's trouble.
    try {
      await workbook.remove([name]);
    } catch {
      throw leaving(failure, `Remove the sheet "${name}" by hand.`);
    }
  }
  return value;
};

export const probe: Action = {
  key: "probe",
  label: "Look at a blank cell",
  about: "Shows what this spreadsheet hands to a VIV function when a cell is blank, and what that means for you.",
  describe() {
    return {
      text: "A sheet is added for a moment and removed again. Nothing else changes.",
      possible: true,
      ask: false,
    };
  },
  async run(workbook, _, options) {
    stopIfCancelled(options);
    const value = await answerOverBlank(workbook, options?.signal);
    if (typeof value === "object" && value?.error === "#N/A") {
      return {
        text: `A blank is handed over as a blank by ${workbook.program}. A formula with a blank cell says what is missing; it never counts as 0.`,
      };
    }
    if (value === 10) {
      return {
        text:
          `A blank is handed over as 0 by ${workbook.program}. The sheets of this pane guard against that. In formulas of your ` +
          'own, write =IF(ISBLANK(B5),"",…) around them, or update the program: 0 °C is a real temperature.',
      };
    }
    return {
      text:
        `The functions did not answer (${typeof value === "object" && value ? value.error : "nothing came"}). ` +
        "Open the add-in, wait a moment, then look again.",
    };
  },
};
