import { CELL_INVERTED_INDEX_CACHE } from "@univerjs/engine-formula";

/**
 * Lets every comparison look at the values themselves. The engine keeps an index of what it has compared in a column, which
 * was seen to answer with figures that the cells did not hold; to keep it, a long spill took as long as the square of its
 * rows.
 */
export const compareAfresh = (): void => {
  const index = CELL_INVERTED_INDEX_CACHE;
  index.canUseCache = () => ({ rowsInCache: [], rowsNotInCache: [] });
  index.set = () => undefined;
  index.setContinueBuildingCache = () => undefined;
};
