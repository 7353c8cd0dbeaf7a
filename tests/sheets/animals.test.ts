import { animals } from "../../taskpane/sheets/animals";
import { PLAN_DATES } from "../../taskpane/sheets/shared/winterPlan";
import { filled, type Typed } from "./fill";

jest.setTimeout(30_000);

const noPlan = Object.fromEntries(PLAN_DATES.map((date) => [`plan.${date}`, null]));
const brokenPlans: readonly Typed[] = [{ "plan.intoTheCold": null }, noPlan];

test("a wintering animal without a whole plan gets no next meal, and the reminder says why", async () => {
  for (const typed of brokenPlans) {
    const reading = await filled(animals, { ...typed, "reminders.today": "2026-12-01" });
    expect(reading.errors()).toEqual([]);
    const winters = reading.column("list.winters");
    const next = reading.column("list.next");
    const reminders = reading.column("list.reminder");
    const yes = winters.flatMap((one, i) => (one === "yes" ? [i] : []));
    expect(yes.length).toBeGreaterThan(0);
    for (const i of yes) {
      expect(next[i]).toBe("");
      expect(reminders[i]).toMatch(/^Winters, but no whole plan\./);
    }
    const no = winters.flatMap((one, i) => (one === "no" ? [i] : []));
    for (const i of no) expect(next[i]).toMatch(/^\d{4}-/);
  }
});
