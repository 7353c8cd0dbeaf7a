import { serialOfIso } from "../../functions/dates";
import { preyStock } from "../../taskpane/sheets/preyStock";
import { filled } from "./fill";

jest.setTimeout(30_000);

const serial = (iso: string): number => serialOfIso(iso) as number;

/** Meals counted day by day: every `days`, none inside the fast, and the first meal after it. */
const meals = (from: string, to: string, days: number, fast?: readonly [last: string, first: string]): number => {
  let [count, due] = [0, serial(from)];
  for (let day = serial(from); day <= serial(to); day++) {
    const inside = fast && day > serial(fast[0]) && day < serial(fast[1]);
    if (inside || day < due) continue;
    count++;
    due = day + days;
  }
  return count;
};

test("items to come are the meals counted day by day, times the animals, times the items", async () => {
  const reading = await filled(preyStock, {});
  const winters = meals("2026-09-22", "2027-06-30", 7, ["2026-09-21", "2027-03-29"]);
  const young = meals("2026-09-22", "2027-06-30", 5);
  expect(reading.column("eaters.meals").slice(0, 6)).toEqual([winters, winters, winters, winters, young, young]);
  // Pinky, fuzzy, hopper, weaned, adult.
  expect(reading.column("sizes.toCome").slice(0, 5)).toEqual([6 * young, 0, young, 2 * winters, 2 * winters]);
  // What went in less what came out.
  expect(reading.column("sizes.stock").slice(0, 5)).toEqual([94, 0, 29, 36, 48]);
  expect(reading.of("sizes.toDo[1]")).toBe(`Buy ${6 * young - 94}`);
});

test("an animal that winters without a whole plan is flagged, and so is a size that is not in the table", async () => {
  const reading = await filled(preyStock, {
    "plan.intoTheCold": null,
    "eaters.size[2]": "Rat pup",
    "log.size[1]": "Rat pup",
  });
  expect(reading.of("eaters.standsOut[1]")).toBe("Winters, but no whole plan");
  expect(reading.of("eaters.standsOut[2]")).toBe("No such size above");
  expect(reading.of("log.sign[1]")).toBe("No such size above");
});

test("prey that the animal has outgrown is told at its share, and a blank share judges nothing", async () => {
  const small = { "eaters.body[6]": 30, "eaters.body[5]": 175 };
  const reading = await filled(preyStock, small);
  // A pinky of 1.2 g is 4.0 % of 30 g, the limit itself; a hopper of 7 g 4.0 % of 175 g.
  expect([5, 6].map((row) => reading.of(`eaters.standsOut[${row}]`))).toEqual(["", ""]);
  const grown = await filled(preyStock, { ...small, "eaters.body[6]": 40 });
  expect(grown.of("eaters.standsOut[6]")).toBe("Item 3 % of body: outgrown");
  const blank = await filled(preyStock, { "eaters.body[6]": 40, "time.leastShare": null });
  expect(blank.of("eaters.standsOut[6]")).toBe("");
});

test("prey that is too big for the animal is refused with words", async () => {
  const reading = await filled(preyStock, { "eaters.size[5]": "Weaned mouse" });
  expect(reading.of("eaters.standsOut[5]")).toBe("Item 24 % of body: too big");
  expect(reading.of("eaters.items[5]")).toBe("#VALUE!");
});
