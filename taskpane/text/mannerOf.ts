import type { DateOrder, Manner } from "./form";

/** How people of a language and region write dates and figures, as the platform's own tables have it (Unicode CLDR). */
export const mannerOf = (locale: string): Manner => {
  const parts = new Intl.DateTimeFormat(locale, { calendar: "gregory", timeZone: "UTC" }).formatToParts(0);
  const order = parts
    .map(({ type }) => type.slice(0, 1))
    .filter((one) => "ymd".includes(one))
    .join("");
  const mark = new Intl.NumberFormat(locale).formatToParts(1.5).find(({ type }) => type === "decimal")?.value;
  return {
    // The few that put the day last but the month after the year, and the like, are taken as the nearest of the three.
    dateOrder: (["ymd", "dmy", "mdy"] as const satisfies readonly DateOrder[]).find((one) => one === order) ?? "ymd",
    decimal: mark === "," ? "," : ".",
  };
};
