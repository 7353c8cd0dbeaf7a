/**
 * Limits that several rules and functions share: a figure that can hurt stands once. All are common practice with
 * montane snakes; we know of no published ones.
 */

/** Days at normal temperature after the last meal, for the gut to empty. */
export const CLEAR_DAYS = 14;
/** Days from warm again to the first meal. */
export const SETTLE_DAYS = 7;
/** Days of cooling or of warming: fewer are hasty, and in fewer than `HASTY_DAYS` nobody should do it. */
export const RAMP_DAYS = 28;
export const HASTY_DAYS = 14;

/** °C. A steady temperature below which the gut empties slowly, and one below which it hardly does. */
export const GUT_SLOW = 20;
export const GUT_STILL = 15;
/** °C. The same for nights, whose days are warmer. */
export const NIGHT_SLOW = 15;
export const NIGHT_STILL = 10;

/** °C in the cold. Below the first a fault of the thermostat may freeze the animal; the second leaves room for one. */
export const FREEZING_NEAR = 2;
export const COLD_LEAST = 4;
/** °C. Above it the animal uses up its reserves. */
export const COLD_MOST = 10;
/** °C. No steady temperature for a montane snake. */
export const WARM_MOST = 30;

/** The whole meal and its heaviest item, as shares of body mass. */
export const MEAL_SHARE = 0.1;
export const ITEM_SHARE = 0.15;
/** An item that is less than this share of the body is of a size that the animal has outgrown. */
export const LEAST_ITEM_SHARE = 0.04;
/** How much of the usual meal the first ones after the cold may be, and for how many days meals count as first ones. */
export const FIRST_MEAL_PART = 0.5;
export const FIRST_MEAL_DAYS = 14;
/** Days after which a weighing no longer tells what share of the body a meal is. */
export const WEIGHING_STALE = 60;
/** Days of rest after a meal that was brought up: gullet and stomach need them to heal. */
export const BROUGHT_UP_WAIT = 14;
