// Serves the built add-in to this machine over HTTPS, where its manifest says that it is hosted, and says what to click.
import { spawnSync } from "node:child_process";
import { X509Certificate } from "node:crypto";
import { existsSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:https";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import certificates from "office-addin-dev-certs";
import places from "office-addin-dev-certs/lib/defaults.js";
import sirv from "sirv";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");

/** The port of this machine that a built manifest is for; undefined where it is for another place, or not there. */
const portOf = (folder) => {
  const manifest = join(folder, "manifest.xml");
  if (!existsSync(manifest)) return undefined;
  return /<AppDomain>https:\/\/localhost:(\d+)<\/AppDomain>/.exec(readFileSync(manifest, "utf8"))?.[1];
};

const HOURS_LEFT = 24;
const isFresh = (file) =>
  existsSync(file) &&
  new Date(new X509Certificate(readFileSync(file)).validTo).getTime() > Date.now() + HOURS_LEFT * 3_600_000;

/**
 * The certificate for localhost. Windows and macOS ask whether to trust its maker. Linux has no Excel, and its trust is
 * for its owner to give: there the certificate is made, and the browser will ask.
 */
const certificate = async () => {
  if (process.platform === "win32" || process.platform === "darwin") {
    try {
      return { ...(await certificates.getHttpsServerOptions()), trusted: true };
    } catch (error) {
      console.warn(`The certificate was not trusted: ${error.message}`);
    }
  }
  if (!isFresh(places.localhostCertificatePath)) {
    for (const file of [places.caCertificatePath, places.localhostCertificatePath, places.localhostKeyPath]) {
      rmSync(file, { force: true });
    }
    await certificates.generateCertificates();
  }
  return {
    cert: readFileSync(places.localhostCertificatePath),
    key: readFileSync(places.localhostKeyPath),
    trusted: false,
  };
};

/** Files of one folder. Excel reads functions.json from a page of its own, and so from everywhere. */
const answer = (folder) => {
  const files = sirv(folder, {
    dev: true,
    setHeaders: (response) => {
      response.setHeader("access-control-allow-origin", "*");
      response.setHeader("x-content-type-options", "nosniff");
    },
  });
  return (request, response) => {
    if (request.url === "/") request.url = "/taskpane.html";
    files(request, response, () => response.writeHead(404).end("not here"));
  };
};

const steps = (folder, port, trusted) => `
Vivarium Almanac is served at https://localhost:${port} (Ctrl+C ends it).
${
  trusted
    ? ""
    : `
The certificate is not trusted yet. Open https://localhost:${port}/taskpane.html in the browser that will show Excel,
and accept it once; or add ${places.caCertificatePath} to the system's trusted makers.
`
}
The manifest is ${join(folder, "manifest.xml")}

Excel on the web   Open a workbook in a browser on this machine. Home > Add-ins > More Add-ins
                   > My Add-ins > Upload My Add-in, and choose the manifest. Where the browser asks whether the page
                   may reach devices on your local network, allow it: the add-in is served from this machine.
Excel for Windows  Put the manifest in a folder and share it (Properties > Sharing). File > Options > Trust Center
                   > Trust Center Settings > Trusted Add-in Catalogs: add the share's address, tick "Show in Menu",
                   restart Excel. Home > Add-ins > More Add-ins > Shared Folder, and choose Vivarium Almanac.
Excel for Mac      Copy the manifest to ~/Library/Containers/com.microsoft.Excel/Data/Documents/wef (make the folder
                   if it is not there), restart Excel. Home > Add-ins, and choose Vivarium Almanac.

Then: Home > Almanac opens the pane; =VIV.LAPSE(24,300,1400) in a cell answers 16.85.
Insert "Self-check" from the pane: every line that passes is proven in that Excel.
`;

const start = async () => {
  const folder = resolve(process.argv[2] ?? join(root, "dist"));
  if (portOf(folder) === undefined && process.argv[2] === undefined) {
    console.log("Building for this machine …");
    const built = spawnSync("npm", ["run", "-s", "build"], {
      cwd: root,
      stdio: "inherit",
      shell: process.platform === "win32",
    });
    if (built.status !== 0) throw new Error("the build failed: see its message above");
  }
  const port = portOf(folder);
  if (port === undefined) throw new Error(`${folder} holds no manifest for https://localhost: run npm run build first`);
  const { trusted, ...keys } = await certificate();
  const server = createServer(keys, answer(folder));
  server.once("error", (error) => {
    console.error(error.code === "EADDRINUSE" ? `Port ${port} is taken: end the program that uses it.` : error.message);
    process.exitCode = 1;
  });
  // Every address that "localhost" may stand for.
  server.listen(Number(port), "localhost", () => console.log(steps(folder, port, trusted)));
};

start().catch((error) => {
  console.error(error.message);
  process.exitCode = 1;
});
