import { reportOn } from "../../addin/excel/report";
import { excelWorkbook } from "../../addin/excel/workbook";
import { VERSION } from "../../functions/release";
import { selfChecks } from "../../taskpane/sheets/shared/selfChecks";
import type { Workbook } from "../../taskpane/workbook";
import { FakeExcel, type Answer } from "./fake";

/** An Excel that answers once it has been looked at, and one check of which fails. */
const opened = (failing: string): Workbook => {
  let late = true;
  const answer: Answer = (formula) => {
    if (late) return [["#BUSY!"]];
    const check = selfChecks.find((one) => one.formula === formula);
    if (check) return [[check.name === failing ? "#VALUE!" : check.expected]];
    return [["pass"]];
  };
  const excel = new FakeExcel(answer);
  const { Excel, Office } = excel.globals() as { Excel: object; Office: { context: object } };
  const diagnostics = { host: "Excel", platform: "PC", version: "16.0.1.2" };
  Object.assign(Office.context, { diagnostics, displayLanguage: "de-AT" });
  Object.assign(globalThis, { Excel, Office, navigator: { userAgent: "a test" } });
  return {
    ...excelWorkbook,
    async read(names) {
      const seen = await excelWorkbook.read(names);
      if (names) {
        late = false;
        excel.recalculate();
      }
      return seen;
    },
  };
};

test("a report waits for the answers of Self-check, and says which Excel gave them", async () => {
  const report = await reportOn(opened("LAPSE"), { complaints: ["the policy refused x"], ready: 1234.5 }, 20_000);
  expect(report).toMatchObject({
    version: VERSION,
    host: { host: "Excel", platform: "PC", version: "16.0.1.2" },
    language: "de-AT",
    complaints: ["the policy refused x"],
    without: [],
  });
  expect(report.requirementSets.ExcelApi).toMatch(/^1\.\d+$/);
  expect(report.requirementSets.SharedRuntime).toBe("none");
  expect(report.milliseconds).toEqual({
    "page asked for to Excel ready": 1235,
    "Self-check inserted": expect.any(Number) as number,
    "Self-check answered": expect.any(Number) as number,
  });
  const rows = new Map(report.selfCheck.map((row) => [row[0], row]));
  for (const { name, expected } of selfChecks)
    expect([name, rows.get(name)?.[3]]).toEqual([name, name === "LAPSE" ? "#VALUE!" : expected]);
  expect(report.selfCheck.flat()).not.toContain("#BUSY!");
});

test("an Excel that never answers is reported as it stands", async () => {
  const { selfCheck } = await reportOn(opened(""), { complaints: [], ready: 0 }, 0);
  expect(selfCheck.flat()).toContain("#BUSY!");
});
