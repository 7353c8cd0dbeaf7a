import { leastSquares } from "../../functions/shared/leastSquares";

test("by hand: (0, 1), (2, 2), (4, 6)", () => {
  // About the means 2 and 3: xx = 4 + 0 + 4 = 8, xy = 4 + 0 + 6 = 10, yy = 4 + 1 + 9 = 14. The line 0.5 + 1.25 x leaves
  // 0.5, -1 and 0.5, whose squares are 1.5 together.
  const points = [
    [0, 1],
    [2, 2],
    [4, 6],
  ] as const;
  const wanted = { slope: 1.25, intercept: 0.5, r2: 1 - 1.5 / 14, residual: Math.sqrt(1.5) };
  for (const [right, up] of [
    [0, 0],
    [-300, 20],
  ] as const) {
    const line = leastSquares(points.map(([x, y]) => [x + right, y + up]));
    expect(line?.slope).toBeCloseTo(wanted.slope, 12);
    expect(line?.intercept).toBeCloseTo(wanted.intercept + up - wanted.slope * right, 10);
    expect(line?.r2).toBeCloseTo(wanted.r2, 12);
    expect(line?.residual).toBeCloseTo(wanted.residual, 12);
  }
});

// The mean of equal decimal fractions may be off by a rounding, which is no variance.
test.each([3, 5, 10, 13])(
  "%i points: of one height the line is level and explains all, of one x there is none",
  (many) => {
    const steps = Array.from({ length: many }, (_, i) => i);
    expect(leastSquares(steps.map((x) => [x, 10.1]))).toMatchObject({ slope: 0, intercept: 10.1, r2: 1, residual: 0 });
    expect(leastSquares(steps.map((y) => [700.3, y]))).toBeUndefined();
  },
);
