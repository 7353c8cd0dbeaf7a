import { stationGap } from "../../../functions/climate/stationGap";
import { call, callCell, down } from "../../call";

// By definition: the figures can be checked by head.
test("below, on either edge, inside, above", () =>
  expect(call(stationGap, down([300, 1200, 1500, 1800, 2500]), 1200, 1800)).toEqual([[-900], [0], [0], [0], [700]]));

test("a band of one elevation", () => expect(callCell(stationGap, 1100, 1200, 1200)).toBe(-100));

test("a band upside down is refused", () =>
  expect(callCell(stationGap, 300, 1800, 1200)).toBe(
    "#VALUE! bandLow holds 1800 m, above bandHigh 1200 m: are they swapped?",
  ));
