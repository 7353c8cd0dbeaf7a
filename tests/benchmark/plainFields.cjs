/** The engine's packages as the add-in has them, where a part of the benchmark loads them from their folder. */
const { readFileSync } = require("node:fs");
const Module = require("node:module");
const plainFields = require("../../addin/build/plainFields.cjs");

const asItStands = Module._extensions[".js"];
Module._extensions[".js"] = (module, file) => {
  if (/node_modules[\\/]@univerjs[\\/]/.test(file)) module._compile(plainFields(readFileSync(file, "utf8")), file);
  else asItStands(module, file);
};
