import { FormulaDataModel } from "@univerjs/engine-formula";
import type { FWorksheet } from "@univerjs/sheets/lib/facade";
import { CellAlertManagerService, CellAlertType, HoverManagerService } from "@univerjs/sheets-ui";
import type { Engine } from "./engine";
import { onManner } from "./manner";
import { wordsOf } from "./readCells";
import { misfitOf } from "./typed";

/** What is wrong in a cell, in words; undefined where nothing is, or nobody knows more than the cell shows. */
const wordsAt = (sheet: FWorksheet, row: number, column: number): string | undefined => {
  const own = sheet.getSheet().getCellMatrix().getValue(row, column);
  const spilled = sheet.getInject().get(FormulaDataModel).getArrayFormulaCellData();
  const found = own?.v != null ? own : spilled[sheet.getWorkbook().getUnitId()]?.[sheet.getSheetId()]?.[row]?.[column];
  const words = wordsOf(found);
  return words === undefined ? misfitOf(own) : `${String(found?.v)}: ${words}`;
};

/** Shows the words of the selected cell beside the title: the cell itself has room for a code only. */
export const showProblems = ({ api }: Engine, line: HTMLElement): void => {
  const show = (): void => {
    const sheet = api.getActiveWorkbook()?.getActiveSheet();
    const cell = api.getActiveWorkbook()?.getActiveCell();
    if (!sheet || !cell) return;
    const words = wordsAt(sheet, cell.getRow(), cell.getColumn());
    line.textContent = words === undefined ? "" : `${cell.getA1Notation()} ${words}`;
  };
  api.addEvent(api.Event.SelectionChanged, show);
  // What has been typed into the selected cell and stays text is told at once, with no formula to work out.
  api.addEvent(api.Event.SheetValueChanged, show);
  api.getFormula().calculationResultApplied(show);
  onManner(show);
};

/** After the engine's own note, which waits a tenth of a second. */
const AFTER = 150;

/** Says the same under the pointer: the engine knows only what kind of error a cell holds. */
export const sayUnderPointer = ({ api, univer }: Engine): void => {
  const injector = univer.__getInjector();
  const alerts = injector.get(CellAlertManagerService);
  let timer: ReturnType<typeof setTimeout> | undefined;
  const KEY = "words";
  injector.get(HoverManagerService).currentCell$.subscribe((place) => {
    clearTimeout(timer);
    timer = setTimeout(() => {
      const sheet = api.getActiveWorkbook()?.getActiveSheet();
      const words = place && sheet ? wordsAt(sheet, place.location.row, place.location.col) : undefined;
      alerts.removeAlert(KEY);
      if (words === undefined || !place) return;
      for (const key of [...alerts.currentAlert.keys()]) alerts.removeAlert(key);
      const [, code = "Text", sentence = words] = /^(#\S+): (.*)$/su.exec(words) ?? [];
      alerts.showAlert({
        type: code === "Text" ? CellAlertType.WARNING : CellAlertType.ERROR,
        title: code,
        message: sentence,
        location: place.location,
        width: 320,
        height: 90,
        key: KEY,
      });
    }, AFTER);
  });
};
