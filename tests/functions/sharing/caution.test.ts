import { catalogue } from "../../../functions/catalogue";
import { cautions } from "../../../functions/cautions";
import { call, callCell } from "../../call";

const caution = catalogue.find(({ name }) => name === "CAUTION") as (typeof catalogue)[number];

// By definition: the answer is the list that the function itself carries.
test("every function answers its cautions, one a row, or says that it has none", () => {
  for (const { name, cautions: keys } of catalogue) {
    if (keys.length > 0) expect(call(caution, name)).toEqual(keys.map((key) => [cautions[key]]));
    else expect(callCell(caution, name)).toBe(`#N/A ${name} has no caution of its own`);
  }
});

test("spelt as in a formula, and misspelt", () => {
  expect(call(caution, "=VIV.LAPSE(A1,300,1400)")).toEqual(call(caution, "LAPSE"));
  expect(callCell(caution, "LAPSEBANT")).toMatch(
    /^#N\/A function holds 'LAPSEBANT': the nearest names are LAPSEBAND, /,
  );
});
