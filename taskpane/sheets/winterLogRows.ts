import { boxFields } from "./shared/commonFields";
import { form } from "./shared/form";
import { eachLine, f } from "./shared/formula";
import { log, LOG_ROWS } from "./shared/log";
import { over, says, under } from "./shared/rules";
import { animals, day, winter } from "./shared/scenario";
import { date, HUMIDITY, MASS, number, oneOf } from "./shared/takes";
import { blanksKept } from "./shared/words";
import { readings } from "./winterLogExample";

/** What is filled in on the Winter log: the animal with its limits, and a row each time that somebody looks. */

export const animal = form("animal", "This animal", {
  label: { label: "Animal", value: animals.juniper.label, from: "coolingPlan.plan.label" },
  start: { label: "Mass into the cold", needed: true, unit: "g", value: 306, format: "tenth", takes: number(MASS) },
  warming: {
    label: "Warming starts on",
    needed: true,
    value: winter.dates[3] ?? null,
    from: "coolingPlan.dates.warmingStarts",
    format: "date",
    takes: date,
    note: "From the sheet Cooling plan. The cell may point there: type = and click that date.",
  },
  ...boxFields("coolingPlan.air"),
  tooCold: { label: "Too cold below", unit: "°C", value: 4, role: "setting", format: "tenth", takes: number([0, 30]) },
  tooWarm: { label: "Too warm above", unit: "°C", value: 10, role: "setting", format: "tenth", takes: number([0, 30]) },
  agreed: {
    label: "Loss agreed with your vet",
    needed: "Agreed loss",
    value: 0.05,
    format: "percent",
    takes: number([0.001, 0.5]),
    note: "A share of the mass into the cold: 5 % is 0.05. Invented in the example.",
  },
});
const { start, many, box: boxKind, litres, elevation, tooCold, tooWarm, agreed } = animal;

export const weekly = log(
  "log",
  LOG_ROWS,
  {
    date: {
      title: "Date",
      needed: "First reading",
      input: readings.map(({ iso }) => day(iso)),
      format: "date",
      takes: date,
    },
    box: {
      title: "Box",
      unit: "°C",
      input: readings.map(({ box }) => box),
      format: "tenth",
      takes: number([-30, 60]),
      rules: [under(tooCold, "stop"), over(tooWarm, "care")],
    },
    mass: {
      title: "Mass",
      unit: "g",
      input: readings.map(({ mass }) => mass),
      format: "tenth",
      takes: number(MASS),
    },
    humidity: {
      title: "Hum.",
      unit: "%",
      input: readings.map(({ humidity }) => humidity),
      format: "whole",
      takes: number(HUMIDITY),
      note: "Humidity in the box. Check the hygrometer first: in a closed jar of its own over damp table salt it should read 75 to 76 % after some hours (Greenspan 1977).",
    },
    opened: {
      title: "Opened",
      input: readings.map(() => "yes"),
      takes: oneOf("yes", "no"),
      note: "Whether the box was opened. A row with a mass counts as opened.",
    },
    lost: {
      title: "Lost",
      spilled: ({ mass }) => eachLine`VIV.MASSLOSS(${start},${mass})`,
      format: "percent",
      note: "Of the mass into the cold. A gain is negative.",
      rules: [over(agreed, "stop")],
    },
    seen: { title: "Seen and done", input: readings.map(({ seen }) => seen ?? null) },
    sign: {
      title: "Box is",
      skip: 1,
      each: ({ box }) =>
        f`IF(${box}="","",IF(AND(${tooCold}<>"",${box}<N(${tooCold})),"too cold",IF(AND(${tooWarm}<>"",${box}>N(${tooWarm})),"too warm",IF(OR(${tooCold}="",${tooWarm}=""),"no limit","ok"))))`,
      rules: [says("too cold", "stop"), says("too warm", "care"), says("no limit", "care")],
    },
    air: {
      title: "Air, h",
      spilled: ({ box }) =>
        eachLine`IF(${boxKind}="vented","vented",INDEX(VIV.BOXAIR(${start},${box},${litres},${elevation},"",${blanksKept(`${many}`)}),0,1))`,
      format: "whole",
      note: "Hours until a box that is shut tight must be aired, at the soonest, for the mass into the cold of each animal in it.",
    },
    least: {
      title: "Agreed, g",
      each: ({ date }) => f`IF(OR(${date}="",${start}="",${agreed}=""),"",${start}*(1-${agreed}))`,
      format: "tenth",
      note: "The mass at which the loss agreed with your vet is reached: the line in the chart.",
    },
  },
  { titleLines: 2, grows: true },
);
