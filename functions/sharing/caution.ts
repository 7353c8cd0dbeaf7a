import { cautions } from "../cautions";
import { defineFunction, table, text } from "../define";
import { notAvailable, Problem } from "../problem";
import { lookUp, type Everything } from "./shared/lookUp";

export const cautionOf = (everything: Everything) =>
  defineFunction({
    name: "CAUTION",
    summary: "What to be careful about with a function, one caution a row.",
    parameters: { function: text("Name of the function, with or without the prefix") },
    result: table({ name: "caution", unit: "text", about: "Caution" }),
    needs: "texts",
    sources: ["definition"],
    cautions: [],
    examples: [{ given: ["ONDATE"], gives: [[cautions.smoothCurve]], within: 0 }],
    calculate({ function: name }, { caution }) {
      const found = lookUp(everything(), name);
      if (found instanceof Problem) return found;
      return found.cautions.length > 0
        ? found.cautions.map((key) => [caution(key)])
        : notAvailable(`${found.name} has no caution of its own`);
    },
  });
