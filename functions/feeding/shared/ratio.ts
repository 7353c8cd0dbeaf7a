/**
 * Limits of a prey ratio: prey mass divided by body mass. Above 1 the prey is heavier than the animal, or a percentage
 * was typed; both are refused.
 */
export const RATIO = [[0.001, 1], { hint: "10 % is 0.1" }] as const;
