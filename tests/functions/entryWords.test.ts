import { lapse } from "../../functions/climate/lapse";
import { shapeWords } from "../../functions/entryWords";
import { release } from "../../functions/sharing/release";
import { ramp } from "../../functions/winter/ramp";

test("what a function fills is told by its shape, and what takes nothing fills one cell", () => {
  expect(shapeWords(release)).toBe("One cell.");
  expect(shapeWords(lapse)).toBe("One cell for each cell given.");
  expect(shapeWords(ramp)).toBe("Rows below one another, without headings.");
});
