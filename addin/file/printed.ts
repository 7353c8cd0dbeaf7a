import { printOf } from "../../taskpane/sheets/print";
import type { Sheet } from "../../taskpane/sheets/sheet";
import type { Page } from "./book";

/** As wide as the paper, and as many pages long as it needs. */
export const FIT_WIDTH = { orientation: "landscape", fitToPage: true, fitToWidth: 1, fitToHeight: 0 } as const;

/** How a sheet of ours is printed, as a file says it. */
export const printed = (template: Sheet): Page => {
  const { area, portrait, titleRows, footer } = printOf(template);
  return {
    setup: {
      ...FIT_WIDTH,
      ...(portrait ? { orientation: "portrait" } : {}),
      ...(area ? { printArea: area } : {}),
      ...(titleRows > 0 ? { printTitlesRow: `1:${titleRows}` } : {}),
    },
    headerFooter: { oddFooter: `&L&8${footer.left}&C&8${footer.centre}&R&8${footer.right}` },
  };
};
