import { WorkbookError, type Change, type SheetContents } from "../workbook";
import { CHOOSE_A_SHEET, counted, impossible, sheetsInWords, type Action } from "./action";
import { freezeSheets, frozenContent } from "./freeze";
import { takeBack } from "./takeBack";
import { followsSheet, hasFunction } from "./formulas";
import { joined } from "./joined";

/** Figures in place of what follows another sheet: a frozen copy must not change with sheets that go on. */
const heldStill = ({ name, cells }: SheetContents): readonly Change[] =>
  cells.flatMap((line, row) =>
    line.flatMap((state, column) =>
      followsSheet(state.formula) && !hasFunction(state.formula ?? "")
        ? [{ sheet: name, row, column, cells: [[frozenContent(state)]] }]
        : [],
    ),
  );

/** `choice`: the names of the sheets to copy. */
export const sharedCopy: Action<readonly string[]> = {
  key: "shared-copy",
  label: "Shared copy",
  about: "Copies the chosen sheets and freezes the copies. Your own sheets keep their formulas.",
  async describe(workbook, names) {
    if (names.length === 0) return impossible(CHOOSE_A_SHEET);
    const contents = await workbook.read(names);
    const formulas = contents.flatMap(({ cells }) =>
      cells.flatMap((line) => line.filter(({ formula }) => formula !== undefined && hasFunction(formula))),
    ).length;
    return {
      text:
        `${counted(names.length, "copy", "copies")} will be added after your last sheet` +
        (formulas > 0
          ? `, with ${counted(formulas, "VIV formula")} as fixed figures.`
          : ". There is no VIV formula to freeze.") +
        ` ${sheetsInWords(names)} ${names.length === 1 ? "stays" : "stay"} as ${names.length === 1 ? "it is" : "they are"}.`,
      possible: true,
      ask: true,
    };
  },
  async run(workbook, names, options) {
    const copies = await workbook.copy(names);
    try {
      await workbook.write(joined((await workbook.read(copies)).flatMap(heldStill)), options);
      const { text, left } = await freezeSheets(workbook, copies, options);
      return { text: `Copied to ${sheetsInWords(copies)}. ${text}`, ...(left ? { left } : {}) };
    } catch (failure) {
      return takeBack(
        () => workbook.remove(copies),
        failure instanceof WorkbookError
          ? failure
          : new WorkbookError("The copies could not be frozen. Nothing was changed."),
        `Remove ${sheetsInWords(copies)} by hand.`,
      );
    }
  },
};
