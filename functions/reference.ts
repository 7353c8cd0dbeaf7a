import type { AnyDefinition } from "./define";

/**
 * What a definition says for its reader alone. The build takes it out of the script that calculates, and brings it to
 * the pane's reference in a file of its own (addin/build/readersOnly.ts): whoever shows it asks here.
 */
export const readersOnly = ["examples"] as const;

export type Reference = Pick<AnyDefinition, (typeof readersOnly)[number]>;

export const referenceOf = (definition: Pick<AnyDefinition, "name" | (typeof readersOnly)[number]>): Reference =>
  definition;
