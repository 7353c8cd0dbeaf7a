import type { SourceKey } from "../sources";

/**
 * How a rule names its source at the end of a sentence. Whole citations (sources.ts) are too long for a message, and do
 * not travel with what calculates; a test holds these against them.
 */
export const cited = {
  practice: "common practice, no source",
  definition: "by definition",
  ownLimit: "your own limit",
  costanzo: "source: Costanzo (1985)",
  bonaGalloLicht: "source: Bona-Gallo & Licht (1983)",
} as const satisfies Partial<Record<SourceKey, string>>;

export type Cited = keyof typeof cited;
