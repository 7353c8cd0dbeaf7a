import { stationVerdict } from "../../functions/climate/shared/stationRule";
import { due } from "../../functions/winter/due";
import { animals } from "../../taskpane/sheets/animals";
import { sheets } from "../../taskpane/sheets/catalogue";
import { printedWidth, printOf } from "../../taskpane/sheets/print";
import { areaOf } from "../../taskpane/sheets/shared/address";
import { call, down } from "../call";
import { practicePlan } from "../functions/winter/plans";
import { stationShortlist } from "../../taskpane/sheets/stationShortlist";
import { linesOf } from "../../taskpane/sheets/shared/linesOf";
import type { Sheet } from "../../taskpane/sheets/sheet";

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

const BOLD = 1.08; // bold letters are wider by about so much: an estimate
/** The width and the lines of a column's first cell. */
const roomIn = ({ places, widths, lines }: Sheet, name: string): readonly [width: number, lines: number] => {
  const { top, left } = areaOf(places[name] ?? "");
  return [widths[left - 1] ?? 0, lines.find(({ row }) => row === top)?.lines ?? 1];
};

test("no verdict on a station is cut off, bold ones neither", () => {
  const [width, room] = roomIn(stationShortlist, "network.verdict");
  const verdicts = [-1500, -500, -100, 0, 100, 500, 1500].flatMap((gap) =>
    [10, 100, 1000].map((km) => stationVerdict(gap, km)),
  );
  for (const verdict of verdicts) expect([verdict, linesOf(verdict, width / BOLD) <= room]).toEqual([verdict, true]);
});

test("what to do, what never to do and what is overdue are read whole on Today, on each day of a winter and without one", () => {
  const columns = ["toDo", "never", "overdue"].map((name) => roomIn(animals, `list.${name}`));
  const [last = 0, cooling = 0, , , warm = 0] = practicePlan;
  const told = new Set<string>();
  for (let today = last - 30; today < last + 260; today++) {
    for (const winters of ["yes", "no"] as const) {
      const aired = winters === "yes" && today >= cooling && today < warm ? [today - 9, 7] : [null, null];
      // Fed as it should be, inside the fast, or long ago; weighed too long ago, and in the winter box aired so.
      for (const fed of [1, 9, 40]) {
        const [row = []] = call(due, today, down(practicePlan), today - fed, 7, today - 40, 28, ...aired, winters);
        columns.forEach(([width, room], i) => {
          const words = String(row[i + 1 + Number(i === 2)]);
          told.add(words.replace(/\d{4}-\d{2}-\d{2}/g, ""));
          expect([words, linesOf(words, width / (i === 2 ? BOLD : 1)) <= room]).toEqual([words, true]);
        });
      }
    }
  }
  expect(told.size).toBeGreaterThan(25);
});

/** In digits of a sheet's font, what paper holds at full size: of A4 and Letter the narrower. */
const PAPER = { portrait: 90, landscape: 119 };
test("no sheet is printed at less than two thirds of its size, and no picture is cut off by the edge of what is printed", () => {
  for (const sheet of sheets) {
    const scale = PAPER[printOf(sheet).portrait ? "portrait" : "landscape"] / printedWidth(sheet);
    expect([sheet.key, scale > 2 / 3]).toEqual([sheet.key, true]);
    const last = areaOf(`${sheet.printTo ?? "ZZ"}1`).left;
    const cut = [...sheet.charts.map(({ area }) => area), ...sheet.merges].filter((range) => {
      const { left, right } = areaOf(range);
      return left <= last && right > last;
    });
    expect([sheet.key, cut]).toEqual([sheet.key, []]);
  }
});
