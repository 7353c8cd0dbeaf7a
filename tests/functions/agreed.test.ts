import { figuresOf } from "../../addin/build/agreed";
import { THRESHOLDS } from "../../functions/breeding/shared/development";
import { grounds } from "../../functions/climate/shared/ground";
import { networks } from "../../functions/network/networks";
import { sources } from "../../functions/sources";
import agreed from "./agreed.json";
import { fits } from "../tables/incubation.json";
import soils from "../tables/soilDiffusivity.json";

/**
 * Every figure that a file of the functions hands to others, practice's above all, of which no source speaks: as it was
 * agreed. One that is changed on purpose is changed in agreed.json by hand; `npm run generate` appends new ones.
 */
test("the figures are those that were agreed", () => expect(figuresOf()).toEqual(agreed));

test("grounds: each is a row of the table that it comes from", () => {
  expect(sources.moeneVanDam.status).toBe("published");
  expect(Object.keys(grounds)).toEqual(soils.rows.map(([ground]) => ground));
  for (const [ground, , diffusivity] of soils.rows) expect(grounds[ground as keyof typeof grounds]).toBe(diffusivity);
});

test("thresholds of eggs: the lowest and the highest that was fitted, but for one line that no warmth explains", () => {
  const fitted = fits.map(({ threshold }) => threshold).filter((threshold) => threshold > 0);
  expect(fitted).toHaveLength(fits.length - 1);
  expect(THRESHOLDS).toEqual([Math.min(...fitted), Math.max(...fitted)]);
});

test("the years of each network are those of its source", () => {
  for (const { years, credit } of Object.values(networks)) {
    if (/\d{4}-\d{4}/.test(credit)) expect(credit).toContain(years.join("-"));
  }
});
