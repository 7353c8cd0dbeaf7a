import { latest } from "../../../functions/tables/latest";
import { call, down } from "../../call";
import { yardstick, type Pair } from "../../yardstick";
import { grouped, keepersLog } from "./keepersLog";

const log = keepersLog(40, 2000);
const ON = 45_800;
const days = down(log.map(({ day }) => day));
const masses = down(log.map(({ mass }) => mass));
const animals = down(log.map(({ animal }) => animal));

// Exact: both choose among the same rows.
yardstick(latest, { against: "arquero 8.0.3", within: 0, unit: "" }, () => {
  const wanted = grouped(log, ON);
  const answers = call(latest, days, masses, ON, animals, down(wanted.map(({ key }) => key)));
  return wanted.flatMap((one, i): Pair[] => [
    [answers[i]?.[0] as number, one.masses.at(-1) as number],
    [answers[i]?.[1] as number, one.days.at(-1) as number],
  ]);
});

const dates = down(["2026-04-08", "2026-04-01", "2026-04-22", "2026-04-29"]);
const FIRST = 46_113; // 1 April 2026

test.each<[string, unknown, unknown]>([
  ["on the day itself", "2026-04-08", [142, FIRST + 7]],
  ["before the next", "2026-04-21", [142, FIRST + 7]],
  ["of all, where no day is given", null, [150, FIRST + 21]],
  ["a blank is no entry yet", "2026-05-31", [150, FIRST + 21]],
])("the last entry %s", (_, on, answer) =>
  expect(call(latest, dates, down([142, 140, 150, null]), on)).toEqual([answer]),
);

test("a day before the first says when the first is", () =>
  expect(call(latest, dates, down([142, 140, 150, null]), "2026-03-31")).toEqual([
    [0, 1].map(() => "#N/A no entry on or before 2026-03-31: the first is of 2026-04-01"),
  ]));

test("each meal finds the body mass of its own animal before it", () =>
  expect(
    call(
      latest,
      down([FIRST, FIRST, FIRST + 7, FIRST + 7]),
      down([140, 310, 142, 309]),
      down([FIRST + 3, FIRST + 3, FIRST + 9]),
      down(["Ash", "Birch", "Ash", "Birch"]),
      down(["Birch", "ash", "Birch"]),
    ),
  ).toEqual([
    [310, FIRST],
    [140, FIRST],
    [309, FIRST + 7],
  ]));

test("of several entries of one day the one that stands last counts; words are entries", () => {
  expect(call(latest, down([FIRST, FIRST]), down([140, 141]))).toEqual([[141, FIRST]]);
  expect(call(latest, down([FIRST, FIRST + 1]), down([140, "refused"]))).toEqual([["refused", FIRST + 1]]);
  expect(call(latest, down([FIRST]), down([0]))).toEqual([[0, FIRST]]);
});

test("bad input is told in words", () => {
  const both = (words: string) => [[words, words]];
  expect(call(latest, down([FIRST]), down([140, 141]))).toEqual(
    both("#VALUE! dates holds 1 cells and values 2: give as many of each"),
  );
  expect(call(latest, down([FIRST, null]), down([140, 141]))).toEqual(both("#N/A row 2 of dates is blank"));
  expect(call(latest, down([FIRST, FIRST, FIRST + 1, FIRST + 1]), down([140, 310, 141, 309]))).toEqual(
    both(
      "#VALUE! values holds 140 and 310 on 2026-04-01, and more such days: are these several animals? Give animals and animal",
    ),
  );
});
