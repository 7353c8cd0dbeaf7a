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
  expect(reading.block("H28:H33").flat()).toEqual([winters, winters, winters, winters, young, young]);
  // Pinky, fuzzy, hopper, weaned, adult.
  expect(reading.block("E17:E21").flat()).toEqual([6 * young, 0, young, 2 * winters, 2 * winters]);
  // What went in less what came out.
  expect(reading.block("D17:D21").flat()).toEqual([94, 0, 29, 36, 48]);
  expect(reading.at("B17")).toBe(`Buy ${6 * young - 94}`);
});

test("an animal that winters without a whole plan is flagged, and so is a size that is not in the table", async () => {
  const reading = await filled(preyStock, { G9: null, B29: "Rat pup", B46: "Rat pup" });
  expect(reading.at("K28")).toBe("Winters, but no whole plan");
  expect(reading.at("K29")).toBe("No such size above");
  expect(reading.at("E46")).toBe("No such size above");
});

test("prey that is too big for the animal is refused with words", async () => {
  const reading = await filled(preyStock, { B32: "Weaned mouse" });
  expect(reading.at("K32")).toBe("Item 24 % of body: too big");
  expect(reading.at("G32")).toBe("#VALUE!");
});
