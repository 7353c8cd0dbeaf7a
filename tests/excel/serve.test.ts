import { spawn, type ChildProcess } from "node:child_process";
import { mkdtempSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { request } from "node:https";
import { createServer, type AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fill } from "../../manifest/fill";

const root = join(__dirname, "..", "..");
const home = mkdtempSync(join(tmpdir(), "almanac-"));
const site = join(home, "dist");
let server: ChildProcess | undefined;

afterAll(() => {
  rmSync(home, { recursive: true, force: true });
});

const freePort = (): Promise<number> =>
  new Promise((resolve) => {
    const probe = createServer().listen(0, "localhost", () => {
      const { port } = probe.address() as AddressInfo;
      probe.close(() => resolve(port));
    });
  });

interface Got {
  readonly status: number | undefined;
  readonly headers: Readonly<Record<string, unknown>>;
  readonly body: string;
}

/** Trusts nobody but the maker of the certificate that was made for this machine. */
const ask = (port: number, path: string, sent?: { readonly origin: string; readonly body: string }): Promise<Got> =>
  new Promise((resolve, reject) => {
    const ca = readFileSync(join(home, ".office-addin-dev-certs", "ca.crt"));
    const { origin, body: given } = sent ?? {};
    const method = sent ? "POST" : "GET";
    request({ host: "localhost", port, path, ca, method, headers: origin ? { origin } : {} }, (response) => {
      let body = "";
      response.on("data", (chunk: Buffer) => (body += chunk.toString()));
      response.on("end", () => resolve({ status: response.statusCode, headers: response.headers, body }));
    })
      .on("error", reject)
      .end(given);
  });

const serve = async (port: number, until: string, ...more: readonly string[]): Promise<string> => {
  mkdirSync(site, { recursive: true });
  writeFileSync(
    join(site, "manifest.xml"),
    fill(readFileSync(join(root, "manifest", "manifest.xml"), "utf8"), `https://localhost:${port}`, "1.0.0"),
  );
  writeFileSync(join(site, "functions.json"), "{}");
  const started = spawn(process.execPath, [join(root, "addin", "excel", "serve.mjs"), site, ...more], {
    env: { ...process.env, HOME: home, USERPROFILE: home },
  });
  server = started;
  let said = "";
  started.stderr.on("data", (chunk: Buffer) => (said += chunk.toString()));
  await new Promise<void>((resolve, reject) => {
    started.on("exit", () => reject(new Error(said)));
    started.stdout.on("data", (chunk: Buffer) => {
      said += chunk.toString();
      if (said.includes(until)) resolve();
    });
  });
  return said;
};
afterEach(() => server?.kill());

test("the built add-in is served over HTTPS where its manifest says, and the steps for each Excel are told", async () => {
  const port = await freePort();
  writeFileSync(join(home, "secret.txt"), "not for others");
  const said = await serve(port, "Self-check");
  expect(said).toContain(`https://localhost:${port}`);
  for (const words of ["Excel on the web", "Excel for Windows", "Excel for Mac", join(site, "manifest.xml")]) {
    expect(said).toContain(words);
  }

  const json = await ask(port, "/functions.json");
  expect([json.status, json.body]).toEqual([200, "{}"]);
  // Excel reads functions.json from a page of its own.
  expect(json.headers["access-control-allow-origin"]).toBe("*");
  expect((await ask(port, "/../secret.txt")).status).toBe(404);
  expect((await ask(port, "/%2e%2e/secret.txt")).status).toBe(404);
  expect((await ask(port, "/..%2fsecret.txt")).status).toBe(404);
  expect((await ask(port, "/nothing.js")).status).toBe(404);
  const own = { origin: `https://localhost:${port}`, body: "{}" };
  expect((await ask(port, "/report-on-excel", own)).status).toBe(404);
}, 60_000);

test("a reporting build's page leaves its report beside the folder, no other page does; ten things to look at are told", async () => {
  const port = await freePort();
  const said = await serve(port, "10. Close the pane", "--report");
  expect(said.match(/^ ?\d+\. /gm)).toHaveLength(10);
  const host = { host: "Excel", platform: "PC", version: "16.0" };
  const selfCheck = [
    ["Function", "Result"],
    ["LAPSE", "pass"],
    ["RAMP", "fail"],
    ["AGE", "pass"],
  ];
  const report = { version: "1.0.0", host, complaints: [], selfCheck };
  const kept = () => readdirSync(home).filter((name) => /^excel-.*\.json$/.test(name));
  const sent = (origin: string, body: string) => ask(port, "/report-on-excel", { origin, body });
  const own = `https://localhost:${port}`;

  expect((await sent("https://elsewhere.example", JSON.stringify(report))).status).toBe(403);
  expect((await sent(own, "no report")).status).toBe(400);
  expect((await sent(own, "{}")).status).toBe(400);
  expect((await sent(own, `"${"x".repeat(2_000_001)}"`)).status).toBe(400);
  expect((await ask(port, "/report-on-excel")).status).toBe(403);
  expect(kept()).toEqual([]);

  const { status, body } = await sent(own, JSON.stringify(report));
  const line = "Vivarium Almanac 1.0.0 in Excel 16.0, PC: 2 of 3 pass, failed: RAMP; 0 complaints of the page.";
  expect([status, body]).toEqual([200, expect.stringContaining(line)]);
  const [file = ""] = kept();
  expect(JSON.parse(readFileSync(join(home, file), "utf8"))).toEqual(report);
}, 60_000);
