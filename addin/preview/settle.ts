import type { Engine } from "./engine";

/** Longer than any sheet of ours takes on a slow machine. */
const LONGEST = 30_000; // ms

/** Waits until every formula has its answer. It takes half a second where nothing was to be done. */
export const settle = ({ api }: Engine): Promise<void> => api.getFormula().onCalculationResultApplied(LONGEST);
