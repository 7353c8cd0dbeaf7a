import fc from "fast-check";
import { isoOf, serialOfIso } from "../../../functions/dates";
import { dayTable } from "../../../functions/readings/dayTable";
import { readingGaps } from "../../../functions/readings/readingGaps";
import { tracking } from "../../../functions/readings/tracking";
import { call, callCell, down } from "../../call";
import { worcester } from "./logs";
import { gaps as silences } from "../../tables/plansAndSeries.json";
import { yardstick } from "../../yardstick";

const gaps = (times: readonly unknown[], longest?: number): number[][] =>
  call(readingGaps, down(times), longest) as number[][];

test("NOAA hourly normals: the hours that are missing in the source are found, and no other", () => {
  // Worked out apart from the function: of all hours of the year, those that the table lacks, joined where they touch.
  const { times } = worcester();
  const there = new Set(times.map((time) => Math.round(time * 24)));
  const [first, last] = [Math.min(...there), Math.max(...there)];
  const missing = Array.from({ length: last - first + 1 }, (_, i) => first + i).filter((hour) => !there.has(hour));
  const runs = missing
    .filter((hour) => !missing.includes(hour - 1))
    .map((hour) => {
      let end = hour;
      while (missing.includes(end)) end++;
      return [hour - 1, end, end - hour + 1];
    });
  expect(missing.length).toBe(6);
  const found = gaps(times, 60).map(([start, end, hours]) => [
    Math.round((start as number) * 24),
    Math.round((end as number) * 24),
    Math.round((hours as number) * 1e6) / 1e6,
  ]);
  expect(found).toEqual(runs);
});

test("by definition: what lies between neighbours in time, and is longer than allowed", () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 0, max: 10_000 }), { minLength: 1, maxLength: 60 }),
      fc.integer({ min: 1, max: 600 }),
      (minutes, longest) => {
        const inOrder = [...minutes].sort((a, b) => a - b);
        const wanted = inOrder.slice(1).flatMap((end, i) => {
          const start = inOrder[i] as number;
          return end - start > longest ? [[start, end]] : [];
        });
        const answer = call(readingGaps, down(minutes.map((minute) => 46_000 + minute / 1440)), longest);
        if (wanted.length === 0) expect(answer).toEqual([[`#N/A no gap over ${longest} minutes`]]);
        else {
          expect(
            answer.map(([start, end]) => [start, end].map((one) => Math.round(((one as number) - 46_000) * 1440))),
          ).toEqual(wanted);
          for (const [start, end, hours] of answer as number[][]) {
            expect(hours).toBeCloseTo(((end as number) - (start as number)) * 24, 9);
          }
        }
      },
    ),
  );
});

test("three hours are no gap, a minute more is one", () => {
  const from = serialOfIso("2026-11-02T08:00") as number;
  expect(callCell(readingGaps, down([from, "2026-11-02T11:00"]))).toBe("#N/A no gap over 180 minutes");
  expect(gaps([from, "2026-11-02T11:01"])[0]?.[2]).toBeCloseTo(181 / 60, 6);
});

test("times that cannot be read are passed over; none at all says so", () => {
  expect(gaps(["Time", 46_000, null, 46_001])).toEqual([[46_000, 46_001, 24]]);
  expect(callCell(readingGaps, down(["a", "b"]))).toBe("#VALUE! times holds no date and time that can be read");
  expect(callCell(readingGaps, 46_000)).toBe("#N/A no gap over 180 minutes");
});

test("what has no room for a count says who counts what was skipped", () => {
  for (const { parameters } of [readingGaps, tracking]) {
    expect(parameters.times.about).toMatch(/cannot be read is skipped, and DAYTABLE counts it$/);
  }
  expect(tracking.parameters.temperatures.about).toMatch(/cannot be read is skipped, and DAYTABLE counts it$/);
  // As it is said, so it is: a time and a temperature that cannot be read are skipped here, and counted there.
  const [times, temperatures] = [down([46_300, "noon", 46_300.05, 46_300.1]), down([20, 21, "lost", 22])];
  expect(call(readingGaps, times)).toEqual([["#N/A no gap over 180 minutes"]]);
  const counted = call(dayTable, times, temperatures).map((row) => row[7]);
  expect(counted).toEqual([1, 1]);
});

// Hours between neighbours that are more than 180 minutes apart. 1e-6 h: a serial number holds a time to a microsecond.
yardstick(readingGaps, { against: "pandas 1.5.3 diff", within: 1e-6, unit: "h" }, () =>
  silences.flatMap(({ times, gaps: wanted }) => {
    const found = gaps(times, 180);
    expect(found.map(([start, end]) => [start, end].map((one) => isoOf(one as number)))).toEqual(
      wanted.map(([start, end]) => [start, end].map((one) => String(one).replace("T00:00:00", ""))),
    );
    return found.map(([, , hours], i) => [hours as number, wanted[i]?.[2] as number] as const);
  }),
);
