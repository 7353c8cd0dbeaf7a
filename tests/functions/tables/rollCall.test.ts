import { rollCall } from "../../../functions/tables/rollCall";
import { call, callCell, down } from "../../call";
import { yardstick, type Pair } from "../../yardstick";
import { grouped, keepersLog } from "./keepersLog";

const log = keepersLog(40, 2000);
const ON = 45_800;
const given = [
  down(log.map(({ animal }) => animal)),
  down(log.map(({ day }) => day)),
  down(log.map(({ mass }) => mass)),
];

// Exact: both choose among the same rows and subtract once.
yardstick(rollCall, { against: "arquero 8.0.3", within: 0, unit: "" }, () => {
  const rows = new Map(call(rollCall, ...given, ON).map((row) => [String(row[0]).toLowerCase(), row]));
  return grouped(log, ON).flatMap(({ key, days, masses }) => {
    const [first, last] = [days[0] as number, days.at(-1) as number];
    const [before, now] = [masses[0] as number, masses.at(-1) as number];
    const wanted = [days.length, first, last, now, now - before, ON - last];
    return wanted.map((value, i): Pair => [rows.get(key)?.[i + 1] as number, value]);
  });
});

test("every animal of the log is called once, in the order in which they first stand", () => {
  const roll = call(rollCall, ...given).map(([name]) => String(name).toLowerCase());
  expect(roll).toEqual([...new Set(log.map(({ animal }) => animal.trim().toLowerCase()))]);
});

const FIRST = 46_113; // 1 April 2026
test("an animal without a weighing so far keeps its row, and without a day the latest of the log counts", () => {
  const animals = down(["Birch", "Ash", "Cedar", "birch "]);
  const dates = down([FIRST, FIRST + 9, FIRST, FIRST + 7]);
  const masses = down([310, 140, null, 309.5]);
  expect(call(rollCall, animals, dates, masses)).toEqual([
    ["Birch", 2, FIRST, FIRST + 7, 309.5, -0.5, 2],
    ["Ash", 1, FIRST + 9, FIRST + 9, 140, 0, 0],
    ["Cedar", 0, "", "", "", "", ""],
  ]);
  expect(call(rollCall, animals, dates, masses, FIRST + 8)[1]).toEqual(["Ash", 0, "", "", "", "", ""]);
});

test("of several weighings of one day the first and the last that stand there count", () =>
  expect(call(rollCall, down(["Ash", "Ash", "Ash"]), down([FIRST, FIRST, FIRST]), down([140, 150, 145]))).toEqual([
    ["Ash", 3, FIRST, FIRST, 145, 5, 0],
  ]));

test.each<[string, readonly unknown[], string]>([
  ["a mass of nobody", [down(["Ash", null]), down([FIRST, FIRST]), down([140, 141])], "#N/A row 2 of animals is blank"],
  [
    "a mass of nobody in the first row",
    [down([null, "Ash"]), down([FIRST, FIRST]), down([140, 141])],
    "#N/A row 1 of animals is blank",
  ],
  ["a mass of no day", [down(["Ash", "Ash"]), down([FIRST, null]), down([140, 141])], "#N/A row 2 of dates is blank"],
  [
    "a word for a mass",
    [down(["Ash", "Ash"]), down([FIRST, FIRST]), down([140, "refused"])],
    "#VALUE! row 2 of masses holds 'refused': give a number from 0.1 to 200000 g",
  ],
  [
    "lists of unlike length",
    [down(["Ash"]), down([FIRST, FIRST]), down([140, 141])],
    "#VALUE! animals holds 1 cells, dates 2 and masses 2: give as many of each",
  ],
])("%s is told", (_, args, answer) => expect(callCell(rollCall, ...args)).toBe(answer));
