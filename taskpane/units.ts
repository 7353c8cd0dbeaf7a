import { systems, type System } from "../functions/units";

/** The units that sheets are inserted in: the keeper's choice, kept in the browser's own storage where there is one. */

const KEY = "units";
const watchers = new Set<() => void>();

const remembered = (): System => {
  try {
    return systems.find((one) => one === localStorage.getItem(KEY)) ?? "metric";
  } catch {
    // No storage, or none for this page.
    return "metric";
  }
};
let chosen: System | undefined;

export const unitsNow = (): System => (chosen ??= remembered());

export const chooseUnits = (system: System): void => {
  chosen = system;
  try {
    localStorage.setItem(KEY, system);
  } catch {
    // Then it holds for as long as the page is open.
  }
  for (const watcher of watchers) watcher();
};

/** Tells of every choice, until what is answered is called. */
export const watchUnits = (watcher: () => void): (() => void) => {
  watchers.add(watcher);
  return () => watchers.delete(watcher);
};
