import { evaluate } from "../../addin/boundary/evaluate";
import { shipped } from "../../addin/network/shipped";
import { mountPane, type SavedFile, type Section, type Theme } from "../../taskpane";
import { WorkbookError } from "../../taskpane/workbook";
import { MemoryWorkbook } from "../pane/memoryWorkbook";

/** A page with nothing on it but the pane, over a workbook in memory. The address says the theme and the section. */
const workbook = new MemoryWorkbook((formula) => {
  if (formula.includes("FLUCTUATION(10,")) return [[{ error: "#N/A" }]];
  if (formula.includes("_xldudf")) return [[{ error: "#NAME?" }]];
  return formula.includes("RAMP(") ? [[1], [2], [3]] : [[7]];
});
workbook.put("Sheet1", [
  [1, { formula: "=VIV.LAPSE(24,300,1400)" }],
  [null, { formula: "=_xldudf_VIV_AGE(1,2)" }],
]);
workbook.put("Juniper's log", [[{ formula: "=VIV.RAMP(1,2,3,4)" }]], { locked: true });
workbook.open = (name) => {
  workbook.sheets = [];
  workbook.put(name, [["mine"]]);
  return Promise.resolve({ sheets: [name], left: ["The chart on its first sheet"] });
};

const saved: SavedFile[] = [];
const state = { workbook, saved, slow: false };
const write = workbook.write.bind(workbook);
// A host that takes its time, so that progress and cancel can be seen.
workbook.write = async (changes, options) => {
  for (let step = 0; state.slow && step < 100; step++) {
    await new Promise((done) => setTimeout(done, 50));
    options?.progress?.(step / 100);
    if (options?.signal?.aborted) throw new WorkbookError("Cancelled. Nothing was changed.");
  }
  return write(changes, options);
};

const asked = new URLSearchParams(location.search);
const element = document.getElementById("pane");
if (!element) throw new Error("the page has no #pane");
const pane = mountPane(element, workbook, {
  shipped,
  evaluate,
  handbook: "handbook/",
  theme: (asked.get("theme") ?? "light") as Theme,
  section: (asked.get("section") ?? "sheets") as Section,
  save: (file) => void saved.push(file),
});
Object.assign(window, { state, pane });
