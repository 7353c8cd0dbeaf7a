import { catalogue } from "../../functions/catalogue";
import type { AnyDefinition } from "../../functions/define";
import { withWords, wordsOf } from "../../functions/readersWords";

/** As the build leaves it: nothing in it for a reader. */
const silent = (definition: AnyDefinition): AnyDefinition =>
  ({
    ...definition,
    summary: undefined,
    examples: undefined,
    parameters: Object.fromEntries(
      Object.entries(definition.parameters).map(([name, parameter]) => [
        name,
        { ...parameter, about: "", ...(parameter.without === undefined ? {} : { without: "" }) },
      ]),
    ),
    result: { ...definition.result, columns: definition.result.columns.map((column) => ({ ...column, about: "" })) },
  }) as unknown as AnyDefinition;

test.each(catalogue.map((definition) => [definition.name, definition] as const))(
  "%s is whole again once its words are put back, by way of a file",
  (_, definition) => {
    const words = JSON.parse(JSON.stringify(wordsOf(definition))) as ReturnType<typeof wordsOf>;
    expect(withWords(silent(definition), words)).toEqual(definition);
  },
);
