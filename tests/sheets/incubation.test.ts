import { incubation } from "../../taskpane/sheets/incubation";
import { filled, freeRow, rows } from "./fill";

jest.setTimeout(30_000);

const clutch = {
  "own.days": 60,
  "own.temperature": 26,
  "chosen.clutch": "Mine",
  ...rows("clutches", 1, [{ clutch: "Mine", laid: "2026-06-01", eggs: 8, held: 28 }]),
};

test("eggs held at another temperature take days in proportion to the warmth above the threshold, and so does the range", async () => {
  const reading = await filled(incubation, clutch, { cleared: true });
  // By definition: 60 (26 - 14) / (28 - 14) = 51.43; 55 and 65 times 12/14 are 47 and 56 days.
  expect(reading.of("clutches.days[1]")).toBeCloseTo(720 / 14, 9);
  expect(["expected", "soonest", "latest"].map((one) => reading.of(`clutches.${one}[1]`))).toEqual([
    "2026-07-22",
    "2026-07-18",
    "2026-07-27",
  ]);
});

test("ten days at 26 °C are a sixth, and the forecast is the sixtieth day", async () => {
  const days = Array.from({ length: 10 }, (_, i) => `2026-06-${String(i + 1).padStart(2, "0")}`);
  const reading = await filled(
    incubation,
    {
      ...clutch,
      ...rows(
        "log",
        1,
        days.map((on) => ({ on, high: 26.5, low: 25.5 })),
      ),
    },
    { cleared: true },
  );
  expect(reading.of("chosen.developed")).toBeCloseTo(1 / 6, 9);
  expect(reading.of("chosen.hatching")).toBe("2026-07-31");
  expect(reading.of("log.warmth[1]")).toBeCloseTo(12, 9);
});

test("a high over 31 °C and a low under 23 °C are flagged in words, though the middle is right", async () => {
  const free = freeRow(incubation, "log");
  const reading = await filled(
    incubation,
    rows("log", free, [
      { on: "2026-08-08", high: 31.1, low: 25 },
      { on: "2026-08-09", high: 26, low: 22.9 },
    ]),
  );
  expect([-1, 0, 1].map((i) => reading.of(`log.standsOut[${free + i}]`))).toEqual([
    "",
    "Over 31 °C: look at the incubator",
    "Under 23 °C: look at the incubator",
  ]);
});

test("a clutch that is not in the table is said so, and nothing is forecast from other eggs' readings", async () => {
  const reading = await filled(incubation, { "chosen.clutch": "Heather 2026" });
  expect(reading.of("chosen.laid")).toBe("not in the table");
  expect(reading.of("chosen.hatching")).toMatch(/^#/);
});

test("a peak that the middle of the day hides takes the date, and the sheet says why", async () => {
  const days = Array.from({ length: 10 }, (_, i) => `2026-06-${String(i + 1).padStart(2, "0")}`);
  const log = days.map((on, i) => ({ on, high: i === 3 ? 34.4 : 26.5, low: i === 3 ? 22 : 25.5 }));
  const reading = await filled(incubation, { ...clutch, ...rows("log", 1, log) }, { cleared: true });
  expect(reading.of("log.mid[4]")).toBeCloseTo(28.2, 9);
  expect(reading.of("chosen.hottest")).toBe(34.4);
  expect(reading.of("chosen.hatching")).toMatch(/^#/);
  expect(reading.of("summary.said")).toBe(
    "Mine: 34.4 °C were reached. Above 34 °C eggs may be dead: no date. Ask a reptile vet, never open an egg.",
  );
});

test("what eggs take badly is said of the day it was read, a deadly heat before all else, and drawn between its limits", async () => {
  const free = freeRow(incubation, "log");
  const days = [
    { high: 34.1, low: 26 },
    { high: 34, low: 26 },
    { high: 31, low: 23 },
    { high: 26, low: 22.9 },
  ].map((one, i) => ({ on: `2026-08-0${6 + i}`, ...one }));
  const half = [
    { on: "2026-08-10", high: 34.1, low: null },
    { on: null, high: 32, low: null },
    { on: "2026-08-12", high: null, low: 22.9 },
    { on: "2026-08-13", high: 27, low: null },
  ];
  const reading = await filled(incubation, { ...rows("log", free, days), ...rows("log", free + 6, half) });
  expect(reading.column("log.standsOut").slice(free - 1, free + 3)).toEqual([
    "Deadly over 34 °C: ask a reptile vet",
    "Over 31 °C: look at the incubator",
    "",
    "Under 23 °C: look at the incubator",
  ]);
  // A reading that is not whole makes no mean; what it shows is said all the same.
  expect(reading.column("log.standsOut").slice(free + 3, free + 10)).toEqual([
    "",
    "",
    "Deadly over 34 °C: ask a reptile vet",
    "Over 31 °C: look at the incubator",
    "Under 23 °C: look at the incubator",
    "Not counted: day, high or low is blank",
    "",
  ]);
  expect(reading.of("temperatures.said")).toMatch(/22\.9 to 34\.1 °C\. Above 31 °C: 5 of them; below 23 °C: 2\.$/);
  expect([reading.of(`log.least[${free}]`), reading.of(`log.most[${free}]`)]).toEqual([23, 31]);
  expect(reading.of(`log.most[${free + 4}]`)).toBe("");
});
