import { animals } from "../../taskpane/sheets/animals";
import { filled, type Typed } from "./fill";

jest.setTimeout(30_000);

const brokenPlans: readonly Typed[] = [{ I9: null }, { I7: null, I8: null, I9: null, I10: null, I11: null, I12: null }];

test("a wintering animal without a whole plan gets no next meal, and the reminder says why", async () => {
  for (const typed of brokenPlans) {
    const reading = await filled(animals, { ...typed, C7: "2026-12-01" });
    expect(reading.errors()).toEqual([]);
    const winters = reading.block("H15:H40").flat();
    const next = reading.block("L15:L40").flat();
    const reminders = reading.block("N15:N40").flat();
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
