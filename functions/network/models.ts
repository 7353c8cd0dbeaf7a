import type { Model } from "./kriging";

/**
 * The models, found by leave-one-out over the network itself (DEVELOPERS.md says what was tried). Rates of temperature are
 * those observed at mountain stations; a fall of vapour's logarithm by 0.45 per km is that of the mean column of air
 * (Hann's rule, from memory). Rain is estimated on square roots, vapour on logarithms.
 */
export const models = {
  high: { sill: 2.5, range: 900, rise: 3, nugget: 0.7, rates: [5.7, 7.7, 7.8, 6.2], rateSpread: 1, poleward: 0.6 },
  low: { sill: 2.5, range: 600, rise: 2, nugget: 1, rates: [4.1, 4.1, 4.2, 3.8], rateSpread: 0.7, poleward: 0.6 },
  rain: { sill: 2, range: 400, rise: 1, nugget: 0.5, rates: [0, 0, 0, 0], rateSpread: 1, poleward: 0 },
  vapour: {
    sill: 0.2,
    range: 600,
    rise: 2,
    nugget: 0.05,
    rates: [0.45, 0.45, 0.45, 0.45],
    rateSpread: 0.1,
    poleward: 0.02,
  },
} as const satisfies Record<string, Model>;
