// Serves the built add-in to this machine over HTTPS, where its manifest says that it is hosted, and says what to click.
import { spawnSync } from "node:child_process";
import { X509Certificate } from "node:crypto";
import { existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:https";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
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

/** Where the pane of a reporting build leaves its report (report.ts), and what a report may weigh. */
const REPORTED = "/report-on-excel";
const MOST_BYTES = 2_000_000;

const bodyOf = async (request) => {
  const pieces = [];
  let bytes = 0;
  for await (const piece of request) {
    bytes += piece.length;
    if (bytes > MOST_BYTES) throw new Error(`a report has up to ${MOST_BYTES} bytes`);
    pieces.push(piece);
  }
  return Buffer.concat(pieces).toString("utf8");
};

/** A report in one line, from the results in the second column of Self-check. */
const inOneLine = ({ version, host, selfCheck, complaints }) => {
  const named = (result) => selfCheck.filter((row) => row[1] === result).map(([name]) => name);
  const [passed, failed] = [named("pass"), named("fail")];
  return (
    `Vivarium Almanac ${version} in ${host.host} ${host.version}, ${host.platform}: ${passed.length} of ` +
    `${passed.length + failed.length} pass${failed.length > 0 ? `, failed: ${failed.join(", ")}` : ""}; ` +
    `${complaints.length} complaints of the page.`
  );
};

/** Writes what the add-in's own page reports beside its folder. Any other page is refused: it could write here at will. */
const takeReport = async (folder, origin, request, response) => {
  const say = (status, words) => response.writeHead(status, { "content-type": "text/plain" }).end(words);
  if (request.method !== "POST" || request.headers.origin !== origin)
    return say(403, "only the add-in's own page reports");
  try {
    const report = JSON.parse(await bodyOf(request));
    const line = inOneLine(report);
    const file = join(dirname(folder), `excel-${new Date().toISOString().replaceAll(/[:.]/g, "-")}.json`);
    writeFileSync(file, `${JSON.stringify(report, null, 1)}\n`, { flag: "wx" });
    console.log(`${line}\nThe report is ${file}\n`);
    return say(200, `${line} The report is ${file} on the machine that serves the add-in.`);
  } catch (error) {
    return say(400, `the report cannot be kept: ${error.message}`);
  }
};

/** Files of one folder. Excel reads functions.json from a page of its own, and so from everywhere. */
const answer = (folder, port, reports) => {
  const files = sirv(folder, {
    dev: true,
    setHeaders: (response) => {
      response.setHeader("access-control-allow-origin", "*");
      response.setHeader("x-content-type-options", "nosniff");
    },
  });
  return (request, response) => {
    if (reports && request.url === REPORTED)
      return void takeReport(folder, `https://localhost:${port}`, request, response);
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

/** What only a live Excel can tell. */
const LOOK_AT = `
This build has a button over its pane, "Report on this Excel": it inserts Self-check and writes what comes of it to a file on
this machine. What no report can tell takes ten minutes more; write down what you see, and which Excel it was:

 1. Almanac is on Home; the browser's console shows nothing "refused to load".
 2. =VIV.LAPSE(24,300,1400) gives 16.85; =VIV.LAPSE("x",1,2) shows its sentence at the error's flag.
 3. Report on this Excel: all of Self-check passes. What does its line on a blank cell say?
 4. =VIV.RAMP(DATE(2026,10,5),24,8,42) in a cell of format General: dates, not 46300? Which format does Format Cells name?
 5. Insert every sheet. Does January on the chart of Native climate equal its table; has it twelve points, and each band as two lines?
 6. Clear the example: does any line drop to 0?
 7. Freeze, save, open the file without the add-in, then with it again, and Thaw: is every formula back?
 8. Save a sheet as a file and as a picture: is there a file? Excel for Mac should say that there is none.
 9. Bring in 5 000 readings, then 20 000, on the web: an answer, #BUSY! or an error?
10. Close the pane and open the workbook again: is there a #NAME? after ten seconds; do the ribbon's buttons work with the pane closed?
`;

const start = async () => {
  const {
    values: { report = false },
    positionals: [given],
  } = parseArgs({ options: { report: { type: "boolean" } }, allowPositionals: true });
  const folder = resolve(given ?? join(root, ...(report ? ["reports", "excel"] : ["dist"])));
  if (given === undefined && (report || portOf(folder) === undefined)) {
    console.log("Building for this machine …");
    const built = spawnSync("npm", ["run", "-s", "build", ...(report ? ["--", "--reports"] : [])], {
      cwd: root,
      stdio: "inherit",
      shell: process.platform === "win32",
    });
    if (built.status !== 0) throw new Error("the build failed: see its message above");
  }
  const port = portOf(folder);
  if (port === undefined) throw new Error(`${folder} holds no manifest for https://localhost: run npm run build first`);
  const { trusted, ...keys } = await certificate();
  const server = createServer(keys, answer(folder, port, report));
  server.once("error", (error) => {
    console.error(error.code === "EADDRINUSE" ? `Port ${port} is taken: end the program that uses it.` : error.message);
    process.exitCode = 1;
  });
  // Every address that "localhost" may stand for.
  server.listen(Number(port), "localhost", () => console.log(steps(folder, port, trusted) + (report ? LOOK_AT : "")));
};

start().catch((error) => {
  console.error(error.message);
  process.exitCode = 1;
});
