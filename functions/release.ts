import manifest from "../package.json";

/** The version of the add-in. It stands in package.json alone, of which a build takes nothing else. */
export const VERSION = manifest.version;
