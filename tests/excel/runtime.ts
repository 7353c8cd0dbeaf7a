import { readFileSync } from "node:fs";
import { join } from "node:path";

/**
 * The platform's own custom-functions runtime, from the package @microsoft/office-js: the code that in Excel stands
 * between the sheet and a function. It is driven as its host drives it, with the messages that a host sends, and asked
 * for what it would have sent back.
 */
interface Proxy {
  _ensureSetResultsTaskIsScheduled(): void;
  _customFunctionMappingsUpperCase: unknown;
  _resultEntryBuffer: Record<
    number,
    { readonly result: { readonly failed: boolean; readonly value: unknown; readonly errorCode?: number } } | undefined
  >;
  setCustomFunctionAssociation(association: { readonly mappings: Record<string, unknown>; onchange(): void }): void;
  _handleMessage(message: unknown): void;
}
interface Parts {
  readonly customFunctionProxy: Proxy;
  readonly CustomFunctionError: typeof CustomFunctions.Error;
  readonly ErrorCode: typeof CustomFunctions.ErrorCode;
}

/** What goes back to Excel. A code stands for the error of an answer that failed: 7 is #VALUE!, 1 is #N/A. */
export interface Sent {
  readonly failed?: boolean;
  readonly value: unknown;
  readonly errorCode?: number;
}

/** The two permissions of functions.json as the runtime knows them. */
export const ERRORS_COME = 4;
export const DATA_TYPES_COME = 8;
const MODULE = 8; // the runtime's own number of the part that calls functions

const load = (): Parts => {
  const file = require.resolve("@microsoft/office-js/dist/custom-functions-runtime.debug.js");
  const source = readFileSync(file, "utf8");
  // The file is several bundles; the one wanted starts at its third part, which is kept from running by itself.
  const start = source.indexOf("__webpack_require__(__webpack_require__.s = 3)");
  if (start < 0)
    throw new Error(
      `${join("dist", "custom-functions-runtime.debug.js")} is not built as it was: look at its bundles again`,
    );
  const from = source.lastIndexOf("!function(modules)", start);
  const to = source.indexOf("function(modules)", start);
  const bundle = source
    .slice(from, source.lastIndexOf("\n", to))
    .replace("__webpack_require__(__webpack_require__.s = 3)", "(window.wanted = __webpack_require__)");
  const page: Record<string, unknown> = { name: "" };
  page.window = page;
  try {
    // In this realm, because the runtime asks whether what it is given is an Array of its own.
    // eslint-disable-next-line @typescript-eslint/no-implied-eval, @typescript-eslint/no-unsafe-call -- as above
    new Function("window", "CustomFunctionMappings", bundle)(page, {});
  } catch (error) {
    // What follows the bundle's own code looks for a browser; the part that is wanted stands before it.
    if (!("wanted" in page)) throw error;
  }
  return (page.wanted as (module: number) => Parts)(MODULE);
};

/** A runtime with functions of its own. `CustomFunctions` is what Excel's page would have of that name. */
export const startRuntime = () => {
  const { customFunctionProxy: proxy, CustomFunctionError, ErrorCode } = load();
  const mappings: Record<string, unknown> = {};
  proxy._ensureSetResultsTaskIsScheduled = () => undefined; // there is no host to send to
  proxy.setCustomFunctionAssociation({ mappings, onchange: () => undefined });
  let calls = 0;
  return {
    CustomFunctions: {
      associate: (id: string, code: unknown) => {
        mappings[id] = code;
        proxy._customFunctionMappingsUpperCase = undefined;
      },
      Error: CustomFunctionError,
      ErrorCode,
    },
    /** The ids that have code behind them. */
    associated: () => Object.keys(mappings),
    /** Calls a function as Excel does, and answers what goes back to Excel. */
    call: async (id: string, args: readonly unknown[], flags = ERRORS_COME | DATA_TYPES_COME): Promise<Sent> => {
      const call = ++calls;
      proxy._handleMessage({
        entries: [{ messageCategory: 1, messageType: 1000, message: [call, id, args, null, flags] }],
      });
      for (let turn = 0; turn < 20 && !proxy._resultEntryBuffer[call]; turn++)
        await new Promise((done) => setImmediate(done));
      const sent = proxy._resultEntryBuffer[call];
      if (!sent) throw new Error(`${id} answered nothing: its cell would say #BUSY!`);
      return JSON.parse(JSON.stringify(sent.result)) as Sent;
    },
  };
};
