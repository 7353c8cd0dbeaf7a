const UNRELEASED = "## Unreleased\n";

/** The changes with what was unreleased under the version that brings it. Throws where a release would say nothing. */
export const underVersion = (changes: string, version: string): string => {
  const heading = `## ${version}\n`;
  if (changes.includes(`\n${heading}`)) throw new Error(`CHANGELOG.md has a version ${version} already`);
  const [before, after, ...others] = changes.split(UNRELEASED);
  if (before === undefined || after === undefined || others.length > 0) {
    throw new Error('CHANGELOG.md needs one heading "## Unreleased"');
  }
  const [entries = ""] = after.split("\n## ");
  if (entries.trim() === "")
    throw new Error("CHANGELOG.md says nothing under Unreleased: what does the version bring?");
  return `${before}${heading}${after}`;
};
