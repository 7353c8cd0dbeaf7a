import { spawn, type ChildProcess } from "node:child_process";
import { mkdtempSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
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
  server?.kill();
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
const get = (port: number, path: string): Promise<Got> =>
  new Promise((resolve, reject) => {
    const ca = readFileSync(join(home, ".office-addin-dev-certs", "ca.crt"));
    request({ host: "localhost", port, path, ca }, (response) => {
      let body = "";
      response.on("data", (chunk: Buffer) => (body += chunk.toString()));
      response.on("end", () => resolve({ status: response.statusCode, headers: response.headers, body }));
    })
      .on("error", reject)
      .end();
  });

test("the built add-in is served over HTTPS where its manifest says, and the steps for each Excel are told", async () => {
  const port = await freePort();
  mkdirSync(site);
  writeFileSync(
    join(site, "manifest.xml"),
    fill(readFileSync(join(root, "manifest", "manifest.xml"), "utf8"), `https://localhost:${port}`, "1.0.0"),
  );
  writeFileSync(join(site, "functions.json"), "{}");
  writeFileSync(join(home, "secret.txt"), "not for others");
  server = spawn(process.execPath, [join(root, "addin", "excel", "serve.mjs"), site], {
    env: { ...process.env, HOME: home, USERPROFILE: home },
  });
  let said = "";
  server.stderr?.on("data", (chunk: Buffer) => (said += chunk.toString()));
  await new Promise<void>((resolve, reject) => {
    server?.on("exit", () => reject(new Error(said)));
    server?.stdout?.on("data", (chunk: Buffer) => {
      said += chunk.toString();
      if (said.includes("Self-check")) resolve();
    });
  });
  expect(said).toContain(`https://localhost:${port}`);
  for (const words of ["Excel on the web", "Excel for Windows", "Excel for Mac", join(site, "manifest.xml")]) {
    expect(said).toContain(words);
  }

  const json = await get(port, "/functions.json");
  expect([json.status, json.body]).toEqual([200, "{}"]);
  // Excel reads functions.json from a page of its own.
  expect(json.headers["access-control-allow-origin"]).toBe("*");
  expect((await get(port, "/../secret.txt")).status).toBe(404);
  expect((await get(port, "/%2e%2e/secret.txt")).status).toBe(404);
  expect((await get(port, "/..%2fsecret.txt")).status).toBe(404);
  expect((await get(port, "/nothing.js")).status).toBe(404);
}, 60_000);
