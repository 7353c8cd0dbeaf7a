import { form } from "./shared/form";
import { f } from "./shared/formula";
import { saysSomething } from "./shared/rules";
import { TODAY } from "./shared/scenario";
import { date } from "./shared/takes";

/** The day of which everything on the sheet is told. */

export const reminders = form("reminders", null, {
  today: {
    label: "Today",
    needed: true,
    value: TODAY,
    format: "date",
    takes: date,
    note: "Type the date, or =TODAY() to follow the calendar.",
  },
  // What was due on the day that was typed last must not pass for what is due now.
  stale: {
    value: ({ today }) => f`IF(OR(${today}="",${today}=TODAY()),"","Not the calendar's day: type it anew.")`,
    rules: [saysSomething("care")],
  },
});
