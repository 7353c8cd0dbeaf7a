import { tokenize } from "@borgar/fx";
import fc from "fast-check";
import { catalogue } from "../../functions/catalogue";
import { formulaOf } from "../../functions/formula";
import {
  functionsIn,
  hasFunction,
  onOtherSheets,
  respelled,
  sheetReferences,
  spillReferences,
} from "../../taskpane/actions/formulas";

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

  test("are named, each as often as it is called", () =>
    expect(functionsIn('=viv.Lapse(VIV.AGE(A1,B1),"VIV.RAMP()",2)+_xldudf_VIV_AGE(A1,B1)')).toEqual([
      "LAPSE",
      "AGE",
      "AGE",
    ]));
});

describe("other sheets in a formula", () => {
  test("what it names on them", () => {
    expect(
      sheetReferences("='It''s a log'!$B$5:C9+Plan!B:B+SUM(Plan!$2:3)+Plan!dates&\"Plan!A1\"&A1&'[b.xlsx]S'!C3"),
    ).toEqual([
      { sheet: "It's a log", address: "B5:C9" },
      { sheet: "Plan", address: "B:B" },
      { sheet: "Plan", address: "2:3" },
      { sheet: "Plan", address: "dates" },
      { sheet: "[b.xlsx]S", address: "C3" },
    ]);
    expect(sheetReferences("=A1+'no sheet")).toEqual([]);
  });

  test("others take their place, in references alone", () =>
    expect(
      onOtherSheets(
        '=IF(PLAN!$B$5="","",VIV.AGE(\'It\'\'s a log\'!C5:C9,Plan!dates))&"Plan!A1"&Planner!A1&Plan!A1#',
        new Map([
          ["plan", "Plan (2)"],
          ["it's a log", "Log"],
        ]),
      ),
    ).toBe(`=IF('Plan (2)'!$B$5="","",VIV.AGE('Log'!C5:C9,'Plan (2)'!dates))&"Plan!A1"&Planner!A1&'Plan (2)'!A1#`));
});

describe("examples as formulas", () => {
  test.each(
    catalogue.flatMap((one) => one.examples.map((example, i) => [one.name, i + 1, formulaOf(one, example)] as const)),
  )("%s, example %i, is a formula that Excel takes: %s", (name, _, formula) => {
    expect(formula.startsWith(`=VIV.${name}(`)).toBe(true);
    expect(hasFunction(formula)).toBe(true);
    expect(formula.length).toBeLessThanOrEqual(8192);
    // An array constant holds no call.
    const code = tokenize(formula).filter(({ type }) => type !== "string");
    const arrays = code
      .map(({ value }) => value)
      .join("")
      .matchAll(/\{[^}]*\}/g);
    for (const [array] of arrays) expect(array).not.toMatch(/\(/);
  });
});
