import { startHeadless } from "../../addin/preview/headless";
import { PreviewWorkbook } from "../../addin/preview/workbook";
import { catalogue } from "../../functions/catalogue";
import { insertLinked } from "../../taskpane/actions/insertLinked";
import { sheets } from "../../taskpane/sheets/catalogue";
import { coolingPlan } from "../../taskpane/sheets/coolingPlan";
import { areaOf } from "../../taskpane/sheets/shared/address";
import { cellOf } from "../../taskpane/sheets/shared/page";
import { median, processorTime, type Table } from "./race";

const CHANGES = [70, 84, 77, 80, 71, 83, 75];

/** One date changed in a workbook of all sheets, linked, against the same workbook's first working out. */
export const tables = async (): Promise<Table[]> => {
  const engine = startHeadless(catalogue);
  const workbook = new PreviewWorkbook(engine);
  const start = processorTime();
  const { names } = await insertLinked(workbook, sheets);
  const first = processorTime() - start;
  const sheet = names[sheets.findIndex(({ key }) => key === coolingPlan.key)] as string;
  const { top, left } = areaOf(cellOf(coolingPlan, "plan.cold"));
  const times: number[] = [];
  for (const days of CHANGES) {
    const begun = processorTime();
    await workbook.write([{ sheet, row: top - 1, column: left - 1, cells: [[days]] }]);
    times.push(processorTime() - begun);
  }
  engine.univer.dispose();
  const milliseconds = median(times);
  return [
    {
      title: "All sheets linked in one workbook, in the preview's engine",
      lines: [
        { what: "inserted, linked and worked out", milliseconds: first },
        {
          what: "one changed date",
          milliseconds,
          ratio: milliseconds / first,
          against: "the insertion",
          allowed: 0.12,
          told: { linked: milliseconds / 1000 },
        },
      ],
    },
  ];
};
