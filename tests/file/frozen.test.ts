import { readXlsx } from "../../addin/file/read";
import { freeze } from "../../taskpane/actions/freeze";
import { hasFunction } from "../../taskpane/actions/formulas";
import { sheets } from "../../taskpane/sheets/catalogue";
import { openWorkbook } from "../preview/engine";
import { differences } from "./differences";
import { LibreOffice } from "./libreOffice";

jest.setTimeout(120_000);

test("a frozen workbook saved as .xlsx opens in LibreOffice with every value in place", async () => {
  const { workbook, close } = openWorkbook();
  const office = new LibreOffice();
  try {
    const names = await workbook.insert(sheets.slice(0, 5));
    const before = await workbook.read(names);
    expect(
      before.flatMap(({ cells }) => cells.flat()).filter((c) => hasFunction(c.formula ?? "")).length,
    ).toBeGreaterThan(20);
    await freeze.run(workbook, undefined);
    const all = await workbook.sheetNames();
    expect(all).toContain("Worked formulas");
    const { sheets: opened } = await readXlsx(await office.convert(await workbook.toFile(all), "xlsx", "xlsx"));
    for (const { name, cells } of before) {
      const other = opened.find((sheet) => sheet.name === name);
      if (!other) throw new Error(`no sheet ${name}`);
      expect(differences(cells, other)).toEqual([]);
      expect(other.cells.flat().filter((c) => hasFunction(c.formula ?? ""))).toEqual([]);
    }
  } finally {
    office.close();
    close();
  }
});
