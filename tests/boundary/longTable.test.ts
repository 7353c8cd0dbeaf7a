import fc from "fast-check";
import { massTrend } from "../../functions/condition/massTrend";
import { hatchForecast } from "../../functions/breeding/hatchForecast";
import { nextMeal } from "../../functions/feeding/nextMeal";
import { refusals } from "../../functions/feeding/refusals";
import { lossTrend } from "../../functions/winter/lossTrend";
import { dayTable } from "../../functions/readings/dayTable";
import { call, callCell, down } from "../call";

/** A log of three animals, invented, as a keeper's own table holds it: mixed, names in any spelling, a blank mass. */
const LOG: readonly (readonly [day: string, mass: unknown, name: unknown])[] = [
  ["2026-04-01", 140, "Ash"],
  ["2026-04-01", 310, "Birch"],
  ["2026-04-08", 142, "ash "],
  ["2026-04-08", 309, "BIRCH"],
  ["2026-04-12", 88, "Cedar"],
  ["2026-04-15", null, "Ash"],
  ["2026-04-15", 307, " Birch"],
  ["2026-04-22", 147, "ASH"],
  ["2026-04-22", 305, "Birch"],
];
const days = down(LOG.map(([day]) => day));
const masses = down(LOG.map(([, mass]) => mass));
const names = down(LOG.map(([, , name]) => name));
/** What the function answers to the rows of that name alone. */
const alone = (name: string) => {
  const own = LOG.filter(([, , one]) => String(one).trim().toLowerCase() === name);
  return callCell(massTrend, down(own.map(([day]) => day)), down(own.map(([, mass]) => mass)), 7);
};
const trend = (animal: unknown, by: unknown = 7) => call(massTrend, days, masses, by, names, animal);
/** The log with another cell in that row. */
const changed = (column: readonly unknown[][], row: number, cell: unknown) => column.with(row - 1, [cell]);

describe("a long table", () => {
  test("answers for each animal what its own rows answer, in a column or a row", () => {
    expect(trend(down(["Ash", "Birch"]))).toEqual([[alone("ash")], [alone("birch")]]);
    expect(trend([["Birch", "Ash"]])).toEqual([[alone("birch"), alone("ash")]]);
    expect(trend("Ash")).toEqual([[alone("ash")]]);
    expect(alone("ash")).not.toBe(alone("birch"));
  });

  test("may lie in rows, its names in a column", () =>
    expect(call(massTrend, [days.flat()], [masses.flat()], 7, names, "birch ")).toEqual([[alone("birch")]]));

  test("answers each animal for a cell of its own", () => {
    const ash = alone("ash") as number;
    expect(trend(down(["Ash", "Ash"]), down([7, 14]))).toEqual(down([ash, expect.closeTo(2 * ash, 9)]));
  });

  test.each<[string, unknown, unknown]>([
    [
      "a name that stands nowhere, with the nearest",
      "Brich",
      "#N/A animal holds 'Brich', which animals does not: the nearest is 'Birch'",
    ],
    ["a blank name", null, "#N/A animal is blank"],
    ["too few weighings", "Cedar", "#N/A masses holds 1 with a date: give three or more"],
    ["no name at all", true, "#VALUE! animal holds TRUE: give text"],
  ])("answers a word for %s, and spoils no other", (_, animal, answer) => {
    expect(trend(animal)).toEqual([[answer]]);
    expect(trend(down(["Ash", animal, "Birch"]))).toEqual(down([alone("ash"), answer, alone("birch")]));
  });

  test("what is wrong in one animal's rows is told with the row of the table, and spoils no other", () => {
    const refused = changed(masses, 9, "refused");
    expect(call(massTrend, days, refused, 7, names, down(["Ash", "Birch"]))).toEqual(
      down([alone("ash"), "#VALUE! row 9 of masses holds 'refused': give a number from 0.1 to 200000 g"]),
    );
    expect(call(massTrend, changed(days, 8, null), masses, 7, names, down(["Ash", "Birch"]))).toEqual(
      down(["#N/A row 8 of dates is blank", alone("birch")]),
    );
  });

  test("a row that belongs to nobody is told; a row that is blank throughout belongs to nobody", () => {
    expect(call(massTrend, days, masses, 7, changed(names, 5, " "), "Ash")).toEqual([
      ["#N/A row 5 of animals is blank"],
    ]);
    const blank = Array.from({ length: 50 }, () => [null]);
    expect(call(massTrend, [...days, ...blank], [...masses, ...blank], 7, [...names, ...blank], "Ash")).toEqual([
      [alone("ash")],
    ]);
  });

  test.each<[string, readonly unknown[], string]>([
    [
      "names without rows",
      [days, masses, 7, names.slice(1), "Ash"],
      "#VALUE! animals holds 8 cells and dates 9: give as many of each",
    ],
    [
      "a block of two columns",
      [days, down(masses.flat().map(() => 1)).map(() => [1, 2]), 7, names, "Ash"],
      "#VALUE! animals holds 9 cells and masses 18: give as many of each",
    ],
    ["an animal without its column", [days, masses, 7, null, "Ash"], "#N/A animals is blank"],
    [
      "an error among the names",
      [days, masses, 7, changed(names, 2, false), "Ash"],
      "#VALUE! row 2 of animals holds FALSE: give text",
    ],
    ["a column without an animal", [days, masses, 7, names], "#N/A animal is blank"],
  ])("%s", (_, given, answer) => expect(call(massTrend, ...given)).toEqual([[answer]]));

  test("numbers are names too", () =>
    expect(call(massTrend, days, masses, 7, down([1, 2, 1, 2, 3, 1, 2, 1, 2]), down([2, "1"]))).toEqual(
      down([alone("birch"), alone("ash")]),
    ));

  test("a pre-filled row without anything answers an empty cell", () =>
    expect(call(massTrend, down([null]), down([null]), 7, down([null]), null)).toEqual([[""]]));

  test("an animal whose masses are all blank says so", () =>
    expect(call(massTrend, days, changed(masses, 5, null), 7, names, "Cedar")).toEqual([
      ["#N/A masses is blank for Cedar"],
    ]));

  test("however the rows are mixed and the names are spelled, an animal is answered as by itself", () =>
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            day: fc.integer({ min: 46_000, max: 46_400 }),
            mass: fc.integer({ min: 100, max: 140 }),
            of: fc.nat(3),
            spelled: fc.nat(3),
          }),
          { minLength: 1, maxLength: 60 },
        ),
        (rows) => {
          const spell = (of: number, spelled: number) =>
            [`Kin ${of}`, `kin ${of}`, ` KIN ${of} `, `Kin ${of}\u00a0`][spelled] as string;
          const given = [down(rows.map(({ day }) => day)), down(rows.map(({ mass }) => mass)), 30];
          const kin = [...new Set(rows.map(({ of }) => of))];
          const answers = call(
            massTrend,
            ...given,
            down(rows.map(({ of, spelled }) => spell(of, spelled))),
            down(kin.map((of) => spell(of, 0))),
          );
          const each = kin.map((of) => {
            const own = rows.filter((row) => row.of === of);
            return callCell(massTrend, down(own.map(({ day }) => day)), down(own.map(({ mass }) => mass)), 30);
          });
          expect(answers).toEqual(down(each));
        },
      ),
    ));
});

describe("the functions that read a long table", () => {
  test("REFUSALS counts each animal's own", () =>
    expect(
      call(
        refusals,
        down(["refused", "taken", "no", "refused", "yes", "no"]),
        down(["Ash", "Birch", "Ash", "Birch", "Cedar", "Ash"]),
        down(["Ash", "Birch", "Cedar"]),
      ),
    ).toEqual(down([3, 1, 0])));

  test("REFUSALS tells the row of the table", () =>
    expect(callCell(refusals, down(["taken", "taken", "spat"]), down(["Ash", "Birch", "Birch"]), "Birch")).toMatch(
      /^#VALUE! row 3 of outcomes holds 'spat'/,
    ));

  test("NEXTMEAL goes on from the latest of each animal's meals, at its own interval", () => {
    const meals = down(["2026-06-01", "2026-06-12", "2026-06-08", null, "2026-06-05"]);
    const eaters = down(["Ash", "Birch", "Ash", "Birch", "Birch"]);
    expect(call(nextMeal, meals, down([7, 14]), null, eaters, down(["Ash", "Birch"]))).toEqual(
      call(nextMeal, down(["2026-06-08", "2026-06-12"]), down([7, 14])),
    );
    expect(callCell(nextMeal, down([null, null]), 7, null, down(["Ash", "Birch"]), "Ash")).toBe(
      "#N/A last is blank for Ash",
    );
    expect(callCell(nextMeal, down(["2026-06-01", "soon"]), 7, null, down(["Ash", "Birch"]), "Birch")).toMatch(
      /^#VALUE! row 2 of last holds 'soon'/,
    );
  });

  test("HATCHFORECAST reads each clutch from its own day", () => {
    const readings = down([26, 25, 26, 25, 26, 25]);
    const on = down(["2026-06-20", "2026-07-01", "2026-06-21", "2026-07-02", "2026-06-22", "2026-07-03"]);
    const highs = down([28, null, 32, 26, 27, 26]);
    const boxes = down(["A", "B", "A", "B", "A", "B"]);
    expect(
      call(
        hatchForecast,
        down(["2026-06-20", "2026-07-01"]),
        on,
        readings,
        60,
        null,
        null,
        highs,
        boxes,
        down(["A", "B"]),
      ),
    ).toEqual([
      call(
        hatchForecast,
        "2026-06-20",
        down(["2026-06-20", "2026-06-21", "2026-06-22"]),
        down([26, 26, 26]),
        60,
        null,
        null,
        down([28, 32, 27]),
      )[0],
      call(
        hatchForecast,
        "2026-07-01",
        down(["2026-07-01", "2026-07-02", "2026-07-03"]),
        down([25, 25, 25]),
        60,
        null,
        null,
        down([null, 26, 26]),
      )[0],
    ]);
  });

  test("LOSSTREND looks ahead for each animal from its own start", () => {
    const on = down([0, 0, 10, 10, 20, 20, 30, 30, 40, 40].map((day) => 46_350 + day));
    const both = down([320, 150, 318, 149, 316, 149, 315, 148, 313, 147]);
    const owners = down(["Ash", "Birch", "Ash", "Birch", "Ash", "Birch", "Ash", "Birch", "Ash", "Birch"]);
    const own = (from: number, start: number) =>
      call(
        lossTrend,
        on.filter((_, i) => i % 2 === from),
        both.filter((_, i) => i % 2 === from),
        46_430,
        start,
      )[0];
    expect(call(lossTrend, on, both, 46_430, down([325, 151]), owners, down(["ash", "birch"]))).toEqual([
      own(0, 325),
      own(1, 151),
    ]);
    expect(call(lossTrend, on, both, 46_430).flat()[0]).toMatch(/are these several animals\?/);
  });

  test("DAYTABLE answers for one sensor", () => {
    const times = down(["2026-11-02T08:00", "2026-11-02T08:00", "2026-11-02T20:00", "2026-11-02T20:00"]);
    const sensors = down(["warm end", "cool end", "warm end", "cool end"]);
    expect(call(dayTable, times, down([28, 18, "lost", 16]), null, null, sensors, "Cool end")).toEqual(
      call(dayTable, down(["2026-11-02T08:00", "2026-11-02T20:00"]), down([18, 16])),
    );
    expect(callCell(dayTable, times, down([28, 18, 26, 16]), null, null, sensors, down(["cool end", "warm end"]))).toBe(
      "#VALUE! sensor holds 2 by 1 cells: give one cell",
    );
  });
});

describe("figures that can hardly be one animal's", () => {
  const asked =
    /^#VALUE! masses holds 140 g and 310 g on 2026-04-01, and more such days: are these several animals\? Give animals and animal$/;
  const both = down(LOG.filter(([, mass]) => mass !== null).map(([day]) => day));
  const all = down(LOG.filter(([, mass]) => mass !== null).map(([, mass]) => mass));

  test("the same days far apart ask whether these are several animals", () =>
    expect(callCell(massTrend, both, all)).toMatch(asked));
  test("named rows are one animal's, whatever they hold", () =>
    expect(
      callCell(
        massTrend,
        both,
        all,
        7,
        both.map(() => ["Ash"]),
        "Ash",
      ),
    ).toEqual(expect.any(Number)));
  test.each<[string, readonly (readonly [day: string, mass: number])[]]>([
    [
      "a laying day, before and after",
      [
        ["2026-05-01", 300],
        ["2026-06-01", 310],
        ["2026-06-01", 195],
        ["2026-07-01", 210],
      ],
    ],
    [
      "a slip of the key once",
      [
        ["2026-05-01", 30],
        ["2026-05-01", 300],
        ["2026-06-01", 305],
        ["2026-07-01", 310],
      ],
    ],
    [
      "a meal",
      [
        ["2026-05-01", 100],
        ["2026-05-01", 149],
        ["2026-05-08", 100],
        ["2026-05-08", 150],
      ],
    ],
    [
      "two far days of many",
      [
        ["2026-05-01", 100],
        ["2026-05-01", 200],
        ["2026-05-08", 100],
        ["2026-05-08", 200],
        ["2026-05-09", 100],
        ["2026-05-10", 101],
        ["2026-05-11", 102],
        ["2026-05-12", 103],
        ["2026-05-13", 104],
      ],
    ],
  ])("%s is one animal's", (_, rows) =>
    expect(callCell(massTrend, down(rows.map(([day]) => day)), down(rows.map(([, mass]) => mass)))).toEqual(
      expect.any(Number),
    ),
  );
});
