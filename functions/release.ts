/** The version of the add-in. The tests hold it equal to the package's own. */
export const VERSION = "2.0.0";
