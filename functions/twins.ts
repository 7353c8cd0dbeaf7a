import type { AnyDefinition } from "./define";

/**
 * The native twin of a function, where it has one. The build takes twins out of the script that calculates, and brings
 * them to whoever asks here in a file of their own (addin/build/readersOnly.ts).
 */
export const twinOf = (definition: Pick<AnyDefinition, "name" | "twin">): AnyDefinition["twin"] => definition.twin;
