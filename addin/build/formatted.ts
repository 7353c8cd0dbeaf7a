import { createRequire } from "node:module";
import { join } from "node:path";

/** The formatter stands among the packages of the tests: only who changes the project needs it. */
interface Formatter {
  readonly format: (text: string, options: { readonly parser: "json"; readonly printWidth: number }) => Promise<string>;
}

/** A value as the JSON file that is committed. */
export const formatted = (value: unknown): Promise<string> => {
  const require = createRequire(join(__dirname, "..", "..", "tests", "package.json"));
  const { format } = require("prettier") as Formatter;
  return format(JSON.stringify(value), { parser: "json", printWidth: 120 });
};
