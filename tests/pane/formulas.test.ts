import fc from "fast-check";
import { catalogue } from "../../functions/catalogue";
import { formulaOf } from "../../functions/formula";
import { codeOf, hasFunction, respelled, spillReferences } from "../../taskpane/actions/formulas";

describe("VIV functions in a formula", () => {
  test.each([
    "=VIV.LAPSE(24,300,1400)",
    "=viv.lapse(24,300,1400)",
    "=1+IF(A1>2,ROUND(VIV.LAPSE(A1,B1,C1),1),0)",
    '="it is "&VIV.RELEASE()',
    '="a ""word"" and "&VIV.RELEASE()&"!"',
    "='It''s'!A1+VIV.AGE(A1,B1)",
    "=VIV.AGE('VIV.AGE(1)'!A1,B1)",
    "=_xldudf_VIV_AGE(A1,B1)",
    "=[2]!_xldudf_VIV_AGE(A1,B1)",
    "=MAP(A1:A3,VIV.SEASONSHIFT)",
    "=Log[[#This Row],[it''s]]+VIV.AGE(A1,B1)",
    "=-VIV.AGE(A1,B1)",
    "={1;2}*VIV.AGE(A1,B1)",
    "=VIV.LAPSE (24,300,1400)",
  ])("are found: %s", (formula) => expect(hasFunction(formula)).toBe(true));

  test.each([
    "=A1",
    '="VIV.LAPSE(24,300,1400)"',
    '="say ""VIV.LAPSE(1)"" now"',
    "='VIV.LAPSE(1)'!A1",
    "='It''s VIV.AGE(1)'!A1",
    "=VIV.LAPSE!A1",
    "=MYVIV.LAPSE(1)",
    "=MY_VIV.LAPSE(1)",
    "=A.VIV.LAPSE(1)",
    "=VIV.A.B(1)",
    "=Log[VIV.LAPSE(1)]",
    "=Log[a '] VIV.LAPSE(1)]",
    "='C:\\[VIV.AGE(1).xlsx]Sheet1'!A1",
    "=VIV+LAPSE",
    "=vivarium",
  ])("are not seen where there are none: %s", (formula) => expect(hasFunction(formula)).toBe(false));

  test("whatever stands in text or in a sheet's name changes nothing", () =>
    fc.assert(
      fc.property(fc.string(), fc.boolean(), fc.string(), (words, called, name) => {
        const literal = `"${words.replaceAll('"', '""')}"`;
        const sheet = `'${name.replaceAll("'", "''")}'`;
        const formula = `=${literal}&${sheet}!A1&${called ? "VIV.AGE(A1,B1)" : "AGE(A1,B1)"}&${literal}`;
        expect(hasFunction(formula)).toBe(called);
        expect(codeOf(formula)).toHaveLength(formula.length);
      }),
    ));

  test("Excel's stored spelling becomes the typed one, in code only", () => {
    expect(respelled('=_xldudf_VIV_AGE(A1,"_xldudf_VIV_AGE")+[2]!_xldudf_VIV_RELEASE()')).toBe(
      '=VIV.AGE(A1,"_xldudf_VIV_AGE")+VIV.RELEASE()',
    );
    expect(respelled("=VIV.AGE(A1,B1)")).toBe("=VIV.AGE(A1,B1)");
  });

  test("references to a whole spill", () => {
    expect(spillReferences("=SUM(B5#)+SUM('It''s a log'!$C$7#)+Plan!D1#+Log[#All]")).toEqual([
      { cell: "B5" },
      { sheet: "It's a log", cell: "C7" },
      { sheet: "Plan", cell: "D1" },
    ]);
    expect(spillReferences("=\"B5#\"&'B5#'!A1&TABLE1#")).toEqual([]);
    expect(spillReferences("=#N/A")).toEqual([]);
  });
});

describe("examples as formulas", () => {
  test.each(
    catalogue.flatMap((one) => one.examples.map((example, i) => [one.name, i + 1, formulaOf(one, example)] as const)),
  )("%s, example %i, is a formula that Excel takes: %s", (name, _, formula) => {
    expect(formula.startsWith(`=VIV.${name}(`)).toBe(true);
    expect(hasFunction(formula)).toBe(true);
    expect(formula.length).toBeLessThanOrEqual(8192);
    // An array constant holds no call.
    for (const [array] of codeOf(formula).matchAll(/\{[^}]*\}/g)) expect(array).not.toMatch(/\(/);
  });
});
