import { underVersion } from "../../addin/build/underVersion";

const CHANGES = "# Changes\n\nBy version.\n\n## Unreleased\n\n- One.\n- Two.\n\n## 2.0.0\n\n- Before.\n";

test("what was unreleased comes under the version, and nothing else changes", () =>
  expect(underVersion(CHANGES, "2.1.0")).toBe(CHANGES.replace("Unreleased", "2.1.0")));

test.each([
  ["a version that is there", CHANGES, "2.0.0", "has a version 2.0.0 already"],
  ["no heading for what is new", CHANGES.replace("## Unreleased", "## New"), "2.1.0", 'one heading "## Unreleased"'],
  ["two of them", `${CHANGES}\n## Unreleased\n\n- Three.\n`, "2.1.0", 'one heading "## Unreleased"'],
  ["nothing under it", CHANGES.replace("- One.\n- Two.\n", ""), "2.1.0", "says nothing under Unreleased"],
])("%s is refused", (_, changes, version, words) => expect(() => underVersion(changes, version)).toThrow(words));
