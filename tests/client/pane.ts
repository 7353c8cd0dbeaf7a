import type { Page } from "playwright-core";

/** The pane as its keeper uses it: by the words on it. */
export const turnTo = async (page: Page, section: string): Promise<void> => {
  await page.getByRole("tab", { name: section, exact: true }).click();
  await page.getByRole("tabpanel").locator("h2, li, label").first().waitFor();
  // All at once: one by one they cost more than what is done in them.
  await page
    .locator("details.part:not([open]) > summary")
    .evaluateAll((folded: HTMLElement[]) => folded.forEach((one) => one.click()));
};

/** Presses a button, agrees where it asks, and answers what it says that it did. */
export const press = async (page: Page, name: string | RegExp): Promise<string> => {
  const button = page.getByRole("button", { name, exact: true });
  const act = page.locator(".act", { has: button });
  await button.click();
  const until = Date.now() + 30_000;
  for (;;) {
    const ahead = act.getByRole("button", { name: "Go ahead" });
    if (await ahead.isVisible()) {
      await ahead.click();
      continue;
    }
    const said = (await act.getByRole("status").textContent())?.trim() ?? "";
    if (said !== "") return said;
    if (Date.now() > until) throw new Error(`${String(name)} says nothing`);
    await page.waitForTimeout(20);
  }
};
