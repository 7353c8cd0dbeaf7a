import { care } from "../../functions/rules/stages";
import { animals } from "../../taskpane/sheets/animals";
import { feedingLog } from "../../taskpane/sheets/feedingLog";
import { addressIn } from "../../taskpane/sheets/shared/names";
import { cellOf } from "../../taskpane/sheets/shared/page";
import { PLAN_DATES } from "../../taskpane/sheets/shared/winterPlan";
import { filled, freeRow, rows, type Typed } from "./fill";

jest.setTimeout(120_000);

const noPlan = Object.fromEntries(PLAN_DATES.map((date) => [`plan.${date}`, null]));
const brokenPlans: readonly (readonly [Typed, RegExp])[] = [
  [{ "plan.intoTheCold": null }, /^A date of its winter plan is missing/],
  [noPlan, /winter/],
];

test("a wintering animal without a whole plan gets no next meal, and the first thing said is what is missing", async () => {
  for (const [typed, said] of brokenPlans) {
    const reading = await filled(animals, { ...typed, "reminders.today": "2026-12-01" });
    expect(reading.errors()).toEqual([]);
    const [winters, next, toDo] = ["winters", "next", "toDo"].map((name) => reading.column(`list.${name}`)) as [
      unknown[],
      unknown[],
      unknown[],
    ];
    const yes = winters.flatMap((one, i) => (one === "yes" ? [i] : []));
    expect(yes.length).toBeGreaterThan(0);
    for (const i of yes) {
      expect(next[i]).toBe("");
      expect(toDo[i]).toMatch(said);
    }
    for (const i of winters.flatMap((one, i) => (one === "no" ? [i] : []))) expect(next[i]).toMatch(/^\d{4}-/);
  }
});

test("in the middle of December nobody who winters is fed, and who does not say is asked", async () => {
  const reading = await filled(animals, { "reminders.today": "2026-12-15", "list.winters[2]": null });
  expect(reading.of("list.stage[1]")).toBe("Cold");
  expect(reading.of("list.next[1]")).toBe("2027-03-29");
  expect(reading.of("list.toDo[1]")).toBe(`No food until 2027-03-29. ${care.Cold.toDo}`);
  expect(reading.of("list.never[1]")).toBe(care.Cold.never);
  expect(reading.of("list.toDo[2]")).toMatch(/Does it winter\? Say yes or no\.$/);
  expect(reading.of("list.stage[5]")).toBe("Feeding");
  expect(String(reading.of("list.toDo[5]"))).toMatch(/^Feed \(due since 2026-09-22\)/);
});

test("a gravid female is kept warm and fed as the others, whatever stands at Winters; inside her plan's fast a vet is called first", async () => {
  const autumn = await filled(animals, { "reminders.today": "2026-09-21", "list.gravid[1]": "yes" });
  expect([autumn.of("list.stage[1]"), autumn.of("list.never[1]")]).toEqual([
    "Feeding",
    expect.stringMatching(/^No cooling: it follows no winter plan\./),
  ]);
  const winter = await filled(animals, {
    "reminders.today": "2026-12-15",
    "list.gravid[1]": "yes",
    "list.gravid[2]": "yes",
    "list.winters[2]": "no",
  });
  expect(winter.of("list.toDo[1]")).toMatch(/^She may be gravid, and her winter plan has begun: call your reptile vet/);
  expect([winter.of("list.never[1]"), winter.of("list.next[1]")]).toEqual([
    "No food and no cooling until that is known.",
    "",
  ]);
  expect(winter.of("list.stage[2]")).toBe("Feeding");
});

test("a gravid female of whose plan not all is known is neither fed nor cooled; one who is said not to winter is fed", async () => {
  const broken = Object.fromEntries(PLAN_DATES.map((date) => [`plan.${date}`, { formula: "=1/0" }]));
  const plans: readonly Typed[] = [
    { "plan.firstMeal": null },
    noPlan,
    broken,
    { "list.plan[1]": "Nowhere" },
    { "plan.name2": "B", "list.plan[1]": null },
  ];
  for (const typed of plans) {
    const reading = await filled(animals, { "reminders.today": "2026-12-15", "list.gravid[1]": "yes", ...typed });
    expect([reading.of("list.toDo[1]"), reading.of("list.never[1]"), reading.of("list.next[1]")]).toEqual([
      expect.stringMatching(
        /^Was she cooled\? Call your reptile vet today\. She may be gravid, and her winter plan is not known/,
      ),
      "No food and no cooling until that is known.",
      "",
    ]);
  }
  const warm = await filled(animals, { ...noPlan, "list.gravid[1]": "yes", "list.winters[1]": "no" });
  expect(warm.of("list.stage[1]")).toBe("Feeding");
});

test("a shut box that must be opened every few hours needs vents, and says so", async () => {
  const reading = await filled(animals, {
    "reminders.today": "2026-12-15",
    "list.opened[1]": "2026-12-07",
    "list.openEvery[1]": 7,
    "list.openEvery[2]": 0.5,
    "list.box[4]": "vented",
  });
  expect(reading.of("list.overdue[1]")).toBe("Open the box: last 2026-12-07. Weigh: last 2026-09-21.");
  expect(reading.of("list.overdue[2]")).toMatch(/^The box needs vents/);
  expect(reading.of("list.overdue[3]")).toMatch(/^Box: opened how often\?/);
  expect(reading.of("list.overdue[4]")).not.toMatch(/[Bb]ox/);
});

test("last meal and weighing are the later of what is typed and what the log says, by name and up to today", async () => {
  const reading = await filled(animals, {
    "list.fed[5]": null,
    "list.weighed[5]": "2026-09-19",
    "list.label[6]": "Unfed",
    "list.winters[6]": "no",
    "fed.date[15]": "2026-09-30", // Sorrel's last row, now after today
  });
  expect(reading.of("list.ate[5]")).toBe("2026-09-12");
  expect(reading.of("list.weighedLast[5]")).toBe("2026-09-19");
  expect(reading.of("list.ate[6]")).toBe("");
  expect(reading.of("list.toDo[6]")).toMatch(/^When did it last eat\?/);
});

test("a row of the Feeding log reaches the animal of its name through links, and a refused meal is none", async () => {
  const free = freeRow(feedingLog, "log");
  const names = ["animal", "date", "outcome", "body"];
  const linked = Object.fromEntries(
    names.flatMap((name) =>
      Array.from({ length: free + 1 }, (_, i) => {
        const there = `'Feeding log'!${addressIn(feedingLog.places, `log.${name}[${i + 1}]`)}`;
        return [`fed.${name}[${i + 1}]`, { formula: `=IF(${there}="","",${there})` }];
      }),
    ),
  );
  const reading = await filled(
    animals,
    { ...linked, "reminders.today": "2027-04-14", "list.label[3]": "juniper " },
    { beside: [feedingLog] },
  );
  expect(reading.errors()).toEqual([]);
  expect(reading.of("list.ate[3]")).toBe("2026-09-21");
  expect(reading.of("list.next[3]")).toBe("2027-03-29");
  const typed = rows("fed", free, [
    { animal: "Juniper", date: "2027-04-05", outcome: "taken", body: 300 },
    { animal: "Juniper", date: "2027-04-12", outcome: "refused", body: 301 },
  ]);
  const after = await filled(animals, { ...typed, "reminders.today": "2027-04-14" });
  expect([after.of("list.ate[1]"), after.of("list.weighedLast[1]"), after.of("list.next[1]")]).toEqual([
    "2027-04-05",
    "2027-04-12",
    "2027-04-12",
  ]);
  expect(after.of("list.toDo[1]")).toMatch(/^Feed \(due since 2027-04-12\), as usual/);
});

test("one that brought a meal up is fed and cooled on by nobody until it has rested, winters it or not", async () => {
  const free = freeRow(feedingLog, "log");
  const log = rows("fed", free, [
    { animal: "Rowan", date: "2026-09-26", outcome: "regurgitated" },
    { animal: "Sorrel", date: "2026-09-27", outcome: "brought up" },
    { animal: "Heather", date: "2026-09-20", outcome: "brought up" },
    { animal: "Heather", date: "2026-09-21", outcome: "taken" },
    { animal: "Unfed", date: "2026-09-27", outcome: "brought up" },
  ]);
  const unfed = {
    "list.label[6]": "Unfed",
    "list.born[6]": "2020-06-01",
    "list.winters[6]": "no",
    "list.fed[6]": "2026-09-27",
  };
  const resting = await filled(animals, { ...log, ...unfed, "reminders.today": "2026-10-09", "list.gravid[5]": "yes" });
  const said = (name: string) => [2, 5, 6].map((row) => resting.of(`list.${name}[${row}]`));
  expect(said("toDo")).toEqual([
    expect.stringMatching(/^It brought a meal up on 2026-09-26: .*reptile vet.* No food until 2026-10-10, no cooling/),
    expect.stringMatching(/^It brought a meal up on 2026-09-27: .* No food until 2026-10-11, no cooling/),
    expect.stringMatching(/^It brought a meal up on 2026-09-27: /),
  ]);
  expect(said("never")).toEqual(Array(3).fill("No food and no cooling until that is known."));
  expect(said("next")).toEqual(["", "", ""]);
  // A meal that was kept since, and days enough.
  expect(resting.of("list.toDo[3]")).toMatch(/^No food until 2027-03-29/);
  const rested = await filled(animals, { ...log, "reminders.today": "2026-10-10", "settings.wait": 13 });
  expect(rested.of("list.stage[2]")).toBe("Cooling");
  expect(rested.of("list.toDo[5]")).toMatch(/^Feed \(due since 2026-09-22\)/);
  // It rests as long as the Feeding log says.
  const [own, practice] = [feedingLog, animals].map((sheet) =>
    sheet.blocks.find(({ at }) => at === cellOf(sheet, sheet === animals ? "settings.wait" : "limits.wait")),
  );
  expect(own?.rows).toEqual(practice?.rows);
});

test("a word that is not no keeps her warm, and a day that is not the calendar's is said so", async () => {
  const typed = { "list.gravid[1]": "ja", "list.gravid[3]": "no" };
  const reading = await filled(animals, { ...typed, "reminders.today": "2026-09-21" });
  expect([1, 3].map((row) => reading.of(`list.stage[${row}]`))).toEqual(["Feeding", "Clearing"]);
  expect(reading.of("reminders.stale")).toMatch(/^Not the calendar's day/);
  const now = await filled(animals, { "reminders.today": { formula: "=TODAY()" } });
  expect(now.of("reminders.stale")).toBe("");
});

test("what is done stands in view beside the pane, before the facts", () => {
  const columns = ["label", "stage", "toDo", "never", "next", "overdue"].map((name) => cellOf(animals, `list.${name}`));
  expect(columns.map((range) => range.charAt(0))).toEqual(["A", "B", "C", "D", "E", "F"]);
  expect(animals.cautions.length).toBe(3);
});
