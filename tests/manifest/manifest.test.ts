import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { OfficeAddinManifest } from "office-addin-manifest";
import { validateXML } from "xmllint-wasm";
import { commands } from "../../addin/excel/commands";
import { PREFIX } from "../../functions/define";
import { faultsOf, type Around } from "../../manifest/check";
import { fill } from "../../manifest/fill";
import { sheets } from "../../taskpane/sheets/catalogue";
import { contrast } from "../contrast";

const root = join(__dirname, "..", "..");
const text = (...path: string[]): string => readFileSync(join(root, ...path), "utf8");
const template = text("manifest", "manifest.xml");
const site = "https://club.example/almanac";
const filled = fill(template, site, "1.2.3");

const around: Around = {
  files: [
    "taskpane.html",
    "functions.js",
    "functions.json",
    "handbook/first-hour.html",
    "handbook/support.html",
    ...readdirSync(join(root, "manifest", "icons")).map((name) => `icons/${name}`),
  ],
  namespace: PREFIX,
  commands: Object.keys(commands),
};

const schema = (name: string) => ({ fileName: name, contents: text("tests", "tables", "manifest-schema", name) });
/** The errors of Microsoft's own schema (tests/tables/manifest-schema), read by libxml2. */
const schemaErrors = async (manifest: string): Promise<readonly string[]> => {
  const { errors } = await validateXML({
    xml: [{ fileName: "manifest.xml", contents: manifest }],
    schema: [wrapper],
    preload: [
      schema("OfficeAppManifestV1_1.xsd"),
      schema("OfficeAppBasicTypesV1_0.xsd"),
      schema("TaskPaneAppVersionOverridesV1_0.xsd"),
    ],
  });
  return errors.map(({ message }) => message);
};
/** The two parts of a manifest have a schema each. */
const wrapper = `<xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema">
  <xs:import namespace="http://schemas.microsoft.com/office/appforoffice/1.1" schemaLocation="OfficeAppManifestV1_1.xsd"/>
  <xs:import namespace="http://schemas.microsoft.com/office/taskpaneappversionoverrides" schemaLocation="TaskPaneAppVersionOverridesV1_0.xsd"/>
</xs:schema>`;

describe("the manifest", () => {
  test("follows Microsoft's schema", async () => expect(await schemaErrors(filled)).toEqual([]));
  test("has no fault that the schema does not see", () => expect(faultsOf(filled, around)).toEqual([]));
  test("the vendor's own reader finds in it what we meant", async () => {
    const folder = mkdtempSync(join(tmpdir(), "almanac-manifest-"));
    try {
      const file = join(folder, "manifest.xml");
      writeFileSync(file, filled);
      const read = await OfficeAddinManifest.readManifestFile(file);
      expect(read.id).toMatch(/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/);
      expect(read).toMatchObject({ displayName: "Vivarium Almanac", version: "1.2.3.0", hosts: ["Workbook"] });
      expect(read.defaultSettings?.sourceLocation).toBe(`${site}/taskpane.html`);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
  test("asks for the runtimes that the code counts on", () => {
    expect(filled).toContain('<Set Name="CustomFunctionsRuntime" MinVersion="1.3"/>');
    expect(filled).toContain('<Set Name="SharedRuntime" MinVersion="1.1"/>');
    expect(filled).toContain('<Set Name="ExcelApi" MinVersion="1.12"/>');
  });
  test("the ribbon's sheets are in the catalogue", () => {
    for (const key of Object.values(commands)) expect(sheets.map((sheet) => sheet.key)).toContain(key);
  });
  test("every icon is a PNG of the size that its name says", () => {
    const icons = readdirSync(join(root, "manifest", "icons")).filter((name) => name.endsWith(".png"));
    expect(icons.length).toBeGreaterThanOrEqual(13);
    for (const name of icons) {
      const bytes = readFileSync(join(root, "manifest", "icons", name));
      const size = Number(/-(\d+)\.png$/.exec(name)?.[1]);
      // PNG (W3C), 11.2.2: the IHDR chunk holds width and height at bytes 16 and 20.
      expect([name, bytes.readUInt32BE(0), bytes.readUInt32BE(16), bytes.readUInt32BE(20)]).toEqual([
        name,
        0x89504e47,
        size,
        size,
      ]);
    }
  });
  test("every colour of an icon stands out from a light ribbon and from a black one", () => {
    const folder = join(root, "manifest", "icons");
    const colours = readdirSync(folder)
      .filter((name) => name.endsWith(".svg"))
      .flatMap((name) => [...text("manifest", "icons", name).matchAll(/stroke="(#[0-9a-f]{6})"/g)])
      .map(([, colour]) => colour as string);
    expect(new Set(colours).size).toBeGreaterThanOrEqual(4);
    // The two greys are the vendor's own (@fluentui/tokens).
    for (const colour of new Set(colours))
      for (const ribbon of ["#f5f5f5", "#292929"])
        expect([colour, ribbon, contrast(colour, ribbon) >= 3]).toEqual([colour, ribbon, true]);
  });
});

describe("a planted fault is found by the schema", () => {
  test.each<[string, (xml: string) => string, RegExp]>([
    ["a tag that is not closed", (xml) => xml.replace("</Hosts>", ""), /tag|Opening/],
    [
      "a wrong order",
      (xml) =>
        xml
          .replace(/(<Permissions>.*?<\/Permissions>)([\s\S]*?)(<VersionOverrides)/, "$3")
          .replace("</VersionOverrides>", "</VersionOverrides><Permissions>ReadWriteDocument</Permissions>"),
      /VersionOverrides|Permissions/,
    ],
    ["no page for the functions", (xml) => xml.replace(/<Page>[\s\S]*?<\/Page>/, ""), /Metadata/],
    ["an id that is no GUID", (xml) => xml.replace(/<Id>.*?<\/Id>/, "<Id>almanac</Id>"), /Id/],
    [
      "a description that is too long",
      (xml) => xml.replace(/<Description DefaultValue="[^"]*"/, `<Description DefaultValue="${"x".repeat(251)}"`),
      /length|maxLength/,
    ],
    [
      "a resource id that is too long",
      (xml) => xml.replaceAll("Pane.Url", "Pane.Url.That.Is.Longer.Than.It.May.Be"),
      /length|maxLength/,
    ],
  ])("%s", async (_, plant, words) => {
    const planted = plant(filled);
    expect(planted).not.toBe(filled);
    const errors = await schemaErrors(planted);
    expect(errors.join("\n")).toMatch(words);
  });
});

describe("a planted fault is found beside the schema", () => {
  test.each<[string, (xml: string) => string, RegExp]>([
    [
      "a dangling id",
      (xml) => xml.replace('<Label resid="Climate.Label"/>', '<Label resid="Climate.Lable"/>'),
      /Climate\.Lable, which is not defined/,
    ],
    [
      "an id of the wrong kind",
      (xml) => xml.replace('<Label resid="Climate.Label"/>', '<Label resid="Climate.Tip"/>'),
      /ShortStrings Climate\.Tip/,
    ],
    [
      "an unused resource",
      (xml) => xml.replace("</bt:ShortStrings>", '<bt:String id="Spare" DefaultValue="x"/></bt:ShortStrings>'),
      /Spare is not used/,
    ],
    [
      "a resource defined twice",
      (xml) => xml.replace("</bt:ShortStrings>", '<bt:String id="Group.Label" DefaultValue="x"/></bt:ShortStrings>'),
      /Group\.Label is defined twice/,
    ],
    [
      "two controls of one id",
      (xml) => xml.replace('id="Almanac.CoolingPlan"', 'id="Almanac.FeedingLog"'),
      /Almanac\.FeedingLog is given to two/,
    ],
    [
      "an AppDomain with a path",
      (xml) => xml.replace("<AppDomain>https://club.example<", "<AppDomain>https://club.example/almanac<"),
      /AppDomain https:\/\/club\.example\/almanac is more than/,
    ],
    [
      "a site on another domain",
      (xml) => xml.replace("<AppDomain>https://club.example<", "<AppDomain>https://elsewhere.example<"),
      /not on the AppDomain/,
    ],
    [
      "an http address",
      (xml) => xml.replace(`"${site}/functions.js"`, '"http://club.example/almanac/functions.js"'),
      /no https address/,
    ],
    [
      "an address elsewhere",
      (xml) => xml.replace(`"${site}/functions.js"`, '"https://elsewhere.example/functions.js"'),
      /is not on https:\/\/club\.example/,
    ],
    [
      "a file that is not there",
      (xml) => xml.replace(`${site}/functions.json`, `${site}/function.json`),
      /function\.json is not among/,
    ],
    ["no icon of 80 px", (xml) => xml.replace('<bt:Image size="80" resid="Cooling.80"/>', ""), /no image of 80 px/],
    [
      "an icon of another size",
      (xml) => xml.replace('<bt:Image size="80" resid="Cooling.80"/>', '<bt:Image size="80" resid="Cooling.32"/>'),
      /image of 80 px is .*-32/,
    ],
    [
      "an icon of the list of another size",
      (xml) => xml.replace("icons/icon-64.png", "icons/icon-80.png"),
      /HighResolutionIconUrl is .*-80\.png: 64 px/,
    ],
    ["another namespace", (xml) => xml.replace('DefaultValue="VIV"', 'DefaultValue="VIVA"'), /namespace is VIVA/],
    [
      "a command that nobody registers",
      (xml) => xml.replace("insertFeedingLog", "insertFeedinglog"),
      /insertFeedinglog, which the code does not register/,
    ],
    [
      "a tip that is too long",
      (xml) => xml.replace(/(id="Pane\.Tip" DefaultValue=")[^"]*/, `$1${"x".repeat(251)}`),
      /Pane\.Tip has 251/,
    ],
    ["a runtime that ends", (xml) => xml.replace('lifetime="long"', 'lifetime="short"'), /long lifetime/],
  ])("%s", (_, plant, words) => {
    const planted = plant(filled);
    expect(planted).not.toBe(filled);
    expect(faultsOf(planted, around).join("\n")).toMatch(words);
  });
});

describe("filling in", () => {
  test("leaves nothing to fill, and writes site and version everywhere", () => {
    expect(filled).not.toMatch(/\{(site|version)\}/);
    expect(filled).toContain("<Version>1.2.3.0</Version>");
    expect(filled.split(site).length).toBe(template.split("{site}").length);
  });
  test("escapes what XML would misread", () =>
    expect(fill(template, "https://a.example/x&y", "1.0.0")).toContain("https://a.example/x&amp;y/functions.js"));
  test.each([
    ["http://club.example", "1.0.0", /site holds/],
    ["https://club.example/", "1.0.0", /site holds/],
    ["club.example", "1.0.0", /site holds/],
    ["https://club.example", "1.0", /version holds/],
  ])("refuses %s %s", (where, version, words) => expect(() => fill(template, where, version)).toThrow(words));
  test("refuses a template with something that nothing fills", () =>
    expect(() => fill('<a b="{sight}"/>', site, "1.0.0")).toThrow(/\{sight\}/));
});
