import { setPointFields } from "./shared/commonFields";
import { form } from "./shared/form";
import { log } from "./shared/log";
import { boxLimits, boxReadings } from "./shared/scenario";
import { number, whole } from "./shared/takes";
import { winterPlan } from "./shared/winterPlan";

/** What the keeper fills in on the sheet Readings. */

/** Rows for a winter's readings, one each quarter of an hour; those with a frame show where to paste. */
export const ROOM = 20_000;
const FRAMED = 240;
const shownRows = Array.from({ length: FRAMED }, (_, i) => boxReadings[i] ?? [null, null]);
export const pasted = log(
  "pasted",
  FRAMED,
  {
    time: { title: "Time", needed: "Readings", input: shownRows.map(([time]) => time), format: "moment" },
    celsius: { title: "°C", input: shownRows.map(([, celsius]) => celsius), format: "tenth" },
  },
  {
    room: ROOM,
    note: `Paste here, time left and °C right, up to ${ROOM} rows, below the frame too. Rows below that are not read: begin another sheet. The pane's Readings reads a file into it.`,
  },
);

const limit = (label: string, value: number) =>
  ({ label, needed: true, unit: "°C", wide: 3, value, format: "tenth", takes: number([-100, 150]) }) as const;
export const limits = form(
  "limits",
  "Limits",
  {
    low: limit("Not below", boxLimits.low),
    high: limit("Not above", boxLimits.high),
    longest: {
      label: "Joined up to",
      unit: "minutes",
      wide: 3,
      value: 180,
      role: "setting",
      format: "whole",
      takes: whole([1, 100_000]),
      note: "Two readings further apart make a gap, of which nothing is assumed. Practice.",
    },
  },
  { across: 3 },
);

export const plan = winterPlan(3, 3);
export const setPoints = form("setPoints", null, setPointFields("coolingPlan.plan", 3, false), { across: 3 });
