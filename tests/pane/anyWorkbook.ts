import fc from "fast-check";
import type { Value } from "../../functions/define";
import type { CellContent } from "../../taskpane/workbook";
import type { Evaluate } from "./memoryWorkbook";

/** Workbooks such as keepers and accidents make, as plain data that any host's workbook can be filled with. */
export interface AnySheet {
  readonly name: string;
  readonly hidden: boolean;
  readonly locked: boolean;
  readonly cells: readonly (readonly CellContent[])[];
}

/** Names with what a formula or a lookup could trip over. */
const names = [
  "Year plan",
  "Juniper's log",
  "VIV.LAPSE(1)",
  "2026",
  'Say "warm"',
  "Überwinterung",
  "a",
  "Worked formulas",
  "Sheet!1",
] as const;

/** Formulas with a VIV function somewhere, in each way of writing it. */
const functionFormulas = [
  "=VIV.LAPSE(24,300,1400)",
  "=viv.ramp(A1,24,8,42)",
  '=IF(COUNT(A1:B1)<2,"",VIV.PREYRATIO(A1,B1))',
  "=SUM(1,ROUND(VIV.MASSLOSS('Juniper''s log'!A1,B2),2))",
  '="a ""quoted"" word "&VIV.RELEASE()',
  "=LET(x,VIV.AGE(A1,B1),x+1)",
  "=_xldudf_VIV_LAPSE(24,300,1400)",
  "=MAP(A1:A3,VIV.SEASONSHIFT)",
  "=VIV.MEDIAN24('VIV.LAPSE(1)'!A1,2)",
  "=VIV.FLUCTUATION(B2#,1)",
] as const;

/** Formulas and texts that only look so. */
const otherFormulas = [
  "=A1+1",
  '="VIV.LAPSE(24,300,1400)"',
  "='VIV.LAPSE(1)'!A1",
  '="say ""VIV.RAMP()"" twice"',
  "=SUM(B2#)",
  "=SUM('Year plan'!A1#)",
  "=MYVIV.LAPSE(1)",
  "=Log[VIV.LAPSE]",
] as const;

const plainValue: fc.Arbitrary<Value> = fc.oneof(
  fc.constantFrom(0, -0.1, 46_300, 1e-9, 0.1 + 0.2, 123_456_789.123),
  fc.constantFrom("", "=VIV.LAPSE(1,2,3)", "text", "12", "#N/A", "'", "2026-10-05"),
  fc.boolean(),
);

const content: fc.Arbitrary<CellContent> = fc.oneof(
  { weight: 6, arbitrary: fc.constant(null) },
  { weight: 2, arbitrary: plainValue },
  // A number in the text makes formulas differ, and so their answers.
  {
    weight: 3,
    arbitrary: fc
      .tuple(fc.constantFrom(...functionFormulas), fc.nat(40))
      .map(([formula, n]) => ({ formula: `${formula}+N("${n}")` })),
  },
  { weight: 2, arbitrary: fc.constantFrom(...otherFormulas).map((formula) => ({ formula })) },
);

const sheet = (name: string): fc.Arbitrary<AnySheet> =>
  fc.record({
    name: fc.constant(name),
    hidden: fc.boolean(),
    locked: fc.integer({ min: 0, max: 5 }).map((n) => n === 0),
    cells: fc.array(fc.array(content, { minLength: 4, maxLength: 4 }), { minLength: 1, maxLength: 7 }),
  });

export const anyWorkbook: fc.Arbitrary<readonly AnySheet[]> = fc
  .shuffledSubarray([...names], { minLength: 1, maxLength: 4 })
  .chain((chosen) => fc.tuple(...chosen.map(sheet)));

const POOL = [1, 0, 17.5, 46_300, "", "=danger", "word", true, { error: "#N/A" }, { error: "#VALUE!" }] as const;

/** Answers by the formula's text alone: one cell to three by three, now and then an error that cannot be frozen. */
export const answers: Evaluate = (formula) => {
  let seed = 7;
  for (const sign of formula) seed = (Math.imul(seed, 31) + sign.charCodeAt(0)) >>> 0;
  const next = (most: number): number => {
    seed = (Math.imul(seed, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((seed / 2 ** 32) * most);
  };
  if (next(12) === 0) return [[{ error: next(2) === 0 ? "#NAME?" : "#REF!" }]];
  const [rows, columns] = next(2) === 0 ? [1, 1] : [1 + next(3), 1 + next(3)];
  return Array.from({ length: rows }, () =>
    Array.from({ length: columns }, () => POOL[next(POOL.length)] as (typeof POOL)[number]),
  );
};
