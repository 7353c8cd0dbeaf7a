import fc from "fast-check";
import { serial, serialOfIso } from "../../../functions/dates";
import { dayTable } from "../../../functions/readings/dayTable";
import { call, callCell, down } from "../../call";
import { yardstick, type Pair } from "../../yardstick";
import { anyLog, anyMixedLog, grouped, seattle, worcester, type Log } from "./logs";

type Row = readonly [number, number, number, number, number, number, number, number, number];
const answer = ({ times, temperatures }: Log, longestGap?: number): readonly Row[] =>
  call(dayTable, down(times), down(temperatures), null, longestGap) as unknown as readonly Row[];
/** The days that are covered well enough to have a mean. */
const whole = (rows: readonly Row[]): readonly Row[] => rows.filter(([, , , , , mean]) => typeof mean === "number");

const at = (text: string): number => serialOfIso(text) as number;

/**
 * NOAA hourly normals, grouped by arquero and Seattle hourly normals, grouped by arquero: high, low and count must agree
 * exactly. Readings on the full hour, all there: the area under the lines differs from the plain mean by exactly the
 * half-weights of the two midnights, (T24 - T0)/48, worked out here from the readings. 1e-9 K for rounding.
 */
describe.each([
  ["NOAA hourly normals of Worcester", worcester],
  ["Seattle hourly normals", seattle],
] as const)("%s", (_, load) => {
  const log = load();
  const rows = answer(log);
  const days = grouped(log);
  const readingAt = new Map(log.times.map((time, i) => [Math.round(time * 24), log.temperatures[i] as number]));

  test("the same highs, lows and counts as an independent group-by", () => {
    expect(rows.length).toBe(365);
    expect(rows.map(([day, high, low, , , , readings]) => [day, high, low, readings])).toEqual(
      days.map(({ day, high, low, readings }) => [day, high, low, readings]),
    );
  });

  test("fluctuation and mid-point follow from high and low; nothing is skipped", () => {
    for (const [, high, low, fluctuation, mid, , , skipped] of rows) {
      expect([fluctuation, mid, skipped]).toEqual([high - low, (high + low) / 2, 0]);
    }
  });

  test("the mean is the group-by's, but for the half-weights of the two midnights", () => {
    let compared = 0;
    for (const [i, [day, , , , , mean]] of rows.entries()) {
      const [from, to] = [readingAt.get(day * 24), readingAt.get((day + 1) * 24)];
      if (from === undefined || to === undefined || days[i]?.readings !== 24) continue;
      expect(Math.abs(mean - (days[i].plainMean + (to - from) / 48))).toBeLessThan(1e-9);
      compared++;
    }
    expect(compared).toBeGreaterThan(350);
  });

  test("the means of all days, weighed by the hours they cover, are the area under the whole record", () => {
    let [area, hours] = [0, 0];
    for (let i = 1; i < log.times.length; i++) {
      const length = (log.times[i] as number) - (log.times[i - 1] as number);
      area += (((log.temperatures[i - 1] as number) + (log.temperatures[i] as number)) / 2) * length * 24;
      hours += length * 24;
    }
    // No time between two readings is over 180 minutes here, so every day but the first and last is covered whole.
    const covered = (day: number): number => {
      const [first, last] = [log.times[0] as number, log.times.at(-1) as number];
      return (Math.min(day + 1, last) - Math.max(day, first)) * 24;
    };
    const total = rows.reduce((sum, [day, , , , , mean]) => sum + mean * covered(day), 0);
    expect(Math.abs(total - area)).toBeLessThan(1e-5);
    expect(Math.abs(rows.reduce((sum, [day]) => sum + covered(day), 0) - hours)).toBeLessThan(1e-6);
  });
});

// High, low and readings of each day of two years of hours, by a group-by that knows nothing of this project. Exact.
yardstick(dayTable, { against: "NOAA hourly normals, grouped by arquero", within: 0, unit: "°C" }, () =>
  [worcester(), seattle()].flatMap((log): Pair[] => {
    const days = grouped(log);
    return answer(log).flatMap(([, high, low, , , , readings], i): Pair[] => [
      [high, days[i]?.high as number],
      [low, days[i]?.low as number],
      [readings, days[i]?.readings as number],
    ]);
  }),
);

/**
 * Mid-point less mean and less median of the same Seattle hourly normals, by month, as pandas 1.5.3 works them out from
 * plain hourly means; it counts the 23 hours of 1 January, which begins at 01:00. 0.01 K: in a month the half-weights of
 * the midnights cancel but for its two ends.
 */
const MID_LESS_MEAN = [
  0.3447346891, 0.3598214286, 0.3044354839, 0.2066666667, 0.1569892473, 0.1551388889, 0.1819892473, 0.3147849462,
  0.4268055556, 0.4662634409, 0.3152777778, 0.3322580645,
];
test("the mid-point stands above the true mean by as much as it is known to, month by month", () => {
  const rows = answer(seattle());
  for (const [month, wanted] of MID_LESS_MEAN.entries()) {
    const days = rows.filter(([day]) => day >= serial(2010, month + 1, 1) && day < serial(2010, month + 2, 1));
    const difference = days.reduce((sum, [, , , , mid, mean]) => sum + mid - mean, 0) / days.length;
    expect(Math.abs(difference - wanted)).toBeLessThan(0.01);
  }
});

describe("properties", () => {
  test("the order of the rows does not matter", () => {
    fc.assert(
      fc.property(anyMixedLog, ([log, mixed]) => expect(answer(mixed)).toEqual(answer(log))),
      { numRuns: 300 },
    );
  });

  test("a file that came in twice counts twice, and changes nothing else", () => {
    fc.assert(
      fc.property(anyLog, (log) => {
        const twice = answer({
          times: [...log.times, ...log.times],
          temperatures: [...log.temperatures, ...log.temperatures],
        });
        for (const [i, row] of answer(log).entries()) {
          const again = twice[i] as Row;
          expect(again.slice(0, 5)).toEqual(row.slice(0, 5));
          if (typeof row[5] === "number") expect(again[5]).toBeCloseTo(row[5], 9);
          else expect(again[5]).toBe("");
          expect(again[6]).toBe(2 * row[6]);
        }
      }),
    );
  });

  test("high, low and count are those of the group-by, whatever the times", () => {
    fc.assert(
      fc.property(anyLog, (log) => {
        expect(answer(log).map(([day, high, low, , , , readings]) => [day, high, low, readings])).toEqual(
          grouped(log).map(({ day, high, low, readings }) => [day, high, low, readings]),
        );
      }),
    );
  });

  test("a mean lies within the readings; a constant is its own mean", () => {
    fc.assert(
      fc.property(anyLog, (log) => {
        const least = Math.min(...log.temperatures);
        const most = Math.max(...log.temperatures);
        for (const [, , , , , mean] of whole(answer(log))) {
          expect(mean).toBeGreaterThanOrEqual(least - 1e-9);
          expect(mean).toBeLessThanOrEqual(most + 1e-9);
        }
        for (const [, , , , , mean] of whole(answer({ ...log, temperatures: log.times.map(() => 21.5) }, 1440))) {
          expect(mean).toBeCloseTo(21.5, 9);
        }
      }),
    );
  });

  test("a reading added on the straight line between two others changes no mean", () => {
    const times = Array.from({ length: 49 }, (_, i) => 46_000 + i / 24);
    const temperatures = times.map((_, i) => ((i * 7919) % 130) / 10);
    const middle = times.slice(1).map((time, i) => (time + (times[i] as number)) / 2);
    const half = temperatures.slice(1).map((one, i) => (one + (temperatures[i] as number)) / 2);
    const before = answer({ times, temperatures });
    const after = answer({ times: [...times, ...middle], temperatures: [...temperatures, ...half] });
    expect(whole(before).length).toBe(2);
    for (const [i, row] of whole(before).entries()) expect(row[5]).toBeCloseTo((after[i] as Row)[5], 9);
  });

  test("every row is counted once: read, skipped, or beside no time", () => {
    const cell = fc.constantFrom<unknown>(20.5, 18, null, "", "lost", "21.5", true);
    const time = fc.constantFrom<unknown>(46_000.25, 46_001.5, "2026-11-02T08:00", null, "noon");
    fc.assert(
      fc.property(fc.array(fc.tuple(time, cell), { minLength: 1, maxLength: 40 }), (rows) => {
        const counts = call(dayTable, down(rows.map(([one]) => one)), down(rows.map(([, one]) => one)));
        const isTime = (one: unknown): boolean => typeof one === "number" || String(one).startsWith("2026");
        const isFigure = (one: unknown): boolean => typeof one === "number" || one === "21.5";
        const wanted = rows.filter(([one, two]) => isTime(one) || isFigure(two)).length;
        fc.pre(rows.some(([one, two]) => isTime(one) && isFigure(two)));
        expect(counts.reduce((sum, row) => sum + Number(row[6]) + Number(row[7]), 0)).toBe(wanted);
      }),
    );
  });
});

describe("gaps", () => {
  const hourly = (from: number, hours: readonly number[]): number[] => hours.map((hour) => from + hour / 24);

  test("a gap is not bridged: only what is covered counts", () => {
    // 0:00 to 11:00 at 10 °C, then silence to 15:00, then 20 °C up to midnight: eleven hours and nine.
    const times = hourly(
      46_000,
      Array.from({ length: 25 }, (_, hour) => hour).filter((hour) => hour <= 11 || hour >= 15),
    );
    const temperatures = times.map((time) => (time < 46_000.5 ? 10 : 20));
    const [row] = answer({ times, temperatures });
    expect(row?.[5]).toBeCloseTo((11 * 10 + 9 * 20) / 20, 9);
    expect(row?.[8]).toBeCloseTo(20, 9);
  });

  test("180 minutes are joined, 181 are not", () => {
    // Each quarter of an hour, but for one silence that begins at 06:00.
    const row = (gap: number, longestGap?: number): Row =>
      answer(
        (() => {
          const minutes = Array.from({ length: 97 }, (_, i) => 15 * i).filter((one) => one <= 360 || one >= 360 + gap);
          const withEnd = minutes.includes(360 + gap) ? minutes : [...minutes, 360 + gap].sort((a, b) => a - b);
          return {
            times: withEnd.map((minute) => 46_000 + minute / 1440),
            temperatures: withEnd.map((minute) => (minute > 360 ? 30 : 10)),
          };
        })(),
        longestGap,
      )[0] as Row;
    expect(row(180)[5]).toBeCloseTo((360 * 10 + 180 * 20 + 900 * 30) / 1440, 6);
    expect(row(180)[8]).toBeCloseTo(24, 6);
    expect(row(181)[5]).toBeCloseTo((360 * 10 + 899 * 30) / 1259, 6);
    expect(row(181)[8]).toBeCloseTo(24 - 181 / 60, 6);
    expect(row(181, 181)[5]).toBeCloseTo((360 * 10 + 181 * 20 + 899 * 30) / 1440, 6);
  });

  test("a line over midnight is cut at midnight", () => {
    // 23:00 at 10 °C and 01:00 at 20 °C meet at 15 °C; the lines before and after are level.
    const times = hourly(
      46_000,
      Array.from({ length: 49 }, (_, hour) => hour).filter((hour) => hour !== 24),
    );
    const temperatures = times.map((time) => (time < 46_001 ? 10 : 20));
    const [first, second] = answer({ times, temperatures });
    expect(first?.[5]).toBeCloseTo((23 * 10 + 12.5) / 24, 9);
    expect(second?.[5]).toBeCloseTo((17.5 + 23 * 20) / 24, 9);
  });
});

describe("a day that is not covered for 20 hours has no mean", () => {
  const of = (minutes: readonly number[], temperatures: readonly number[], longestGap?: number): Row =>
    answer({ times: minutes.map((minute) => 46_000 + minute / 1440), temperatures }, longestGap)[0] as Row;

  test("eight readings in seventy minutes, which answered 12.5 °C as if it were the day's", () => {
    expect(of([0, 10, 20, 30, 40, 50, 60, 70], [10, 11, 12, 13, 14, 15, 14, 10])).toEqual([
      46_000,
      15,
      10,
      "",
      "",
      "",
      8,
      0,
      expect.closeTo(70 / 60, 6),
    ]);
  });

  test("20 hours are enough, a minute less is not; what was read stays", () => {
    const quarters = Array.from({ length: 81 }, (_, i) => 15 * i);
    expect(of(quarters, Array<number>(81).fill(20))[5]).toBeCloseTo(20, 9);
    const row = of([1, ...quarters.slice(1)], [35, ...Array<number>(80).fill(20)]);
    expect(row.slice(1, 6)).toEqual([35, 20, "", "", ""]);
    expect(row[8]).toBeCloseTo(20 - 1 / 60, 6);
  });

  test("readings further apart count where the keeper says that they are joined", () => {
    const six = [0, 240, 480, 720, 960, 1200, 1440];
    const temperatures = [16, 15, 18, 25, 22, 19, 16];
    expect(of(six, temperatures)[5]).toBe("");
    expect(of(six, temperatures, 240)[5]).toBeCloseTo((16 + 15 + 18 + 25 + 22 + 19) / 6, 9);
    expect(of([720, 2160, 3600], [10, 20, 12], 1440).slice(3, 6)).toEqual(["", "", ""]); // from noon on: 12 hours
    const days = answer({ times: [46_000.5, 46_001.5, 46_002.5], temperatures: [10, 20, 12] }, 1440);
    expect(days.map((row) => row[8])).toEqual([12, 24, 12]);
    expect(days[1]?.[5]).toBeCloseTo((15 + 20 + 20 + 16) / 4, 9);
  });

  test("one reading alone", () => {
    expect(call(dayTable, at("2026-11-02T08:00"), 21)).toEqual([[at("2026-11-02"), 21, 21, "", "", "", 1, 0, 0]]);
  });
});

describe("cells that cannot be read", () => {
  const day = at("2026-11-02");
  const threeHours: unknown = expect.closeTo(3, 6);
  const times = ["2026-11-02T08:00", "2026-11-02T09:00", "2026-11-02T10:00", "2026-11-02T11:00"];

  test("are skipped and counted, and never read as 0", () => {
    expect(call(dayTable, down(times), down([20, null, "lost", 22]))).toEqual([
      [day, 22, 20, "", "", "", 2, 2, threeHours],
    ]);
  });

  test("what a logger writes for a lost probe is out of limits, and skipped", () => {
    expect(call(dayTable, down(times), down([20, -127, 999, 22]))).toEqual([
      [day, 22, 20, "", "", "", 2, 2, threeHours],
    ]);
  });

  test("a day without any reading still has its row", () => {
    expect(call(dayTable, down([...times, "2026-11-03T08:00"]), down([20, 20, 20, 20, ""]))).toEqual([
      [day, 20, 20, "", "", "", 4, 0, threeHours],
      [day + 1, "", "", "", "", "", 0, 1, 0],
    ]);
  });

  test("temperatures beside no time come last, counted", () => {
    expect(call(dayTable, down([...times, "noon", null]), down([20, 20, 20, 20, 31, 32]))).toEqual([
      [day, 20, 20, "", "", "", 4, 0, threeHours],
      ["no time", "", "", "", "", "", 0, 2, 0],
    ]);
  });

  test("a heading and the blank rows below a log are passed over", () => {
    const rows = call(dayTable, down(["Time", ...times, null, ""]), down(["Temperature", 20, 20, 20, 20, null, ""]));
    expect(rows).toEqual([[day, 20, 20, "", "", "", 4, 0, threeHours]]);
  });

  test("nothing that can be read at all", () => {
    expect(callCell(dayTable, down(["a", "b"]), down([1, 2]))).toBe(
      "#VALUE! times holds no date and time that can be read",
    );
    expect(callCell(dayTable, down(times), down(["a", "b", "c", "d"]))).toBe(
      "#VALUE! temperatures holds no number that can be read beside a time",
    );
  });

  test("columns of different lengths, and blocks", () => {
    expect(callCell(dayTable, down(times), down([20, 21]))).toBe(
      "#VALUE! times holds 4 cells and temperatures 2: give as many of each",
    );
    expect(
      callCell(
        dayTable,
        [
          [1, 2],
          [3, 4],
        ],
        down([20, 21]),
      ),
    ).toBe("#VALUE! times holds 2 by 2 cells: give one row or one column");
  });
});

test("two readings of one moment: the lower comes first, whichever row it stands in", () => {
  const hours = Array.from({ length: 25 }, (_, hour) => hour).filter((hour) => hour !== 4);
  const times = [...hours.slice(0, 3), 3, ...hours.slice(3)].map((hour) => 46_000 + hour / 24);
  const of = (wild: number): readonly Row[] =>
    answer({ times, temperatures: times.map((_, i) => (i === wild ? 30 : 10)) });
  expect(of(3)).toEqual(of(4));
  // From 30 °C at 03:00 down to 10 at 05:00: two hours at 20.
  expect(of(4)[0]?.[5]).toBeCloseTo((22 * 10 + 2 * 20) / 24, 9);
});

test("a line that ends within the half second before midnight ends there", () => {
  const seconds = [...Array.from({ length: 24 }, (_, hour) => hour * 3600), 86_399.1, 86_399.6, 86_400 + 3600];
  const times = seconds.map((second) => 46_000 + second / 86_400);
  const [first, second] = answer({ times, temperatures: times.map((_, i) => (i === 25 ? 100 : 20)) });
  expect([first?.[6], second?.[6]]).toEqual([25, 2]);
  // 0.5 s of the day lie on the steep line, whose mean is 60 °C. Six digits: a time is kept to about a microsecond.
  expect(first?.[5]).toBeCloseTo((86_399.1 * 20 + 0.5 * 60) / 86_399.6, 6);
});

test("half a second before midnight is midnight, for what is read and for what is skipped", () => {
  const late = 46_001 - 0.5 / 86_400;
  const rows = call(dayTable, down([46_000.5, late, late, late - 1e-7]), down([20, 21, null, null]));
  expect(rows.map((row) => [row[0], row[6], row[7]])).toEqual([
    [46_000, 1, 1],
    [46_001, 1, 1],
  ]);
});

test("times that were worked out from one another belong to the minute that they mean", () => {
  // A minute is no finite binary fraction: adding it up arrives just short of midnight on most days.
  const times = [46_000];
  for (let i = 1; i < 1440 * 30; i++) times.push((times[i - 1] as number) + 1 / 1440);
  const rows = answer({ times, temperatures: times.map(() => 20) });
  expect(rows.map((row) => row[6])).toEqual(Array.from({ length: 30 }, () => 1440));
});

test("a year of minutes: every reading is there", () => {
  const year = (minutes: number): Log => {
    const times = Array.from({ length: minutes }, (_, i) => 46_000 + i / 1440);
    return { times, temperatures: times.map((_, i) => 20 + 5 * Math.sin((i / 1440) * 2 * Math.PI)) };
  };
  const rows = answer(year(525_600));
  expect(rows.length).toBe(365);
  expect(rows.every((row) => row[6] === 1440)).toBe(true);
  // The mean of whole turns of a sine is 0; the area under chords of a minute misses it by less than 1e-5.
  expect(rows.slice(0, -1).every((row) => Math.abs(row[5] - 20) < 1e-5)).toBe(true);
});

test("imperial: temperatures as temperatures, the fluctuation as a difference", () => {
  const [row] = call(
    dayTable,
    down(["2026-11-02", "2026-11-02T12:00", "2026-11-03"]),
    down([68, 50, 68]),
    "imperial",
    720,
  );
  expect(row).toEqual([at("2026-11-02"), 68, 50, expect.closeTo(18, 9), 59, 59, 2, 0, 24]);
});
