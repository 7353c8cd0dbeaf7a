import { serial } from "../../../functions/dates";
import { NOTHING } from "../../../functions/rules/rule";
import { winterLogRules, type Measure } from "../../../functions/rules/winterLog";
import { boxAir } from "../../../functions/winter/boxAir";
import { metabolicLoss } from "../../../functions/winter/metabolicLoss";
import { winterSigns } from "../../../functions/winter/winterSigns";
import { call, down } from "../../call";
import { bothSides } from "../rules/bothSides";

const DAY = serial(2026, 11, 16);

/** A log of a sound animal, weekly for seven weeks, and what a case changes of it. */
interface Log {
  days: number[];
  temperatures: (number | null)[];
  masses: (number | null)[];
  humidity: (number | null)[] | null;
  opened: (string | null)[] | null;
  start: number | null;
  tooCold: number | null;
  tooWarm: number | null;
  agreed: number | null;
  litres: number | "vented" | null;
  end: number | null;
}
const days = [0, 7, 14, 21, 28, 35, 42, 49];
const every = <T>(value: T): T[] => days.map(() => value);
const sound: Log = {
  days,
  temperatures: every(8),
  masses: every(306),
  humidity: every(80),
  opened: every("yes"),
  start: 306,
  tooCold: -20,
  tooWarm: 40,
  agreed: 0.05,
  litres: 60,
  end: null,
};
type Line = readonly [date: number | string, level: string, words: string];
const signs = (changes: Partial<Log>, units = "metric"): Line[] => {
  const log = { ...sound, ...changes };
  const cut = (list: readonly unknown[] | null) => list && down(list.slice(0, log.days.length));
  return call(
    winterSigns,
    down(log.days.map((day) => DAY + day)),
    cut(log.temperatures),
    cut(log.masses),
    log.start,
    log.tooCold,
    log.tooWarm,
    log.agreed,
    cut(log.humidity),
    cut(log.opened),
    log.litres,
    182,
    units,
    log.end,
  ) as unknown as Line[];
};
const words = (lines: readonly Line[]): string => lines.map((line) => line[2]).join(" ");
/** The sound log with one figure of one row changed. */
const row = (value: number, base: number): number[] => days.map((_, i) => (i === 3 ? value : base));
/** Hours that a litre of air lasts a 306 g animal at the soonest at 8 °C, asked of BOXAIR. */
const perLitre = (call(boxAir, 306, 8, 60, 182)[0]?.[0] as number) / (60 - 0.306);

const at: Record<Measure, (value: number) => Partial<Log>> = {
  coldest: (value) => ({ temperatures: row(value, 8) }),
  tooCold: (value) => ({ temperatures: row(value, 8), tooCold: 5 }),
  tooWarm: (value) => ({ temperatures: row(value, 8), tooWarm: 9 }),
  lost: (value) => ({ masses: row(306 * (1 - value / 100), 306) }),
  unagreed: (value) => ({ masses: row(306 * (1 - value / 100), 306), agreed: null }),
  agreed: (value) => ({ agreed: value / 100 }),
  // Half of it lost after seven weeks, all of it after fourteen.
  heading: (value) => ({ masses: days.map((day) => 306 * (1 - (value / 100) * (day / 98))), end: DAY + 98 }),
  pace: (value) => ({ masses: days.map((day) => 306 * (1 - (value / 100) * (day / 30))) }),
  gain: (value) => ({ masses: days.map((_, i) => (i < 3 ? 306 : 306 * (1 + value / 100))) }),
  unweighed: (value) => ({ days: [0, 7, 7 + value] }),
  weighings: (value) => ({ days: days.slice(0, value) }),
  shut: (value) => ({ litres: 0.306 + (7 * 24) / value / perLitre }),
  dry: (value) => ({ humidity: row(value, 80) }),
  wet: (value) => ({ humidity: row(value, 80) }),
};
const own: Partial<Record<Measure, number>> = { tooCold: 5, tooWarm: 9, lost: 5, heading: 5 };

// common practice, no source, but for the keeper's own limits
bothSides({
  rules: winterLogRules,
  agreed: [
    ["coldest", "under", 2, "stop"],
    ["tooCold", "under", "own", "stop"],
    ["lost", "over", "own", "stop"],
    ["unagreed", "over", 10, "stop"],
    ["shut", "over", 3, "stop"],
    ["tooWarm", "over", "own", "care"],
    ["heading", "over", "own", "care"],
    ["agreed", "over", 10, "care"],
    ["pace", "over", 1, "care"],
    ["gain", "over", 2, "care"],
    ["unweighed", "over", 14, "care"],
    ["shut", "over", 1, "care"],
    ["dry", "under", 60, "care"],
    ["wet", "over", 95, "care"],
    ["weighings", "under", 3, "note"],
  ],
  ask: (of, limit, nudge) =>
    signs(at[of]((limit === "own" ? (own[of] as number) : limit) + nudge)).map(([, level, said]) => [level, said]),
  step: (of) => (["unweighed", "weighings"].includes(of) ? 1 : 0.01),
});

test("a sound animal: nothing stands out", () => expect(signs({})).toEqual([["", "note", NOTHING]]));

test("every blank is told, and none is taken for fine", () => {
  const blank = signs({ tooCold: null, tooWarm: null, agreed: null, humidity: null, litres: null });
  expect(blank.map(([, level]) => level)).toEqual(["care", "note", "note", "note", "note"]);
  for (const missing of ["No loss agreed", "Too cold", "Too warm", "Air in the box", "Humidity"]) {
    expect(words(blank)).toContain(missing);
  }
  expect(blank[0]?.[2]).toMatch(/^No loss agreed with your vet.*a loss kills silently/);
  const unread = signs({ temperatures: every(null), masses: every(null) });
  expect(words(unread)).toMatch(/No box temperature.*No weighing in the log/);
  expect(unread.every(([, level]) => level !== "stop")).toBe(true);
});

test("a loss of 11.8 % without an agreed loss is a stop, and the blank is told beside it", () => {
  const lines = signs({ masses: row(270, 306), agreed: null });
  expect(lines[0]).toEqual([DAY + 21, "stop", expect.stringMatching(/^Lost 11\.76 %: tortoises are woken at 10 %/)]);
  expect(words(lines)).toContain("No loss agreed with your vet");
});

test("the loss is of the mass into the cold, not of the first weighing; without it, of the first weighing", () => {
  const masses = every(302);
  expect(words(signs({ masses, start: 320 }))).toMatch(/Lost 5\.63 %, more than the 5 % agreed/);
  expect(words(signs({ masses, start: null }))).toBe(NOTHING);
});

test("no forecast is told below what is lost: past the agreed loss the loss itself is told, and not that it is coming", () => {
  const steep = days.map((day) => 306 * (1 - (0.08 * day) / 98));
  expect(words(signs({ masses: steep, end: DAY + 98 }))).toMatch(/Heading for a loss of 8 %, past the 5 % agreed/);
  // One great loss, then a flat trend that would forecast less.
  const flat = signs({ masses: days.map((_, i) => (i === 0 ? 306 : 288)) });
  expect(words(flat)).toMatch(/Lost 5\.88 %/);
  expect(words(flat)).not.toContain("Heading");
  // An end that is past is no forecast of the past.
  expect(signs({ masses: steep, end: DAY })).toEqual(signs({ masses: steep, end: DAY + 49 }));
});

test("a fast loss is told as water where quiet metabolism cannot explain half of it", () => {
  const lines = signs({ masses: days.map((day) => 306 * (1 - (0.0125 * day) / 30)) });
  expect(words(lines)).toMatch(
    /^Losing 1\.25 % in 30 days, of which quiet metabolism explains 0\.\d+ % at the most: mostly water, look at humidity/,
  );
  const unread = signs({ temperatures: every(null), masses: days.map((day) => 306 * (1 - (0.0125 * day) / 30)) });
  expect(words(unread)).toMatch(/Losing 1\.25 % in 30 days \(common/);
  // A hatchling in a warm box burns as much: no word of water.
  const small = days.map((day) => 6 * (1 - (0.0125 * day) / 30));
  expect(words(signs({ masses: small, start: 6, temperatures: every(12), litres: 5 }))).not.toContain("mostly water");
});

test("a two-litre box that lasts a day is told when a week passes, with days of weighing as openings", () => {
  const weekly = signs({ litres: 2, opened: null });
  expect(weekly[0]?.slice(0, 2)).toEqual([DAY + 7, "stop"]);
  expect(weekly[0]?.[2]).toMatch(/^Shut from 2026-11-16 to 2026-11-23, 168 h, where the air may last only \d+ h: open/);
  const unopened = signs({ litres: 60, opened: every(null), masses: days.map((_, i) => (i === 0 ? 306 : null)) });
  expect(words(unopened)).toMatch(/Shut from 2026-11-16 to 2027-01-04/);
  expect(signs({ litres: 0.2 })).toEqual([
    ["#VALUE! litres holds 0.2 l and the animal fills 0.31 l: give the inside of the box"],
  ]);
});

test("the air of a vented box is not judged, and nothing else is left out", () => {
  const closed = { opened: every(null), masses: every(null), temperatures: row(3, 8), tooCold: 4 };
  expect(words(signs({ ...closed, litres: 2 }))).toMatch(/Shut from/);
  expect(words(signs({ ...closed, litres: null }))).toMatch(/Air in the box is not judged/);
  const vented = words(signs({ ...closed, litres: "vented" }));
  expect(vented).not.toMatch(/Shut from|Air in the box/);
  expect(vented).toMatch(/Box at 3 °C: too cold/);
  expect(words(signs({ litres: "vented" }))).toBe(NOTHING);
});

test("rows in any order, blank rows left out, a figure without a date refused", () => {
  const shuffled = [...days].reverse();
  const temperatures = days.map((day) => (day === 14 ? 3 : 8));
  const back = signs({ days: shuffled, temperatures: [...temperatures].reverse(), tooCold: 4 });
  expect(back).toEqual(signs({ temperatures, tooCold: 4 }));
  expect(back[0]?.[0]).toBe(DAY + 14);
  const dates = down([DAY, null, DAY + 7]);
  expect(call(winterSigns, dates, down([8, null, 8]), down([306, null, 306]))[0]?.[1]).toBe("care");
  expect(call(winterSigns, dates, down([8, 3, 8]))).toEqual([["#N/A row 2 of dates is blank"]]);
  expect(call(winterSigns, dates, down([8, 8]))).toEqual([
    ["#VALUE! dates holds 3 cells and temperatures 2: give as many of each"],
  ]);
});

test("in °F and oz the same signs, and no word in °C", () => {
  const masses = every(306 / 28.349523125);
  const lines = call(
    winterSigns,
    down(days.map((day) => DAY + day)),
    down(row(34, 46.4)),
    down(masses),
    306 / 28.349523125,
    39.2,
    50,
    0.05,
    down(every(80)),
    down(every("yes")),
    60,
    597,
    "imperial",
  ) as unknown as Line[];
  expect(lines.map(([, level]) => level)).toEqual(["stop", "stop"]);
  expect(words(lines)).toMatch(/Box at 34 °F: below 35\.6 °F.*too cold below 39\.2 °F/);
  expect(words(lines)).not.toContain("°C");
});

describe("each sign by itself", () => {
  const lineOf = (changes: Partial<Log>, sought: RegExp): Line | undefined =>
    signs(changes).find(([, , text]) => sought.test(text));

  test("without a mass into the cold the first weighing stands for it, not a later one", () => {
    const masses = [null, 300, 290, 290, 290, 290, 290, 290];
    expect(lineOf({ start: null, masses, agreed: 0.01 }, /^Lost/)?.[2]).toMatch(/^Lost 3\.33 %/);
    expect(lineOf({ start: 310, masses, agreed: 0.01 }, /^Lost/)?.[2]).toMatch(/^Lost 6\.45 %/);
  });

  test("a gain is from the lowest weighing so far, on the day of the highest", () => {
    const masses = [300, 303, 297, 309, 306, null, null, 306];
    expect(lineOf({ start: 300, masses }, /^Gained/)).toEqual([
      DAY + 21,
      "care",
      expect.stringMatching(/^Gained 4 % /),
    ]);
    const fromFirst = [300, 309, 309, 309, 309, 309, 309, 309];
    expect(lineOf({ start: 300, masses: fromFirst }, /^Gained/)).toEqual([
      DAY + 7,
      "care",
      expect.stringMatching(/^Gained 3 % /),
    ]);
  });

  test("a mass into the cold that was typed too low hides no loss", () => {
    const masses = [306, 305, 304, 300, 296, 292, 288, 284];
    expect(lineOf({ start: 30.6, masses }, /^Gained/)).toEqual([
      DAY,
      "care",
      expect.stringMatching(/^Gained 900 % in the cold: .* a mass mistyped\?/),
    ]);
    expect(lineOf({ start: 310, masses }, /^Gained/)).toBeUndefined();
  });

  test("weighings are missed before the first, between two, and after the last, told on the day that ends it", () => {
    const only = (...on: number[]) => days.map((_, i) => (on.includes(i) ? 306 : null));
    expect(lineOf({ masses: only(3, 4, 5, 6, 7) }, /without a weighing/)?.[0]).toBe(DAY + 21);
    expect(lineOf({ masses: only(0, 1, 4, 5, 6, 7) }, /without a weighing/)?.[0]).toBe(DAY + 28);
    expect(lineOf({ masses: only(0, 1, 2, 3, 4) }, /without a weighing/)?.[0]).toBe(DAY + 49);
    expect(lineOf({ masses: only(0, 2, 4, 6) }, /without a weighing/)).toBeUndefined();
  });

  test("where the loss is heading is told from three weighings on", () => {
    const three = [306, 303, 300, null, null, null, null, null];
    const two = [306, 303, null, null, null, null, null, null];
    expect(lineOf({ masses: three, end: DAY + 98 }, /^Heading/)).toBeDefined();
    expect(lineOf({ masses: two, end: DAY + 98 }, /^Heading/)).toBeUndefined();
  });

  test("the last of several equal extremes is the day that is told", () => {
    expect(lineOf({ temperatures: [8, 3, 8, 3, 8, 8, 8, 8], tooCold: 4 }, /too cold/)?.[0]).toBe(DAY + 21);
    expect(lineOf({ temperatures: [8, 13, 8, 13, 8, 8, 8, 8], tooWarm: 12 }, /too warm/)?.[0]).toBe(DAY + 21);
    expect(lineOf({ humidity: [80, 50, 80, 50, 80, 80, 80, 80] }, /^Humidity/)?.[0]).toBe(DAY + 21);
    expect(lineOf({ humidity: [80, 97, 80, 97, 80, 80, 80, 80] }, /^Humidity/)?.[0]).toBe(DAY + 21);
  });

  test("a log of one row, weighed: how often it was weighed is told, and nothing is missing", () =>
    expect(signs({ days: [0] })).toEqual([
      [DAY, "note", expect.stringMatching(/^Weighings so far: 1\. .* from 3 on/)],
    ]));

  test("a pace is told from 21 days between the first and the last weighing on", () => {
    const losing = [306, null, 303, null, null, null, null, null];
    const over = (last: number) => lineOf({ days: [0, 1, 7, last], masses: [...losing.slice(0, 3), 299] }, /^Losing/);
    expect(over(20)).toBeUndefined();
    expect(over(21)).toBeDefined();
  });

  test("a pace is held against what the quiet animal burns at the mean of the temperatures that were read", () => {
    const temperatures = [6, 7, 8, 9, null, 10, 11, 12];
    const masses = days.map((day) => 306 * (1 - (0.0125 * day) / 30));
    const burnt = (call(metabolicLoss, 306, 9, 30)[0] as number[])[2] as number;
    expect(lineOf({ temperatures, masses }, /^Losing/)?.[2]).toContain(
      ` explains ${Number((100 * burnt).toFixed(2))} % at the most`,
    );
  });

  test("shares count to a millionth of a per cent, and shut hours to a millionth of what the air lasts", () => {
    const lost = (percent: number) =>
      lineOf({ masses: row(306 * (1 - percent / 100), 306), agreed: null }, /^Lost/)?.[2];
    expect([lost(10.0000004), lost(10.000004)]).toEqual([undefined, expect.stringMatching(/^Lost 10\.000004 %/)]);
    const shut = (times: number) => lineOf({ litres: 0.306 + (7 * 24) / times / perLitre }, /^Shut/)?.[2];
    expect([shut(1.0000004), shut(1.000004)]).toEqual([undefined, expect.any(String)]);
  });

  test("a loss is no gain, and where it heads for is never more than the whole", () => {
    const losing = days.map((_, i) => (i === 0 ? 306 : 297));
    expect(lineOf({ masses: losing, agreed: null }, /^Lost/)).toBeUndefined();
    expect(lineOf({ masses: losing }, /^Gained/)).toBeUndefined();
    const steep = days.map((day) => 306 - day / 4);
    expect(lineOf({ masses: steep, end: DAY + 2000 }, /^Heading/)?.[2]).toMatch(/^Heading for a loss of 100 %/);
  });

  test("the first day of the log counts as an opening, and none before it", () => {
    const shut = { litres: 60, opened: every(null), masses: every(null), temperatures: every(8) };
    expect(lineOf(shut, /^Shut/)?.[2]).toMatch(/^Shut from 2026-11-16 to 2027-01-04, 1176 h/);
  });
});
