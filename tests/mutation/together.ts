/**
 * The tests that bear on the arithmetic, the station network and the boundary, as one file, so that a mutant loads the functions once and not
 * sixty times. Each file's tests begin with its path; where a mutant asks for some tests by name, other files stay shut.
 */
import { readdirSync } from "node:fs";
import { join } from "node:path";

declare const testsAskedFor: string | undefined;

const tests = join(__dirname, "..");
const files = ["boundary", "functions", "network"]
  .flatMap((folder) => readdirSync(join(tests, folder), { recursive: true }).map((file) => join(folder, String(file))))
  .concat("examples.test.ts")
  .filter((file) => file.endsWith(".test.ts"))
  .sort();
const asked = testsAskedFor?.replaceAll("\\", "");

for (const file of files)
  if (!asked || asked.includes(file)) describe(file, () => void jest.requireActual(join(tests, file)));
