import { evaluateFormulas } from "../../addin/preview/formulas";
import { openWorkbook } from "./engine";

/** Functions that wait for the network, in the engine: alone, inside others, beside others, spilled and counted on. */
test("answers come once the network is there, wherever the formula stands", async () => {
  const { engine, workbook, close } = openWorkbook();
  try {
    const [inside, test, note, unknown, plain] = await evaluateFormulas(engine, [
      "=INDEX(VIV.STATIONPLACE(1001),1,3)+1",
      '=IF(INDEX(VIV.SITECLIMATE(46.5,9.8,1500),7,2)>10,"mild","cold")',
      '=IFERROR(VIV.SITECLIMATE(-45,-120,0),"too few")',
      '=VIV.STATIONRECORD("Zugspize")',
      "=VIV.LAPSE(24,300,1400)",
    ]);
    expect(inside).toEqual([[{ value: 10 }]]);
    expect(test).toEqual([[{ value: "mild" }]]);
    expect(note).toEqual([[{ value: "too few" }]]);
    expect(unknown).toEqual([
      [{ error: "#N/A", message: expect.stringContaining("Zugspitze, Germany (10961)") as string }],
    ]);
    expect(plain).toEqual([[{ value: 16.85 }]]);

    const name = await workbook.add("Place", [
      [1001, { formula: "=VIV.STATIONPLACE(A1)" }],
      [null, { formula: "=COUNT(B1:H1)" }],
    ]);
    const [sheet] = await workbook.read([name]);
    expect(sheet?.cells[0]?.slice(1, 8).map(({ value }) => value)).toEqual([
      70.94,
      -8.67,
      9,
      18,
      "Norway",
      "01001",
      "CLIMAT reports 2003-2021",
    ]);
    expect(sheet?.cells[1]?.[1]?.value).toBe(4);
  } finally {
    close();
  }
});
