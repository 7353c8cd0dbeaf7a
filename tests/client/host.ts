import { existsSync, readFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { dirname, join } from "node:path";
import { chromium, type Browser, type Page } from "playwright-core";
import sirv from "sirv";
import type { FakeExcel } from "../excel/fake";
import { BatchAnswers, type Batch } from "./batch";

/**
 * A host for the platform's own client script (package @microsoft/office-js): the built pane in a browser, under its own
 * policy, in front of the strict stand-in for Excel. The client speaks as it does within Excel for Mac, through
 * `window.webkit.messageHandlers`, whose messages are plain JSON.
 */
const DIST = join(__dirname, "..", "..", "dist");
const CLIENT = dirname(require.resolve("@microsoft/office-js/dist/office.js"));
const CLIENT_ADDRESS = "https://appsforoffice.microsoft.com/lib/1/hosted/";

/** The client's numbers (`OSF.Webkit.MethodId`, `OSF.DDA.MethodDispId`, `OSF.DDA.EventDispId`). */
const METHOD = { execute: 1, register: 2, context: 5 };
const RICH_API_REQUEST = 93;
const COMMAND_COMPLETED = 94;
const RICH_API_MESSAGE = 33;
const COMMAND_INVOKED = 39;
/** Of `_host_Info`: a page of a shared runtime in which custom functions run. */
const FLAGS = 16 | 2;

/** What Excel on the web takes in one request, less what is around the batch. */
export const LARGEST = 4_000_000;

interface Message {
  readonly methodId: number;
  readonly params: { readonly id: number; readonly apiArgs?: readonly (readonly unknown[])[] };
  readonly callbackId?: string;
  readonly callbackFunction?: string;
  readonly eventCallbackFunction?: string;
}

/** What a page has of its host, for the client's script. */
interface ClientPage {
  hostAnswer(text: string): Promise<unknown>;
  tellClient(path: string | undefined, given: readonly unknown[]): void;
  webkit: unknown;
}

export interface HostOptions {
  /** Where the page believes to run: the client's script is the same, but for the name that it tells. */
  readonly platform?: "PC" | "Mac";
  readonly customFunctions?: string;
}

let server: Server | undefined;
let browser: Browser | undefined;
let site = "";

export const startBrowser = async (): Promise<void> => {
  const listening = createServer(sirv(DIST));
  server = listening;
  await new Promise<void>((done) => listening.listen(0, "127.0.0.1", done));
  site = `http://127.0.0.1:${(listening.address() as AddressInfo).port}`;
  browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    args: ["--no-sandbox"],
  });
};
export const endBrowser = async (): Promise<void> => {
  await browser?.close();
  server?.closeAllConnections();
  server?.close();
};

/** What an answer of a custom function is sent as: id, whether it went well, value or words, and the error's number. */
type Invocation = readonly [id: number, well: boolean, value: unknown, error?: number];

export class Host {
  readonly batches: BatchAnswers;
  /** What the page, its policy or the client complained of. */
  readonly complaints: string[] = [];
  /** Addresses asked for that are neither the page's own nor the client's. */
  readonly elsewhere: string[] = [];
  /** How many files the page has handed over. */
  saved = 0;
  /** The largest request so far, in characters. */
  largest = 0;
  /** Each request is held until this is done. */
  beforeAnswer: (batch: Batch) => void | Promise<void> = () => undefined;
  private readonly answers = new Map<number, (sent: Invocation) => void>();
  private readonly events = new Map<number, Message>();
  private calls = 0;
  private completed: () => void = () => undefined;

  private constructor(
    readonly page: Page,
    readonly excel: FakeExcel,
    private readonly options: HostOptions,
  ) {
    this.batches = new BatchAnswers(excel);
  }

  /** The pane of a workbook, ready to be used. */
  static async open(excel: FakeExcel, options: HostOptions = {}): Promise<Host> {
    if (!browser) throw new Error("start the browser first");
    const page = await browser.newPage({ viewport: { width: 360, height: 900 } });
    page.setDefaultTimeout(20_000);
    const host = new Host(page, excel, options);
    page.on("download", () => host.saved++);
    page.on("pageerror", (error) => host.complaints.push(`page error: ${error.message}`));
    page.on("console", (message) => {
      if (["error", "warning"].includes(message.type()))
        host.complaints.push(
          `${message.type()}: ${message.text()} (${message.location().url}:${message.location().lineNumber}:${message.location().columnNumber})`,
        );
    });
    await page.route(/.*/, (route) => {
      const url = route.request().url();
      if (url.startsWith(CLIENT_ADDRESS)) {
        const file = join(CLIENT, url.slice(CLIENT_ADDRESS.length));
        if (existsSync(file)) {
          const body = readFileSync(file, "utf8").replace('Mac:"Mac"', `Mac:"${options.platform ?? "PC"}"`);
          return route.fulfill({ contentType: "text/javascript", body });
        }
      }
      if (url.startsWith(`${site}/`) || /^(data|blob):/.test(url)) return route.continue();
      host.elsewhere.push(url);
      return route.abort();
    });
    await page.exposeFunction("hostAnswer", (text: string) => host.message(JSON.parse(text) as Message));
    await page.addInitScript(() => {
      const own = window as unknown as ClientPage;
      /** Calls a function of the client by its path from the window; one that has gone is not called. */
      own.tellClient = (path = "", given) => {
        const names = path.split(".");
        const last = names.pop() ?? "";
        let holder: Record<string, unknown> | undefined = own as unknown as Record<string, unknown>;
        for (const name of names) holder = holder?.[name] as Record<string, unknown> | undefined;
        const found = holder?.[last];
        if (typeof found === "function") Reflect.apply(found, holder, given);
      };
      own.webkit = {
        messageHandlers: {
          Agave: {
            postMessage: async (text: string) => {
              const { callbackFunction, callbackId } = JSON.parse(text) as Record<string, string>;
              const answer = await own.hostAnswer(text);
              own.tellClient(callbackFunction, [callbackId, answer]);
            },
          },
        },
      };
    });
    const info = `Excel$Mac$16.00$en-US$correlation$$$${FLAGS}`;
    await page.goto(`${site}/taskpane.html?_host_Info=${encodeURIComponent(info)}`);
    await page.getByRole("tab", { name: "Sheets" }).waitFor();
    return host;
  }

  private async message(message: Message): Promise<unknown> {
    if (message.methodId === METHOD.context) return this.context();
    if (message.methodId === METHOD.register) this.events.set(message.params.id, message);
    if (message.methodId === METHOD.execute && message.params.id === COMMAND_COMPLETED) this.completed();
    if (message.methodId !== METHOD.execute || message.params.id !== RICH_API_REQUEST) return [0];
    const body = message.params.apiArgs?.[0]?.[4] as string;
    const batch = JSON.parse(body) as Batch;
    this.largest = Math.max(this.largest, body.length);
    const service = Object.values(batch.ObjectPaths).find(({ ObjectPathType: kind }) => kind === 2)?.Name;
    const answer = service === undefined ? await this.batch(batch) : this.service(service, batch);
    return [0, [0, 200, [], JSON.stringify(answer)]];
  }

  private async batch(batch: Batch): Promise<object> {
    await this.beforeAnswer(batch);
    return this.batches.answer(batch);
  }

  /** Requests to parts of the host that are not the workbook: telemetry, and what custom functions answer. */
  private service(name: string, { Actions: actions }: Batch): object {
    if (name === "Microsoft.ExcelServices.CustomFunctions") {
      for (const { Name: called, ArgumentInfo: given } of actions) {
        if (called !== "SetInvocationArrayResults") continue;
        for (const sent of given?.Arguments?.[0] as Invocation[]) this.answers.get(sent[0])?.(sent);
      }
    }
    return { Results: actions.map(({ Id }) => ({ ActionId: Id, Value: null })) };
  }

  /** What the client asks first of all: where it is, and what this Excel can do. */
  private context(): unknown {
    const sets = {
      ExcelApi: String(this.excel.newest),
      CustomFunctionsRuntime: this.options.customFunctions ?? "1.4",
      CustomFunctions: "1.9",
      SharedRuntime: "1.2",
      RibbonApi: "1.1",
    };
    // The places of the client's `AppContextProperties`.
    const told: unknown[] = [];
    told[0] = [[], []]; // settings
    told[1] = "solution";
    told[2] = 1; // the kind of program
    told.splice(3, 4, 16, 100, 0, 0); // its version
    told[7] = 3; // it reads and writes
    told.splice(8, 2, "en-US", "en-US");
    told.splice(10, 4, 0, "", 1, 1);
    told[14] = encodeURIComponent('<t cid="" oid=""/>');
    told.splice(15, 5, "", "correlation", "instance", false, false);
    told.splice(20, 4, JSON.stringify(sets), "", "16.100.0.0", 2);
    return told;
  }

  private async tell(event: number, payload: unknown): Promise<void> {
    const registered = this.events.get(event);
    if (!registered) throw new Error(`the client listens to no event ${event}`);
    await this.page.evaluate(
      ([path, id, told]) => (window as unknown as ClientPage).tellClient(path, [id, JSON.parse(told)]),
      [registered.eventCallbackFunction, registered.callbackId, JSON.stringify(payload)] as const,
    );
  }

  /** Calls a custom function as Excel does; what is answered is what Excel would be sent. */
  async call(id: string, args: readonly unknown[]): Promise<Invocation> {
    const number = ++this.calls;
    const answered = new Promise<Invocation>((done) => this.answers.set(number, done));
    // 4: errors come as objects; 8: so do numbers with a format, as functions.json says.
    const message = JSON.stringify([number, id, args, null, 4 | 8]);
    await this.tell(RICH_API_MESSAGE, [[[1, 1000, "", message, number, false]], RICH_API_MESSAGE]);
    return answered;
  }

  /** Presses a button of the ribbon, by the name that the manifest gives it; done when its code says so. */
  async ribbon(name: string): Promise<void> {
    const completed = new Promise<void>((done) => (this.completed = done));
    await this.tell(COMMAND_INVOKED, [[`press ${name}`, name, "{}"], COMMAND_INVOKED]);
    await completed;
  }
}
