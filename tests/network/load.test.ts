import { readFileSync } from "node:fs";
import { join } from "node:path";
import { startRuntime } from "../excel/runtime";

/** As Excel has it: nothing is there at first, the file is fetched, and what is asked meanwhile waits. */
const text = readFileSync(join(__dirname, "../../functions/network/stations.json"), "utf8");
const runtime = startRuntime();
Object.assign(globalThis, {
  CustomFunctions: runtime.CustomFunctions,
  Office: { onReady: () => new Promise(() => undefined), context: { requirements: { isSetSupported: () => true } } },
});

/** What STATIONPLACE answers of Jan Mayen. */
const ROW = [
  ...[70.94, -8.67, 9, 18, "Norway", "01001", "CLIMAT reports 2003-2021", "Jan Mayen, Norway"],
  "Datenbasis: Deutscher Wetterdienst, Einzelwerte gemittelt (CC BY 4.0), 2003-2021",
];

type Answer = (...given: readonly unknown[]) => unknown;
const startedAnew = async (): Promise<{ ask: Answer; plain: Answer; fetched: jest.Mock }> => {
  jest.resetModules();
  const { customFunction } = await import("../../addin/excel/functions");
  const { lapse } = await import("../../functions/climate/lapse");
  const { stationPlace } = await import("../../functions/climate/stationPlace");
  const fetched = jest.fn();
  Object.assign(globalThis, { fetch: fetched });
  return { ask: customFunction(stationPlace), plain: customFunction(lapse), fetched };
};
const answers = (body: string) => ({ ok: true, text: () => Promise.resolve(body) });

test("the first call answers late, those beside it too, and the file is fetched once; later calls answer at once", async () => {
  const { ask, fetched } = await startedAnew();
  fetched.mockResolvedValue(answers(text));
  const [one, other] = [ask([["01001"]], null), ask([["Jan Mayen"]], null)];
  expect(one).toBeInstanceOf(Promise);
  const row = [ROW];
  expect(await one).toEqual(row);
  expect(await other).toEqual(row);
  expect(fetched.mock.calls).toEqual([["network/stations.json"]]);
  expect(ask([[1001]], null)).toEqual(row);
  expect(fetched).toHaveBeenCalledTimes(1);
});

test.each([
  [
    "no connection",
    () => Promise.reject(new Error("Failed to fetch")),
    /cannot be read: Failed to fetch\. Look at the connection and calculate again$/,
  ],
  [
    "an address that is gone",
    () => Promise.resolve({ ok: false, status: 404 }),
    /cannot be read: its address answers 404\./,
  ],
  [
    "a damaged file",
    () => Promise.resolve(answers(text.slice(0, 5000))),
    /cannot be read: the file is damaged or of another version\./,
  ],
])("%s answers words, and a second call tries again", async (_, reply, words) => {
  const { ask, fetched } = await startedAnew();
  fetched.mockImplementationOnce(reply).mockResolvedValue(answers(text));
  const failed = (await ask([["01001"]], null)) as { code: string; message: string }[][];
  expect(failed[0]?.[0]?.message).toMatch(words);
  const second = ask([["01001"]], null);
  expect(second).toBeInstanceOf(Promise);
  expect((await second) as unknown[][]).toEqual([ROW]);
  expect(fetched).toHaveBeenCalledTimes(2);
});

test("a function that needs nothing never waits", async () => {
  const { plain, fetched } = await startedAnew();
  expect(plain([[24]], [[300]], [[1400]], null, null)).toEqual([[16.85]]);
  expect(fetched).not.toHaveBeenCalled();
});
