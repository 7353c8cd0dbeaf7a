import { openContext } from "./requestContext";
import { HeldWorkbook } from "./workbook";

export { identityOf } from "./turn";
export { asExcelSpells, OfficeError, type Answer, type Cell, type Tab } from "./workbook";

/**
 * A strict stand-in for Excel behind Office.js. Like the real one it only records what it is told until `sync`, and
 * then does it in order; unlike a loose one it throws at everything that the real one would punish later or silently:
 * a value read before it was loaded and synchronised, a member that is not modelled, a block of the wrong shape, a
 * sheet's name that is taken, an object of a turn that failed. Any call can be made to fail, and what stood before it
 * in the same turn stays done, as in Excel.
 *
 * Formulas are not worked out: a cell's value is what `answer` says. One that spills is told as Excel tells it.
 */
export class FakeExcel extends HeldWorkbook {
  /** The globals of a page inside Excel. */
  globals(): object {
    return {
      Excel: { run: <T>(batch: (context: never) => Promise<T>) => this.run(batch) },
      Office: {
        context: {
          requirements: {
            isSetSupported: (set: string, version: string) =>
              set === "ExcelApi" && numberOf(version) <= numberOf(String(this.newest)),
          },
        },
      },
    };
  }

  async run<T>(batch: (context: never) => Promise<T>): Promise<T> {
    const { context, end } = openContext(this);
    const result = await batch(context as never);
    await end();
    return result;
  }
}

const numberOf = (version: string): number => {
  const [major, minor] = version.split(".").map(Number) as [number, number];
  return major * 1000 + minor;
};
