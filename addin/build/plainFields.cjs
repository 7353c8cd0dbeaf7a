/**
 * The spreadsheet engine's packages come compiled so that each field of an object is set by its name through a helper.
 * Formulas make objects by the million, and a sixth of the time goes into that. Here the fields are assigned, as in the
 * engine's source; a field that no line of its own sets keeps the helper. For webpack as a loader, and for the tests.
 */
const FIELD = /^(\s*)_defineProperty\(this, "([A-Za-z_$][\w$]*)", (.*)\);$/gm;

/** The text of a module with its fields assigned. */
const plainFields = (source) => source.replace(FIELD, "$1this.$2 = $3;");

module.exports = plainFields;
module.exports.process = (source) => ({ code: plainFields(source) });
