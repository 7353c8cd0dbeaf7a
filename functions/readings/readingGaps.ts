import { defineFunction, optional, quantity, table } from "../define";
import { notAvailable, notUsable } from "../problem";
import { isGap, LONGEST_GAP, uncountedTimes } from "./shared/readingRange";

export const readingGaps = defineFunction({
  name: "READINGGAPS",
  summary: "Where a logger was silent: start, end and hours of each gap between readings.",
  parameters: {
    times: uncountedTimes,
    longest: optional(quantity("minute", "Minutes up to which it is no gap", [0, 100_000]), `${LONGEST_GAP}`),
  },
  result: table(
    { name: "Start", unit: "date and time", about: "Last reading before the gap" },
    { name: "End", unit: "date and time", about: "First reading after it" },
    { name: "Hours", unit: "hour", about: "Time between them" },
  ),
  sources: ["definition", "practice"],
  cautions: ["skippedReadings"],
  examples: [
    {
      given: [[["2026-11-02T08:00"], ["2026-11-02T10:00"], ["2026-11-02T20:00"], ["2026-11-02T21:00"]]],
      gives: [["2026-11-02T10:00", "2026-11-02T20:00", 10]],
      within: 1e-6,
    },
  ],
  calculate({ times, longest = LONGEST_GAP }) {
    const inOrder = times.filter((time) => !Number.isNaN(time)).sort();
    if (inOrder.length === 0) return notUsable("times holds no date and time that can be read");
    const gaps: number[][] = [];
    for (let i = 1; i < inOrder.length; i++) {
      const [start, end] = [inOrder[i - 1] as number, inOrder[i] as number];
      if (isGap(end - start, longest)) gaps.push([start, end, (end - start) * 24]);
    }
    return gaps.length > 0 ? gaps : notAvailable(`no gap over ${longest} minutes`);
  },
});
