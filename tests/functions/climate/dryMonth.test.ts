import { dryMonth } from "../../../functions/climate/dryMonth";
import { call, callCell } from "../../call";
import { rows as stations } from "../../tables/dryMonths.json";
import { yardstick } from "../../yardstick";

// Twelve stations of CLIMAT reports (Datenbasis: Deutscher Wetterdienst, Einzelwerte gemittelt), their dry months counted
// with NumPy. Exact: a comparison has no tolerance.
yardstick(dryMonth, { against: "dry months counted with NumPy", within: 0, unit: "" }, () =>
  stations.flatMap(({ temperatures, rains, dry }) =>
    (call(dryMonth, [temperatures], [rains])[0] as boolean[]).map((isDry, i) => [isDry, dry.includes(i + 1)] as const),
  ),
);

test("there are dry months and others among them", () => {
  const dry = stations.flatMap((station) => station.dry).length;
  expect(dry).toBeGreaterThan(10);
  expect(dry).toBeLessThan(12 * stations.length - 10);
});

test("frost is never dry, the limit itself is not dry", () => {
  expect(callCell(dryMonth, -5, 0)).toBe(false);
  expect(callCell(dryMonth, 0, 0)).toBe(false);
  expect(callCell(dryMonth, 10, 20)).toBe(false);
  expect(callCell(dryMonth, 10, 19.99)).toBe(true);
});

test("°F and inches", () => {
  expect(callCell(dryMonth, 68, 1.5, "imperial")).toBe(true); // 38.1 mm against 40
  expect(callCell(dryMonth, 68, 1.6, "imperial")).toBe(false); // 40.64 mm
});

test("negative rain is refused", () =>
  expect(callCell(dryMonth, 10, -1)).toBe("#VALUE! rain holds -1: give a number from 0 to 12500 mm"));
