import { startHeadless } from "../../addin/preview/headless";
import { PreviewWorkbook } from "../../addin/preview/workbook";
import { catalogue } from "../../functions/catalogue";
import { addRows } from "../../taskpane/actions/addRows";
import { animals } from "../../taskpane/sheets/animals";
import { areaOf } from "../../taskpane/sheets/shared/address";
import { cellOf } from "../../taskpane/sheets/shared/page";
import { race, type Line, type Table } from "./race";

const [FEW, MANY] = [61, 1000];
/** The pane adds so many rows at a time. */
const AT_ONCE = 500;
const START = 46_300;

/** A workbook of the sheet Today with so many animals; what comes back types another date into it. */
const withAnimals = async (wanted: number) => {
  const engine = startHeadless(catalogue);
  const workbook = new PreviewWorkbook(engine);
  const [sheet] = (await workbook.insert([animals])) as [string];
  const { top, left, bottom } = areaOf(cellOf(animals, "list.label"));
  await workbook.show(sheet, top - 1, left - 1);
  for (let rows = bottom - top + 1; rows < wanted; rows += AT_ONCE)
    await addRows.run(workbook, Math.min(AT_ONCE, wanted - rows), {});
  const column = (name: string, of: (row: number) => string | number) => ({
    sheet,
    row: top - 1,
    column: areaOf(cellOf(animals, `list.${name}`)).left - 1,
    cells: Array.from({ length: wanted }, (_, row) => [of(row)]),
  });
  await workbook.write([
    column("label", (row) => `Animal ${row}`),
    column("winters", (row) => (row % 3 === 0 ? "no" : "yes")),
    column("fed", (row) => START - (row % 9)),
    column("weighed", (row) => START - (row % 40)),
    column("box", () => "shut"),
    column("born", (row) => START - 300 - (row % 3000)),
  ]);
  const today = areaOf(cellOf(animals, "reminders.today"));
  let date = START;
  return {
    change: () => workbook.write([{ sheet, row: today.top - 1, column: today.left - 1, cells: [[++date]] }]),
    told: async () => {
      const [contents] = await workbook.read([sheet]);
      const lines = contents?.cells.slice(top - 1, top - 1 + wanted) ?? [];
      return lines.filter((line) => {
        const words = line[left + 1]?.value;
        return typeof words === "string" && /^(Feed|No meal|No food)/.test(words);
      }).length;
    },
    close: () => engine.univer.dispose(),
  };
};

/** Sixteen times the rows, and what grows with the sheet beside them. */
const ALLOWED = 30;

export const tables = async (): Promise<Table[]> => {
  const few = await withAnimals(FEW);
  const many = await withAnimals(MANY);
  const against = `${FEW} animals`;
  const lines = await race(
    [
      { what: against, run: few.change },
      { what: `${MANY.toLocaleString("en")} animals`, run: many.change, against, allowed: ALLOWED },
    ],
    5,
    2,
  );
  const answered = await many.told();
  if (answered !== MANY) throw new Error(`Today tells of ${answered} animals what to do, and not of ${MANY}`);
  few.close();
  many.close();
  const [fewer, more] = lines as [Line, Line];
  const told = { animals: MANY, today: (more.milliseconds as number) / 1000 };
  return [
    {
      title: "Today: another date, until every animal's line is worked out, in the preview's engine",
      lines: [fewer, { ...more, told }],
    },
  ];
};
