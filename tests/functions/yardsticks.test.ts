import { counted, type Yardstick } from "../../functions/yardsticks";

const one = (changes: Partial<Yardstick>): Yardstick => ({
  of: "LAPSE",
  against: "ICAO Doc 7488/3",
  values: 4,
  unit: "K",
  worst: 0,
  ...changes,
});

test("values of which several figures are told count once; drawn ones have no source outside", () => {
  const register = [
    one({}),
    one({ against: "NOAA, highs", values: 10, figure: "root mean square error" }),
    one({ against: "NOAA, highs", values: 8, figure: "share inside" }),
    one({ against: "NOAA, lows", values: 100 }),
    one({ of: "PRESSURE", values: 1000 }),
    one({ of: "LAPSEFIT", against: "20 simulated mountains", values: 20 }),
  ];
  expect(counted(register)).toEqual({ functions: 3, values: 1134, simulated: 20, sources: 2 });
  expect(counted([])).toEqual({ functions: 0, values: 0, simulated: 0, sources: 0 });
});
