const escaped = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll('"', "&quot;").replaceAll("<", "&lt;");

/**
 * The manifest for where the add-in is hosted. `site` is an https address without a slash at its end; `version` is
 * "1.2.3", to which a manifest adds a fourth part. Throws an Error that says what it was given otherwise.
 */
export const fill = (template: string, site: string, version: string): string => {
  if (!/^https:\/\/[^/\s]+(\/[^\s]*[^/\s])?$/.test(site)) {
    throw new Error(`site holds "${site}": give an https:// address without a slash at its end`);
  }
  if (!/^\d+\.\d+\.\d+$/.test(version)) throw new Error(`version holds "${version}": give three numbers such as 1.2.3`);
  const filled = template
    .replaceAll("{site}", escaped(site))
    // An AppDomain is a scheme and a host: with a path Excel takes it for none.
    .replaceAll("{origin}", escaped(new URL(site).origin))
    .replaceAll("{version}", `${version}.0`);
  const left = /"\{\w*\}|>\{\w*\}/.exec(filled);
  if (left) throw new Error(`the manifest's template holds ${left[0].slice(1)}, which nothing fills`);
  return filled;
};
