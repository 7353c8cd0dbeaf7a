/** A straight line through points, as ordinary least squares draws it. */
export interface Line {
  readonly slope: number;
  readonly intercept: number;
  /** Share of the variance of y that the line explains; 1 where y does not vary. */
  readonly r2: number;
  /** Standard deviation of the residuals, with two degrees of freedom taken off. */
  readonly residual: number;
  /** Standard error of the slope. */
  readonly slopeError: number;
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** The line through three or more points, or undefined where all x are equal. */
export const leastSquares = (points: readonly (readonly [x: number, y: number])[]): Line | undefined => {
  // Counted from the first point, figures that do not vary are exactly 0: the rounding of a mean is no variance.
  const [startX, startY] = points[0] as readonly [number, number];
  const fromStart = points.map(([x, y]) => [x - startX, y - startY] as const);
  const meanX = mean(fromStart.map(([x]) => x));
  const meanY = mean(fromStart.map(([, y]) => y));
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const [x, y] of fromStart) {
    xx += (x - meanX) ** 2;
    xy += (x - meanX) * y; // meanY may stay: the deviations of x sum to 0
    yy += (y - meanY) ** 2;
  }
  if (xx === 0) return undefined;
  const slope = xy / xx;
  const height = meanY - slope * meanX;
  const squares = fromStart.reduce((sum, [x, y]) => sum + (y - height - slope * x) ** 2, 0);
  const residual = Math.sqrt(squares / (points.length - 2));
  return {
    slope,
    intercept: startY + height - slope * startX,
    r2: yy === 0 ? 1 : 1 - squares / yy,
    residual,
    slopeError: residual / Math.sqrt(xx),
  };
};
