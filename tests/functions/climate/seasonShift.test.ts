import { seasonShift } from "../../../functions/climate/seasonShift";
import { call, callCell, down } from "../../call";

const YEAR = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];

// By definition: the figures can be checked by head.
test("six months by default: January's value stands in July", () => expect(call(seasonShift, [YEAR])[0]?.[6]).toBe(1));

test.each([
  [0, 1],
  [12, 1],
  [-12, 1],
  [1, 12],
  [-1, 2],
  [-5, 6],
])("by %i, January holds month %i", (by, month) => expect(call(seasonShift, [YEAR], by)[0]?.[0]).toBe(month));

test("a column stays a column, a row a row", () => {
  expect(call(seasonShift, down(YEAR))).toEqual(down([7, 8, 9, 10, 11, 12, 1, 2, 3, 4, 5, 6]));
  expect(call(seasonShift, [YEAR])).toHaveLength(1);
});

test("there and back again", () => {
  const there = call(seasonShift, [YEAR], 4);
  expect(call(seasonShift, there, -4)).toEqual([YEAR]);
});

test("whole months only", () =>
  expect(callCell(seasonShift, [YEAR], 1.5)).toBe("#VALUE! by holds 1.5: give a whole number from -12 to 12"));
