/**
 * The proof of the native twins at length: 500 calls of each function, recalculated by LibreOffice and by the preview.
 * `npm run twins`, or `npm run twins -- 50`. What is told of it in the README is entered in tests/proven.json.
 */
import { record } from "../../addin/build/proven";
import { inLibreOffice, inTheEngine, twinned } from "./proof";

const [given = "500"] = process.argv.slice(2).filter((word) => !word.startsWith("--"));
const count = Number(given);

/** The preview's engine rounds the differences of stations that are equally warm: that is told, and no fault of the twin. */
const isRounding = (line: string): boolean => line.startsWith("=VIV.LAPSEFIT(");

const prove = async (): Promise<number> => {
  const found: string[][] = [];
  for (const [where, proof] of [
    ["LibreOffice", inLibreOffice],
    ["the preview", inTheEngine],
  ] as const) {
    const all = [...(await proof(twinned, count)).values()].flat();
    found.push(all);
    console.log(`${where}: ${twinned.length} twins, ${count} calls of each, ${all.length} cells differ`);
    for (const line of all.slice(0, 20)) console.log(`  ${line}`);
  }
  const [libreOffice, preview] = found as [string[], string[]];
  if (libreOffice.length === 0 && preview.every(isRounding)) {
    const figures = { functions: twinned.length, calls: count, libreOffice: 0, preview: preview.length };
    await record("twins", figures, count);
  }
  return libreOffice.length + preview.length;
};

// The engine's timers would keep the process alive.
void prove().then((wrong) => process.exit(wrong > 0 ? 1 : 0));
