/** A call of a VIV function in a formula: its name and the text of each argument. */
export interface Call {
  readonly name: string;
  readonly args: readonly string[];
}

/** The arguments that follow an opening bracket at `from`, and where the bracket closes. */
const argumentsFrom = (formula: string, from: number): readonly string[] => {
  const args: string[] = [];
  let [depth, start, quoted] = [0, from, false];
  for (let i = from; i < formula.length; i++) {
    const letter = formula[i];
    if (letter === '"') quoted = !quoted;
    if (quoted) continue;
    if (letter === "(" || letter === "{") depth++;
    if (depth === 0 && (letter === "," || letter === ")")) {
      args.push(formula.slice(start, i).trim());
      start = i + 1;
      if (letter === ")") return args.length === 1 && args[0] === "" ? [] : args;
    }
    if (letter === ")" || letter === "}") depth--;
  }
  throw new Error(`a bracket stays open in ${formula}`);
};

/** Every call of a VIV function in a formula. */
export const callsIn = (formula: string): readonly Call[] =>
  [...formula.matchAll(/VIV\.([A-Z0-9]+)\(/g)].map((found) => ({
    name: found[1] as string,
    args: argumentsFrom(formula, found.index + found[0].length),
  }));

/** The formula with every text inside quotation marks taken out. */
export const withoutTexts = (formula: string): string => formula.replace(/"(?:[^"]|"")*"/g, '""');

/** Every native function that a formula calls. */
export const nativesIn = (formula: string): readonly string[] =>
  [...withoutTexts(formula).matchAll(/(?<![A-Z0-9.])([A-Z][A-Z0-9.]*)\(/g)]
    .map((found) => found[1] as string)
    .filter((name) => !name.startsWith("VIV."));

/** Every address in a formula, dollar signs taken out. */
export const addressesIn = (formula: string): readonly string[] =>
  [
    ...withoutTexts(formula).matchAll(
      /(?<![A-Z0-9.$])\$?([A-Z]{1,2})\$?(\d+)(?::\$?([A-Z]{1,2})\$?(\d+))?(?![(A-Z0-9])/g,
    ),
  ].map((found) => found[0].replaceAll("$", ""));
