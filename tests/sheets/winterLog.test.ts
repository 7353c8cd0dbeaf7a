import { winterLog } from "../../taskpane/sheets/winterLog";
import { cellOf } from "../../taskpane/sheets/shared/page";
import { filled, inTurn, rows, type Typed } from "./fill";

jest.setTimeout(30_000);

test("a blank agreed loss is answered in words, and the line in the chart goes", async () => {
  const reading = await filled(winterLog, { "animal.agreed": null, "log.mass[11]": 269.9 });
  expect(reading.errors()).toEqual([]);
  expect(reading.of("signs.said")).toMatch(/^stop: 2027-01-25, Lost 11\.8 %: tortoises are woken at 10 %/);
  expect(reading.of("signs.said")).toMatch(/No loss agreed with your vet/);
  expect(reading.column("log.least").every((one) => one === "")).toBe(true);
  expect(reading.of("water.said")).toMatch(/^Lost 11\.8 % by 2027-01-25.* mostly water, or droppings/);
});

test("a vented box is asked for no litres, and its air is told by no line", async () => {
  const blank = { "animal.litres": null, "log.date[1]": "2026-11-16" };
  const needed = cellOf(winterLog, "signs.said");
  const above = (reading: Awaited<ReturnType<typeof filled>>) =>
    String(
      reading.block(`A1:A${Number(needed.replace(/\D/g, "")) - 1}`).find(([cell]) => String(cell).startsWith("Still")),
    );
  const shut = await filled(winterLog, blank);
  expect(above(shut)).toMatch(/^Still needed: Litres of the box \(B\d+\)\.$/);
  expect(shut.of("signs.said")).toMatch(/Air in the box is not judged/);
  const vented = await filled(winterLog, { ...blank, "animal.box": "vented" });
  expect(above(vented)).toBe("undefined");
  expect(vented.of("signs.said")).not.toMatch(/Air in the box/);
});

test("signs stand on top, the gravest first, with their days: cold, loss, a box shut too long, dry air, weighed too rarely", async () => {
  const shut = rows("log", 2, [
    { date: "2026-11-18", box: 3.5, mass: null, humidity: 40, opened: "no" },
    { date: "2026-12-28", box: 8, mass: 289, humidity: 97, opened: "no" },
    ...Array.from({ length: 9 }, () => ({ date: null, box: null, mass: null, humidity: null, opened: null })),
  ]);
  const reading = await filled(winterLog, { ...shut, "log.seen[3]": null, "animal.litres": 2 });
  expect(reading.errors()).toEqual([]);
  const said = String(reading.of("signs.said")).split("\n");
  expect(said.filter((line) => line.startsWith("stop")).map((line) => line.slice(6, 27))).toEqual([
    "2026-11-18, Box at 3.",
    "2026-12-28, Lost 5.56",
    "2026-12-28, Shut from",
  ]);
  for (const care of [/42 days without a weighing/, /Humidity of 40 %/, /Humidity of 97 %/]) {
    expect(said.some((line) => line.startsWith("care") && care.test(line))).toBe(true);
  }
  expect(reading.of("log.sign[2]")).toBe("too cold");
});

test("the air of a box is shared by all that winter in it, and a box without a limit is not called ok", async () => {
  const [one, four] = await Promise.all(
    [null, 4].map((many) => filled(winterLog, { "animal.many": many, "animal.litres": 30, "animal.tooCold": null })),
  );
  const hours = (reading: typeof one): number => reading?.of("log.air[1]") as number;
  // Four bodies take their room too: (30 - 4 * 0.306) / 4 litres each, in place of 30 - 0.306.
  expect(hours(four) / hours(one)).toBeCloseTo((30 - 4 * 0.306) / 4 / (30 - 0.306), 9);
  expect(one?.of("signs.said")).not.toMatch(/Shut from/);
  expect(four?.of("signs.said")).toMatch(/^stop: .*Shut from/m);
  expect(one?.column("log.sign").slice(0, 8)).toEqual([...Array<string>(7).fill("no limit"), "too warm"]);
});

test("where a cell cannot be read nothing is judged, and that is said first", async () => {
  const unread: readonly Typed[] = [
    { "log.box[5]": "lost" },
    { "log.date[11]": "25/01/27?" },
    { "animal.agreed": 5 },
    { "animal.litres": 0.3 },
  ];
  const readings = await inTurn(winterLog, [...unread, {}]);
  for (const [i, typed] of unread.entries()) {
    const said = readings[i]?.of("signs.said");
    expect([typed, said]).toEqual([typed, expect.stringMatching(/^stop: Nothing is judged: /)]);
    expect(readings[i]?.of("lines.on[1]")).toBe("#VALUE!");
  }
  expect(readings.at(-1)?.of("signs.said")).toMatch(/^care: 2027-01-04, Box at 10\.4/);
});
