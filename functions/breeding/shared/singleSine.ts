/** Degree-days above a level in a day whose temperature runs as one sine between its high and its low. */
export const degreesAbove = (level: number, high: number, low: number): number => {
  const middle = (high + low) / 2;
  if (low >= level) return middle - level;
  if (high <= level) return 0;
  const swing = (high - low) / 2;
  // A level a hair inside the high or the low may come out a hair outside the sine.
  const crossing = Math.asin(Math.min(Math.max((level - middle) / swing, -1), 1));
  return ((middle - level) * (Math.PI / 2 - crossing) + swing * Math.cos(crossing)) / Math.PI;
};

/** The same in a formula; it stands as one piece. */
export const aboveText = (level: string, high: string, low: string): string => {
  const [middle, swing] = [`((${high}+${low})/2)`, `((${high}-${low})/2)`];
  const crossing = `ASIN(MEDIAN(-1,1,(${level}-${middle})/${swing}))`;
  return (
    `IF(${low}>=${level},${middle}-${level},IF(${high}<=${level},0,` +
    `((${middle}-${level})*(PI()/2-${crossing})+${swing}*COS(${crossing}))/PI()))`
  );
};
