import { VERSION } from "../../functions/release";
import { insertLinked } from "../../taskpane/actions/insertLinked";
import { selfCheck } from "../../taskpane/sheets/selfCheck";
import type { CellState, SheetContents, Workbook } from "../../taskpane/workbook";

/** Where the report is left, from the add-in's own page: the server of this machine takes it there (serve.mjs). */
const WHERE = "report-on-excel";

/** What one person with Excel can tell: figures of Self-check, and what this Excel says of itself. */
export interface Report {
  readonly version: string;
  readonly when: string;
  readonly host: { readonly host: string; readonly platform: string; readonly version: string };
  readonly browser: string;
  readonly language: string;
  readonly requirementSets: Readonly<Record<string, string>>;
  /** What was waited for, by what it was. */
  readonly milliseconds: Readonly<Record<string, number>>;
  /** What Excel refused of Self-check. */
  readonly without: readonly string[];
  /** What the policy refused and what failed on the page. */
  readonly complaints: readonly string[];
  /** The sheet as it stands, row by row. */
  readonly selfCheck: readonly (readonly (string | number | boolean | null)[])[];
}

/** Sets that the add-in asks for, and more by which an Excel's age is known: the newest of each is told. */
const SETS: Readonly<Record<string, { readonly major: number; readonly newest: number }>> = {
  ExcelApi: { major: 1, newest: 20 },
  CustomFunctionsRuntime: { major: 1, newest: 5 },
  SharedRuntime: { major: 1, newest: 2 },
  RibbonApi: { major: 1, newest: 2 },
  DialogApi: { major: 1, newest: 2 },
};

/** Errors of a formula that may yet be answered. */
const PENDING: ReadonlySet<string> = new Set(["#BUSY!", "#CONNECT!", "#NAME?", "#GETTING_DATA"]);
const PATIENCE = 60_000; // ms
const LOOK_AGAIN = 500; // ms

const requirementSets = (): Readonly<Record<string, string>> =>
  Object.fromEntries(
    Object.entries(SETS).map(([set, { major, newest }]) => {
      const versions = Array.from({ length: newest }, (_, i) => `${major}.${newest - i}`);
      return [set, versions.find((one) => Office.context.requirements.isSetSupported(set, one)) ?? "none"];
    }),
  );

/** What was seen of the page before anybody asked for a report. */
interface Seen {
  readonly complaints: readonly string[];
  /** When Excel was ready, in milliseconds since the page was asked for. */
  readonly ready: number;
}

const isPending = ({ value }: CellState): boolean =>
  value !== null && typeof value === "object" && PENDING.has(value.error);

const shownIn = ({ value }: CellState): string | number | boolean | null =>
  value !== null && typeof value === "object" ? value.error : value;

const pause = (ms: number) => new Promise((done) => setTimeout(done, ms));

/** The sheet once nothing on it is pending, or as it is after a minute. */
const settled = async (workbook: Workbook, name: string, patience: number): Promise<SheetContents> => {
  const until = performance.now() + patience;
  for (;;) {
    const [sheet] = await workbook.read([name]);
    if (!sheet) throw new Error(`the sheet "${name}" is not there`);
    if (!sheet.cells.flat().some(isPending) || performance.now() > until) return sheet;
    await pause(LOOK_AGAIN);
  }
};

/** Inserts Self-check, waits for its answers, and tells them with what this Excel says of itself. */
export const reportOn = async (
  workbook: Workbook,
  { complaints, ready }: Seen,
  patience = PATIENCE,
): Promise<Report> => {
  const begun = performance.now();
  const {
    names: [name = ""],
    left,
  } = await insertLinked(workbook, [selfCheck]);
  const inserted = performance.now();
  const { cells } = await settled(workbook, name, patience);
  const answered = performance.now();
  const { diagnostics, displayLanguage } = Office.context;
  return {
    version: VERSION,
    when: new Date().toISOString(),
    host: { host: String(diagnostics.host), platform: String(diagnostics.platform), version: diagnostics.version },
    browser: navigator.userAgent,
    language: displayLanguage,
    requirementSets: requirementSets(),
    milliseconds: {
      "page asked for to Excel ready": Math.round(ready),
      "Self-check inserted": Math.round(inserted - begun),
      "Self-check answered": Math.round(answered - inserted),
    },
    without: left,
    complaints,
    selfCheck: cells.map((row) => row.map(shownIn)),
  };
};

/** What the page itself complains of, from now on. */
const listen = (): readonly string[] => {
  const complaints: string[] = [];
  document.addEventListener("securitypolicyviolation", ({ effectiveDirective, blockedURI }) =>
    complaints.push(`the policy refused ${blockedURI} (${effectiveDirective})`),
  );
  addEventListener("error", ({ message }) => complaints.push(`error: ${message}`));
  addEventListener("unhandledrejection", ({ reason }) => complaints.push(`error: ${String(reason)}`));
  return complaints;
};

const handOver = async (report: Report): Promise<string> => {
  const answer = await fetch(WHERE, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify(report),
  });
  const said = await answer.text();
  if (!answer.ok) throw new Error(`the server of this machine refused it: ${said}`);
  return said;
};

const WORDS =
  "This build reports on this Excel: it inserts Self-check, and hands its results, the versions and the times to a file on " +
  "the machine that serves the add-in. None of your sheets is in it.";

/** A button above the pane that reports on this Excel to the server which the add-in came from. */
const offer = (above: HTMLElement, workbook: Workbook, seen: Seen): void => {
  const place = document.createElement("section");
  place.style.padding = "8px 12px";
  const words = document.createElement("p");
  words.setAttribute("role", "status");
  words.textContent = WORDS;
  const button = document.createElement("button");
  button.textContent = "Report on this Excel";
  const report = async (): Promise<void> => {
    button.disabled = true;
    words.textContent = "Self-check is inserted and worked out …";
    try {
      words.textContent = await handOver(await reportOn(workbook, seen));
    } catch (failure) {
      words.textContent = `There is no report: ${failure instanceof Error ? failure.message : String(failure)}`;
    }
    button.disabled = false;
  };
  button.addEventListener("click", () => void report());
  place.append(words, button);
  above.before(place);
};

/** Listens for complaints from now on; answers what offers the report, to be called once Excel is ready. */
export const reporter = () => {
  const complaints = listen();
  return (above: HTMLElement, workbook: Workbook): void =>
    offer(above, workbook, { complaints, ready: performance.now() });
};
