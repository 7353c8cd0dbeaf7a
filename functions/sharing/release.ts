import { cell, defineFunction } from "../define";
import { VERSION } from "../release";

export const release = defineFunction({
  name: "RELEASE",
  summary: "Version of the add-in, for the workbook's own record.",
  parameters: {},
  result: cell("text", "Version"),
  sources: ["definition"],
  cautions: [],
  examples: [{ given: [], gives: VERSION, within: 0 }],
  calculate() {
    return VERSION;
  },
});
