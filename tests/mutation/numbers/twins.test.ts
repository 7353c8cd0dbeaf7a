import { inTheEngine, twinned } from "../../native/proof";

/** The native twins by the preview's engine: LibreOffice would need seconds for each number. */
test.each(twinned.map((one) => [one.name, one] as const))("the twin of %s", async (_, one) => {
  expect([...(await inTheEngine([one], 25)).values()].flat()).toEqual([]);
});
