import { months, type RangeParameter } from "../../define";

/** Any monthly figure: °C, °F, mm a day. Plausibility limits that only keep slips out. */
export const MONTHLY_VALUE = [-1000, 10_000] as const;

/** Twelve monthly values of any kind. */
export const monthlyValues = (about: string): RangeParameter<readonly number[]> => months("none", about, MONTHLY_VALUE);
