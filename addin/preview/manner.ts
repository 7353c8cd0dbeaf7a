import type { Manner } from "../../taskpane/text/form";

/** How dates and figures are typed into this page. Until somebody has said: the form that nobody misreads. */
let now: Manner = { dateOrder: "ymd", decimal: "." };
const listeners = new Set<() => void>();

export const mannerNow = (): Manner => now;

export const setManner = (manner: Manner): void => {
  now = manner;
  for (const listener of listeners) listener();
};

export const onManner = (listener: () => void): void => void listeners.add(listener);
