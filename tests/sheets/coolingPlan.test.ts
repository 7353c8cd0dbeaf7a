import { care } from "../../functions/rules/stages";
import { coolingPlan } from "../../taskpane/sheets/coolingPlan";
import { filled, inTurn, type Typed } from "./fill";

jest.setTimeout(30_000);

test("a small box, a damp room, a limit of the animal's own, a gravid female: each danger is said beside its figure", async () => {
  const reading = await filled(coolingPlan, {
    "air.litres": 2,
    "air.humidity": 90,
    "plan.tooWarm": 23,
    "plan.tooCold": null,
    "plan.warm": 13,
    "ready.gravid": "yes",
    "ready.breathing": null,
  });
  expect(reading.errors()).toEqual([]);
  expect(reading.column("hours.words")).toEqual([
    "this box needs vents",
    "this box needs vents",
    "this box needs vents",
  ]);
  expect(reading.of("stifles.said")).toMatch(/^stop: Shut, the box below .* it needs vents\.$/);
  expect(reading.of("condenses.said")).toMatch(/in the cold the box turns wet/);
  const check = String(reading.of("check.said")).split("\n");
  expect(check[0]).toMatch(/^stop: Warmed within 13 days/);
  expect(check.some((line) => line.startsWith("stop: Warm of 24 °C: above 23 °C is too warm for this animal"))).toBe(
    true,
  );
  expect(check.at(-1)).toMatch(/Too cold for this animal was not given/);
  const ready = String(reading.of("readySaid.said")).split("\n");
  expect(ready[0]).toMatch(/^stop: Gravid: she stays warm, and out of the winter plan/);
  expect(ready[1]).toBe("care: Breathing: not looked at.");
});

test("where the dates are fine and the box is not, the top says both; a vented box is not held against its air", async () => {
  const [shut, vented] = await Promise.all(
    ["shut", "vented"].map((box) => filled(coolingPlan, { "air.box": box, "air.litres": 24 })),
  );
  expect(shut?.of("check.said")).toMatch(/^note: Nothing stands out in its dates and set-points\. /);
  expect(shut?.of("stifles.said")).toMatch(/^stop: .* it needs vents\.$/);
  expect(vented?.of("stifles.said")).toBe("");
});

test("six animals in one box use its air as fast as six, which is faster than one of their joint mass", async () => {
  const [one, six] = await Promise.all(
    [1, 6].map((many) => filled(coolingPlan, { "air.litres": 40, "air.mass": 30, "air.many": many })),
  );
  const [alone, shared] = [one, six].map((reading) => reading?.of("hours.soonest[3]") as number) as [number, number];
  expect(alone / shared).toBeCloseTo(6, 1); // the litres that they fill themselves make the rest
  const joint = await filled(coolingPlan, { "air.litres": 40, "air.mass": 180 });
  expect(shared).toBeLessThan(joint.of("hours.soonest[3]") as number);
  expect(six?.of("hours.every[1]")).toBeLessThan(one?.of("hours.every[1]") as number);
});

test("the weeks speak the rules' words, half the usual on the first meals, and the way out is no faster than half a degree a day", async () => {
  const reading = await filled(coolingPlan, {});
  const [stages, toDo, foods] = ["stage", "toDo", "food"].map((name) => reading.column(`weeks.${name}`)) as [
    string[],
    string[],
    string[],
  ];
  stages.forEach((stage, i) => {
    if (stage === "") return;
    const fed = foods[i] !== "none";
    expect(toDo[i]?.startsWith(fed ? `Food: ${foods[i]}. ` : "No food. ")).toBe(true);
    if (!fed) expect(toDo[i]).toBe(`No food. ${care[stage as keyof typeof care].toDo}`);
  });
  expect(foods.filter((food) => food === care["First meals"].food)).toHaveLength(2);
  const [dates, celsius] = [reading.column("early.date"), reading.column("early.setPoint")];
  expect([dates[0], celsius[0], dates[16], celsius[16], dates[17]]).toEqual([
    "2027-01-11",
    8,
    "2027-02-12",
    24,
    "2027-02-19",
  ]);
  expect(reading.of("early.words[1]")).toMatch(/^Call your reptile vet first/);
});

test("a plan without dates is told as a stop, not passed over", async () => {
  const amiss: readonly (readonly [Typed, RegExp])[] = [
    [{ "plan.when": "21 Sept, about" }, /^stop: The six dates cannot be worked out/],
    [{ "plan.way": "backward" }, /^stop: There are no dates: Planned is neither/],
    [{ "plan.settle": null }, /^stop: There are no dates: .* days is blank/],
  ];
  const readings = await inTurn(
    coolingPlan,
    amiss.map(([typed]) => typed),
  );
  for (const [i, [typed, said]] of amiss.entries()) {
    expect([typed, readings[i]?.of("check.said")]).toEqual([typed, expect.stringMatching(said)]);
    expect(readings[i]?.column("dates.date").every((one) => one === "" || one === null)).toBe(true);
  }
  expect((await filled(coolingPlan, {}, { cleared: true })).of("check.said")).toBe("");
});
