import { mountPane } from "../../taskpane";
import { evaluate } from "../boundary/evaluate";
import { shipped } from "../network/shipped";
import { registerCommands } from "./commands";
import "./taskpane.css";
import { themeOf } from "./theme";
import { excelWorkbook } from "./workbook";

/** The newest part of Excel that the sheets need. */
const NEEDED = ["ExcelApi", "1.12"] as const;

/** Whether this build reports on the Excel in which it runs (`npm run excel:report`); elsewhere its code is left out. */
declare const REPORTS: boolean;
const reporting = REPORTS ? import("./report").then(({ reporter }) => reporter()) : undefined;

const element = (id: string): HTMLElement => {
  const found = document.getElementById(id);
  if (!found) throw new Error(`the page has no #${id}`);
  return found;
};

const notice = (words: string): void => {
  element("notice").textContent = words;
};

/** What is not there outside of Office, and on the web, whatever the types say. */
interface LooseOffice {
  readonly context: { readonly officeTheme?: Office.OfficeTheme };
}

const contrast = matchMedia("(forced-colors: active)");
const dark = matchMedia("(prefers-color-scheme: dark)");
const theme = () =>
  themeOf(
    typeof Office === "undefined"
      ? undefined
      : (Office as Partial<LooseOffice>).context?.officeTheme?.bodyBackgroundColor,
    { contrast: contrast.matches, dark: dark.matches },
  );

const pane = mountPane(element("pane"), excelWorkbook, {
  theme: theme(),
  shipped,
  evaluate,
  handbook: "handbook/",
});
const retheme = (): void => pane.setTheme(theme());
contrast.addEventListener("change", retheme);
dark.addEventListener("change", retheme);
// Excel does not say when its theme changes; the keeper comes back to the pane from the dialog that changes it.
addEventListener("focus", retheme);

if (typeof Office === "undefined") {
  notice("Excel's own script could not be loaded. Reading works; for the rest, go online and open the pane again.");
} else {
  void Office.onReady(({ host }) => {
    retheme();
    if (host !== Office.HostType.Excel) {
      notice("This pane works inside Excel: open it there from the Home tab.");
      return;
    }
    registerCommands(excelWorkbook, notice);
    void reporting?.then((offer) => offer(element("pane"), excelWorkbook));
    if (!Office.context.requirements.isSetSupported(...NEEDED)) {
      notice("This Excel is older than the sheets need. The functions work; update Excel to insert sheets.");
    }
  });
}
