import { execFile } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { promisify } from "node:util";

const run = promisify(execFile);

/** Works every formula out anew on loading: else the program would show the answers that stand in the file. */
const SETTINGS = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>`;

/** A LibreOffice of the test's own, with a profile that nothing else uses. */
export class LibreOffice {
  private readonly folder = mkdtempSync(join(tmpdir(), "office-"));

  constructor() {
    const user = join(this.folder, "profile", "user");
    mkdirSync(user, { recursive: true });
    writeFileSync(join(user, "registrymodifications.xcu"), SETTINGS);
  }

  /** Opens a file and saves it as another kind: what comes back is what LibreOffice made of it. */
  async convert(bytes: Uint8Array, from: string, to: string): Promise<Uint8Array> {
    const [given, made] = [join(this.folder, `given.${from}`), join(this.folder, "made")];
    writeFileSync(given, bytes);
    const profile = `-env:UserInstallation=${pathToFileURL(join(this.folder, "profile")).href}`;
    await run("soffice", [profile, "--headless", "--convert-to", to, "--outdir", made, given], { timeout: 120_000 });
    return readFileSync(join(made, `given.${to.replace(/:.*$/, "")}`));
  }

  close(): void {
    rmSync(this.folder, { recursive: true, force: true });
  }
}
