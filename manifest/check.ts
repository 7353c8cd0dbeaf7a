/** What the manifest has to agree with outside of itself. */
export interface Around {
  /** The files of the built site, by their paths in it. */
  readonly files: readonly string[];
  /** The prefix of the functions. */
  readonly namespace: string;
  /** The commands that the code registers. */
  readonly commands: readonly string[];
}

const attributes = (xml: string, element: string, attribute: string): readonly string[] =>
  [...xml.matchAll(new RegExp(`<${element}\\b[^>]*?\\s${attribute}="([^"]*)"`, "g"))].map(
    ([, value]) => value as string,
  );

const repeated = (values: readonly string[]): readonly string[] => [
  ...new Set(values.filter((value, i) => values.indexOf(value) !== i)),
];

/** Most letters of each kind of text, as the platform's schemas have them. */
const LENGTHS = { "bt:Image": 2048, "bt:Url": 2048, ShortStrings: 125, LongStrings: 250 } as const;
const RESID = 32;
const RIBBON_ICONS = ["16", "32", "80"];
/** The list of add-ins takes these sizes alone of a task pane (learn.microsoft.com/javascript/api/manifest/iconurl, highresolutioniconurl). */
const LIST_ICONS = { IconUrl: 32, HighResolutionIconUrl: 64 } as const;

/** Which kind of resource an element has to name. */
const KINDS: readonly (readonly [element: string, kind: string])[] = [
  ["bt:Image", "bt:Image"],
  ["SourceLocation", "bt:Url"],
  ["Runtime", "bt:Url"],
  ["FunctionFile", "bt:Url"],
  ["LearnMoreUrl", "bt:Url"],
  ["Namespace", "ShortStrings"],
  ["Label", "ShortStrings"],
  ["Title", "ShortStrings"],
  ["Description", "LongStrings"],
];

/**
 * Faults of a filled manifest that its schema does not see, in words; none where it is in order. The manifest has to
 * be well-formed.
 */
export const faultsOf = (manifest: string, { files, namespace, commands }: Around): readonly string[] => {
  const xml = manifest.replace(/<!--[\s\S]*?-->/g, "");
  const faults: string[] = [];
  const resources = xml.slice(xml.indexOf("<Resources>"));
  const part = (name: string): string => new RegExp(`<bt:${name}>([\\s\\S]*?)</bt:${name}>`).exec(resources)?.[1] ?? "";
  const strings = (name: "ShortStrings" | "LongStrings") =>
    attributes(part(name), "bt:String", "id").map(
      (id, i) => [id, attributes(part(name), "bt:String", "DefaultValue")[i] ?? ""] as const,
    );
  const plain = (element: "bt:Image" | "bt:Url") =>
    attributes(resources, element, "id").map(
      (id, i) => [id, attributes(resources, element, "DefaultValue")[i] ?? ""] as const,
    );
  const defined: Readonly<Record<string, readonly (readonly [id: string, value: string])[]>> = {
    "bt:Image": plain("bt:Image"),
    "bt:Url": plain("bt:Url"),
    ShortStrings: strings("ShortStrings"),
    LongStrings: strings("LongStrings"),
  };

  // Names of resources: each defined once, each used, each used where its kind belongs.
  const ids = Object.values(defined).flatMap((list) => list.map(([id]) => id));
  for (const id of repeated(ids)) faults.push(`the resource ${id} is defined twice`);
  for (const id of ids) if (id.length > RESID) faults.push(`the resource id ${id} is longer than ${RESID} letters`);
  const used = new Set<string>();
  for (const [element, kind] of KINDS) {
    for (const resid of attributes(xml, element, "resid")) {
      used.add(resid);
      if (!defined[kind]?.some(([id]) => id === resid))
        faults.push(`${element} names the ${kind} ${resid}, which is not defined`);
    }
  }
  for (const [, resid] of xml.matchAll(/\sresid="([^"]*)"/g)) {
    if (!used.has(resid as string))
      faults.push(`something names the resource ${resid}, and no rule knows of what kind it should be`);
  }
  for (const id of ids) if (!used.has(id)) faults.push(`the resource ${id} is not used`);
  for (const [kind, most] of Object.entries(LENGTHS)) {
    for (const [id, value] of defined[kind] ?? []) {
      if (value.length === 0 || value.length > most)
        faults.push(`${id} has ${value.length} letters: from 1 to ${most} fit`);
    }
  }

  // Names of controls, groups and runtimes.
  for (const id of repeated(["Control", "Group", "Menu"].flatMap((element) => attributes(xml, element, "id")))) {
    faults.push(`the id ${id} is given to two controls`);
  }
  const called = [...xml.matchAll(/<FunctionName>([^<]*)<\/FunctionName>/g)].map(([, name]) => (name as string).trim());
  for (const name of called)
    if (!commands.includes(name)) faults.push(`the ribbon calls ${name}, which the code does not register`);
  for (const name of commands)
    if (!called.includes(name)) faults.push(`the code registers ${name}, which the ribbon does not call`);

  // Icons: the ribbon asks for three sizes everywhere.
  for (const [, icon] of xml.matchAll(/<Icon>([\s\S]*?)<\/Icon>/g)) {
    const sizes = attributes(icon as string, "bt:Image", "size");
    for (const size of RIBBON_ICONS) if (!sizes.includes(size)) faults.push(`an icon has no image of ${size} px`);
    for (const [size, resid] of sizes.map(
      (one, i) => [one, attributes(icon as string, "bt:Image", "resid")[i] ?? ""] as const,
    )) {
      const address = defined["bt:Image"]?.find(([id]) => id === resid)?.[1];
      if (address && !address.endsWith(`-${size}.png`)) faults.push(`the image of ${size} px is ${address}`);
    }
  }

  for (const [element, size] of Object.entries(LIST_ICONS)) {
    const [address = "missing"] = attributes(xml, element, "DefaultValue");
    if (!address.endsWith(`-${size}.png`)) faults.push(`${element} is ${address}: ${size} px are wanted`);
  }

  // Addresses: all on the site, encrypted, and there.
  const site = /<SourceLocation DefaultValue="([^"]*)\/taskpane\.html"/.exec(xml)?.[1] ?? "";
  const origins = [...xml.matchAll(/<AppDomain>([^<]*)<\/AppDomain>/g)].map(([, domain]) => (domain as string).trim());
  for (const domain of origins)
    if (!/^https:\/\/[^/\s]+$/.test(domain)) faults.push(`the AppDomain ${domain} is more than a scheme and a host`);
    else if (!site.startsWith(`${domain}/`) && site !== domain)
      faults.push(`the site is not on the AppDomain ${domain}`);
  for (const [, address] of xml.replace(/\sxmlns(:\w+)?="[^"]*"/g, "").matchAll(/(?:"|>)\s*([a-z]+:\/\/[^"<\s]*)/gi)) {
    if (!(address as string).startsWith("https://")) faults.push(`${address} is no https address`);
    else if (origins.includes(address as string)) continue;
    else if (!(address as string).startsWith(`${site}/`)) faults.push(`${address} is not on ${site}`);
    else if (!files.includes((address as string).slice(site.length + 1)))
      faults.push(`${address} is not among the files of the site`);
  }

  const named = attributes(xml, "Namespace", "resid").map(
    (resid) => defined.ShortStrings?.find(([id]) => id === resid)?.[1],
  );
  for (const name of named)
    if (name !== namespace) faults.push(`the namespace is ${name}, the functions' prefix is ${namespace}`);
  if (named.length !== 1) faults.push(`there are ${named.length} namespaces: one is wanted`);
  if (attributes(xml, "Runtime", "lifetime").join() !== "long") faults.push("the runtime is not one of long lifetime");
  return faults;
};
