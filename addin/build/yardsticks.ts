import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { counted, type Yardstick } from "../../functions/yardsticks";
import { formatted } from "./formatted";
import { tellInReadme } from "./proven";

const ROOT = join(__dirname, "..", "..");
const COMMITTED = join(ROOT, "functions", "yardsticks.json");
const RECORDED = join(ROOT, "reports", "yardsticks");

const key = ({ of, against, figure = "" }: Yardstick): string => `${of} | ${against} | ${figure}`;

/** What the tests have recorded, in an order that does not depend on which file ran first. */
const recorded = (): readonly Yardstick[] =>
  readdirSync(RECORDED)
    .flatMap((file) => JSON.parse(readFileSync(join(RECORDED, file), "utf8")) as Yardstick[])
    .sort((one, other) => (key(one) < key(other) ? -1 : 1));

/** What must not differ between two runs: the worst is left out, because a last digit may. */
const fixed = ({ worst: _, ...rest }: Yardstick): string => JSON.stringify(rest, Object.keys(rest).sort());

/** Writes the register that the tests have made; with --check, says where it differs from the committed one instead. */
const main = async (): Promise<void> => {
  if (!existsSync(RECORDED)) throw new Error("reports/yardsticks is missing: run the tests first");
  const fresh = recorded();
  if (!process.argv.includes("--check")) {
    writeFileSync(COMMITTED, await formatted(fresh));
    tellInReadme();
    return;
  }
  const committed = JSON.parse(readFileSync(COMMITTED, "utf8")) as Yardstick[];
  const [now, before] = [new Set(fresh.map(fixed)), new Set(committed.map(fixed))];
  const gone = committed.filter((one) => !now.has(fixed(one)));
  const added = fresh.filter((one) => !before.has(fixed(one)));
  for (const one of gone) console.error(`no test recorded this any more: ${key(one)}`);
  for (const one of added) console.error(`not in functions/yardsticks.json: ${key(one)}`);
  if (gone.length + added.length > 0) {
    console.error("Run the tests, then npm run yardsticks.");
    process.exitCode = 1;
  }
  const { functions, values, simulated, sources } = counted(fresh);
  console.log(
    `${functions} functions rest on ${values} values from outside, of ${sources} independent sources (${simulated} of the values are drawn at random).`,
  );
};

void main();
