import { cautions } from "../../functions/cautions";
import { isoOf, serialOf } from "../../functions/dates";
import { EXAMPLE } from "../sheets/shared/assemble";
import type { Chart, Sheet } from "../sheets/sheet";
import type { SheetContents } from "../workbook";
import { valuesOf } from "./template";

type Pictured = Pick<Chart, "title" | "summary" | "provenance" | "cautions">;

/** The words of a cell; an error has none. */
const wordsOf = (contents: Pick<SheetContents, "cells">, cell: string): string => {
  const [[value] = []] = valuesOf(contents.cells, cell);
  return typeof value === "string" && !value.startsWith("#") ? value.trim() : "";
};

/** The first sentence of the line that says what the example is made of, while it stands on the sheet. */
const exampleIn = ({ cells }: Pick<SheetContents, "cells">): string => {
  const line = cells.slice(0, 8).find(([first]) => typeof first?.value === "string" && first.value.startsWith(EXAMPLE));
  return String(line?.[0]?.value ?? "").split(/(?<=\.) /)[0] ?? "";
};

/**
 * What travels with a picture: what was drawn, from which stations, how corrected and whose records they are, what to be
 * careful of, and when.
 */
export const captionOf = (
  picture: Pictured,
  template: Pick<Sheet, "cautions">,
  contents: Pick<SheetContents, "cells">,
  today: Date,
): string =>
  [
    picture.title,
    exampleIn(contents),
    wordsOf(contents, picture.summary),
    ...(picture.provenance ?? []).map((cell) => wordsOf(contents, cell)),
    ...(picture.cautions ?? template.cautions.slice(0, 1)).map((key) => cautions[key]),
    `Drawn ${isoOf(serialOf(today))}.`,
  ]
    .filter((part) => part !== "")
    .map((part) => (/[.!?]$/.test(part) ? part : `${part}.`))
    .join(" ");
