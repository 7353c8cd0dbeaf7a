import { stationVerdict } from "../../functions/climate/shared/stationRule";
import { stationShortlist } from "../../taskpane/sheets/stationShortlist";
import { linesOf } from "../../taskpane/sheets/shared/linesOf";

/**
 * Lines counted in a picture of the preview's sheets: Arial of 10 points, columns of so many digits' width. A line more is
 * room to spare in a narrower font, a line fewer would be cut off.
 */
test.each([
  ["No food from the last meal to the first: food left in a cold gut can kill. Fresh water always.", 24.1, 3],
  ["Weigh on the same scales, before a meal: food, droppings and eggs weigh more than a month's growth.", 27, 3],
  [
    "Below ten animals the exponent is 3, as for bodies of one shape; animals of nearly one length give an unsure one. Measure snout to vent, compare the sexes apart and leave gravid females out. Not for one animal followed while it grows.",
    27,
    7,
  ],
  ["Cooling can kill. Cool only a healthy, well-fed animal with an empty gut, and ask a reptile vet first.", 24.1, 4],
  [
    "Start from your own clutches: days differ by species and by mother. The threshold of 14 °C fits four Asian colubrids.",
    39,
    3,
  ],
])("%s", (words, width, seen) => {
  const lines = linesOf(words, width);
  expect(lines).toBeGreaterThanOrEqual(seen);
  expect(lines).toBeLessThanOrEqual(seen + 1);
});

test("a new line begins a line, a word longer than the column runs on, and nothing takes one line", () => {
  expect(linesOf("one\ntwo", 20)).toBe(2);
  expect(linesOf("m".repeat(60), 20)).toBeGreaterThanOrEqual(4);
  expect(linesOf("", 20)).toBe(1);
});

test("no verdict on a station is cut off, bold ones neither", () => {
  const column = stationShortlist.places["network.verdict"] ?? "";
  const row = Number(/\d+/.exec(column)?.[0]);
  const width = stationShortlist.widths[column.replace(/[^A-Z]/g, "").charCodeAt(0) - "A".charCodeAt(0)] ?? 0;
  const room = stationShortlist.lines.find((one) => one.row === row)?.lines ?? 1;
  const BOLD = 1.08; // bold letters are wider by about so much: an estimate
  const verdicts = [-1500, -500, -100, 0, 100, 500, 1500].flatMap((gap) =>
    [10, 100, 1000].map((km) => stationVerdict(gap, km)),
  );
  for (const verdict of verdicts) expect([verdict, linesOf(verdict, width / BOLD) <= room]).toEqual([verdict, true]);
});
