import { studentT95, studentText } from "../../functions/shared/studentT";
import { quantiles, terms } from "../tables/studentT.json";

// Exact for one and two degrees of freedom; a series of four terms is 0.0013 off at three, and less above.
test.each(quantiles as [number, number][])("of %d degrees of freedom", (degrees, quantile) => {
  const off = Math.abs(studentT95(degrees) - quantile);
  expect(off).toBeLessThan(degrees < 3 ? 1e-14 : 0.11 * degrees ** -4);
});

test("its terms are those of the exact quantiles' own series", () => {
  // At a tenth of a degree each power stands at another place, so that no term hides behind one before it.
  for (const degrees of [0.1, 0.25, 0.5, 4, Infinity]) {
    const series = terms.reduce((sum, term, power) => sum + term / degrees ** power, 0);
    expect(studentT95(degrees) / series).toBeCloseTo(1, 12);
  }
});

test("in a formula one and two degrees of freedom have their own figures", () => {
  const [, one, two] = /^IF\(A1=1,([\d.]+),IF\(A1=2,([\d.]+),/.exec(studentText("A1")) ?? [];
  for (const [i, figure] of [one, two].entries()) expect(Number(figure)).toBeCloseTo(quantiles[i]?.[1] as number, 12);
});
