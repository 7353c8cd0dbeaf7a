import manifest from "../../../package.json";
import { release } from "../../../functions/sharing/release";
import { callCell } from "../../call";

test("the version is that of package.json, three numbers", () => {
  expect(callCell(release)).toBe(manifest.version);
  expect(manifest.version).toMatch(/^\d+\.\d+\.\d+$/);
});
