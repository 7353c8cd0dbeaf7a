import { inTheEngine, twinned } from "../../native/proof";

// UNDERGROUND is a sum of 182 waves in each cell.
jest.setTimeout(60_000);

/** The native twins by the preview's engine: LibreOffice would need seconds for each number. */
test.each(twinned.map((one) => [one.name, one] as const))("the twin of %s", async (_, one) => {
  expect([...(await inTheEngine([one], 25)).values()].flat()).toEqual([]);
});
