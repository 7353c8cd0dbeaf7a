import { IUndoRedoService } from "@univerjs/core";
import { catalogue } from "../../functions/catalogue";
import { mountPane } from "../../taskpane";
import { sheets } from "../../taskpane/sheets/catalogue";
import { firstInput } from "../../taskpane/sheets/firstInput";
import { systems } from "../../functions/units";
import { cleared } from "../../taskpane/sheets/clear";
import { inSystem } from "../../taskpane/sheets/shared/systems";
import { mannerOf } from "../../taskpane/text/mannerOf";
import { evaluate } from "../boundary/evaluate";
import { shipped } from "../network/shipped";
import { HANDBOOK, showHelp } from "./help";
import { keepWorkbook } from "./keep";
import { setManner } from "./manner";
import { showManner } from "./mannerMenu";
import { hangPictures, registerPictures } from "./pictures";
import { startPage } from "./page";
import { sayUnderPointer, showProblems } from "./problems";
import { browserShelf } from "./shelf";
import { watchChanges } from "./unsaved";
import { PreviewWorkbook } from "./workbook";
import "./preview.css";

const element = (id: string): HTMLElement => {
  const found = document.getElementById(id);
  if (!found) throw new Error(`the page has no #${id}`);
  return found;
};

const dark = matchMedia("(prefers-color-scheme: dark)");
const contrast = matchMedia("(forced-colors: active)");
const theme = () => (contrast.matches ? "contrast" : dark.matches ? "dark" : "light");

/** The button that hides the pane and brings it back. Where the page is narrow it begins hidden. */
const foldPane = (): void => {
  const button = element("fold");
  const fold = (folded: boolean): void => {
    document.body.classList.toggle("folded", folded);
    button.setAttribute("aria-expanded", String(!folded));
    button.textContent = folded ? "Show pane" : "Hide pane";
    // The grid measures its place anew when the window says that it has changed.
    requestAnimationFrame(() => window.dispatchEvent(new Event("resize")));
  };
  button.addEventListener("click", () => fold(!document.body.classList.contains("folded")));
  fold(matchMedia("(max-width: 800px)").matches);
};

const start = async (): Promise<void> => {
  foldPane();
  const engine = startPage(element("grid"), dark.matches, catalogue);
  registerPictures(engine);
  const unsaved = watchChanges(engine);
  const workbook = new PreviewWorkbook(engine, hangPictures, unsaved.standing);
  // The browser asks in its own words.
  window.addEventListener("beforeunload", (event) => {
    if (unsaved.isChanged()) event.preventDefault();
  });
  const keeping = await keepWorkbook(engine, workbook, unsaved, browserShelf());
  workbook.kept = keeping;
  // A page that is put away may never be seen again.
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden") void keeping.now();
  });
  const pane = mountPane(element("pane"), workbook, { theme: theme(), shipped, evaluate, handbook: HANDBOOK });
  for (const query of [dark, contrast]) {
    query.addEventListener("change", () => {
      engine.api.toggleDarkMode(dark.matches);
      pane.setTheme(theme());
    });
  }
  setManner(mannerOf(navigator.language));
  showManner(engine, element("manner"));
  showProblems(engine, element("problem"));
  showHelp(engine, element("help") as HTMLAnchorElement);
  sayUnderPointer(engine);
  // For the browser's console, and for tests: a grid that is drawn has no cells to look for in the page.
  Object.assign(window, { workbook });

  // The address may name a sheet and its units, and ask for it without its example.
  const asked = new URLSearchParams(location.search);
  const wanted = asked.get("sheet") ?? "nativeClimate";
  const first = sheets.find(({ key }) => key === wanted) ?? sheets[0];
  if (first) {
    const drawn = inSystem(first, systems.find((one) => one === asked.get("units")) ?? "metric");
    await workbook.insert([asked.has("cleared") ? cleared(drawn) : drawn]);
    const book = engine.api.getActiveWorkbook();
    const empty = book?.getSheets()[0];
    // The empty sheet stands last, for the keeper's own.
    if (book && empty) book.moveSheet(empty, book.getSheets().length - 1);
    if (book) engine.univer.__getInjector().get(IUndoRedoService).clearUndoRedo(book.getId());
    const { row, column } = firstInput(first);
    await workbook.show((await workbook.sheetNames())[0] ?? "", row, column);
  }
  // The example that it begins with is nobody's work.
  unsaved.standing()();
  keeping.begin();
  document.body.classList.add("ready");
};

start().catch((error: unknown) => {
  element("problem").textContent = "The spreadsheet could not start. Load the page again, or try another browser.";
  throw error;
});
