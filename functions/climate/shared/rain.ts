/** mm a month. Plausibility limit: a third more than the wettest month ever measured, about 9300 mm (from memory). */
export const MONTHLY_RAIN = [0, 12_500] as const;
