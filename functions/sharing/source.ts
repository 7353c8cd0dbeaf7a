import { defineFunction, table, text } from "../define";
import { Problem } from "../problem";
import { lookUp, type Everything } from "./shared/lookUp";

export const sourceOf = (everything: Everything) =>
  defineFunction({
    name: "SOURCE",
    summary: "Where a function's figures come from, one citation a row.",
    parameters: { function: text("Name of the function, with or without the prefix") },
    result: table({ name: "source", unit: "text", about: "Citation" }),
    needs: "texts",
    sources: ["definition"],
    cautions: [],
    examples: [{ given: ["FLUCTUATION"], gives: [["By definition."]], within: 0 }],
    calculate({ function: name }, { citation }) {
      const found = lookUp(everything(), name);
      return found instanceof Problem ? found : found.sources.map((key) => [citation(key)]);
    },
  });
