import type { AnyDefinition } from "./define";

/**
 * A definition with all that it says to its reader. The build takes these words out of the script that calculates, and
 * brings them to the pane in a file of its own (addin/build/readersOnly.ts): whoever shows a definition asks here.
 */
export const referenceOf = (definition: AnyDefinition): AnyDefinition => definition;
