import { ELEVATION } from "../../functions/shared/limits";
import { block } from "./shared/address";
import { assemble } from "./shared/assemble";
import { cell, fields, heading, labels, LOG_ROWS, spilled, table, text } from "./shared/part";
import { animals, day, winter } from "./shared/scenario";
import { date, MASS, number } from "./shared/takes";
import { blanksKept, isoText } from "./shared/words";

const TABLE = 37;
const FIRST = TABLE + 1;
const CHART = 19;

const { juniper } = animals;
const [start, end, litres, elevation] = ["$B$8", "$B$9", "$B$10", "$B$11"] as const;
const [tooCold, tooWarm, agreed] = ["$B$12", "$B$13", "$B$14"] as const;

const dates = block(`A${FIRST}`, LOG_ROWS);
const temperatures = block(`B${FIRST}`, LOG_ROWS);
const masses = block(`C${FIRST}`, LOG_ROWS);
const losses = block(`D${FIRST}`, LOG_ROWS);

/** An invented winter, read and weighed once a week. */
const readings: readonly (readonly [iso: string, temperature: number, mass: number | null, seen?: string])[] = [
  ["2026-11-16", 8.1, 306, "Settled"],
  ["2026-11-23", 7.9, 305.5],
  ["2026-11-30", 8.2, 304.5, "Water changed"],
  ["2026-12-07", 8.0, 304],
  ["2026-12-14", 7.6, 303.5],
  ["2026-12-21", 7.8, 303.5, "Drank"],
  ["2026-12-28", 8.3, 303],
  ["2027-01-04", 10.4, 302, "Mild spell, aired"],
  ["2027-01-11", 8.4, 301.5],
  ["2027-01-18", 7.9, 301],
  ["2027-01-25", 8.0, 300.5],
  ["2027-01-28", 8.1, null, "Airing only"],
];
const filled = <T>(pick: (reading: (typeof readings)[number]) => T): readonly T[] => readings.map(pick);

const summary =
  `=IF(COUNT(${masses})=0,"",COUNT(${temperatures})&" readings from "&${isoText(`MIN(${dates})`)}&" to "&${isoText(`MAX(${dates})`)}` +
  `&": box "&ROUND(MIN(${temperatures}),1)&" to "&ROUND(MAX(${temperatures}),1)&" °C, mass "&ROUND(MAX(${masses}),1)&" down to "&ROUND(MIN(${masses}),1)&" g.")`;

export const winterLog = assemble(
  {
    key: "winterLog",
    name: "Winter log",
    sentence: "Box temperature, mass and air through the cold, and where the loss is heading.",
    cautions: ["noLossLimit", "openTheBox", "quietAnimal", "noVet"],
    sources: ["theilSen", "andrewsPough", "costanzo", "stubblefield", "practice"],
    widths: [23.5, 11, 8, 8, 8, 10.5, 14, 1, 15, 9.5],
    cautionColumns: ["I", "J"],
  },
  heading("A6", "This animal", null),
  fields("A7", [
    { label: "Animal", value: juniper.label },
    { label: "Mass into the cold, g", value: 306, format: "tenth", takes: number(MASS, "g") },
    {
      label: "Warming starts on",
      value: winter.dates[3] ?? null,
      format: "date",
      takes: date,
      note: "From the sheet Cooling plan. The cell may point there: ='Cooling plan'!E10.",
    },
    {
      label: "Inside of the box, litres",
      value: winter.boxLitres,
      format: "tenth",
      takes: number([0.05, 5000], "litres"),
    },
    { label: "Elevation of the house, m", value: 182, format: "whole", takes: number(ELEVATION, "m") },
    { label: "Too cold below, °C", value: 4, role: "setting", format: "tenth", takes: number([0, 30], "°C") },
    { label: "Too warm above, °C", value: 10, role: "setting", format: "tenth", takes: number([0, 30], "°C") },
    {
      label: "Loss agreed with your vet",
      value: 0.05,
      format: "percent",
      takes: number([0.001, 0.5]),
      note: "A share of the mass into the cold: 5 % is 0.05. Invented in the example.",
    },
  ]),
  heading("D6", "Loss by the trend", null, null, null),
  labels("D7", ["So far", "Per 30 days", "When warming starts"], 3),
  spilled(
    "G7",
    `=IF(OR(COUNTA(${masses})<3,${end}=""),"",TRANSPOSE(VIV.LOSSTREND(${blanksKept(dates)},${blanksKept(masses)},${end})))`,
    [3, 1],
    "percent",
  ),
  heading("D11", "Now", null, null, null),
  labels("D12", ["Last reading on", "Days left in the cold", "What stands out"], 3),
  cell("G12", "computed", `=IF(COUNT(${dates})=0,"",MAX(${dates}))`, { format: "date" }),
  cell("G13", "computed", `=IF(OR(G12="",${end}=""),"",IF(${end}>G12,${end}-G12,"over"))`, { format: "whole" }),
  text(
    "D15",
    `=IF(COUNTA(${dates})=0,"",IF(COUNTIF(${temperatures},"<"&${tooCold})>0,"STOP: the box was too cold. ","")&IF(COUNTIF(${temperatures},">"&${tooWarm})>0,"CARE: the box was too warm. ","")` +
      `&IF(G9="","",IF(${agreed}="","",IF(MAX(${losses})>${agreed},"STOP: lost more than agreed, ask your vet. ",IF(G9>${agreed},"CARE: heading past the agreed loss. ","")))))`,
    3,
    4,
  ),
  {
    charts: [
      {
        title: "Mass in the cold",
        area: `A${CHART}:G${CHART + 13}`,
        along: dates,
        axis: "g",
        series: [{ draw: "line", name: "Mass", values: masses }],
        summary: `A${CHART + 14}`,
      },
    ],
  },
  text(`A${CHART + 14}`, summary, 2, 7),
  table({
    at: `A${TABLE}`,
    rows: LOG_ROWS,
    columns: [
      { title: "Date", input: filled(([iso]) => day(iso)), format: "date", takes: date },
      {
        title: "Box °C",
        input: filled(([, temperature]) => temperature),
        format: "tenth",
        takes: number([-30, 60], "°C"),
      },
      { title: "Mass g", input: filled(([, , mass]) => mass), format: "tenth", takes: number(MASS, "g") },
      {
        title: "Lost",
        spilled: `=IF(OR(COUNTA(${masses})=0,${start}=""),"",IF(${masses}="","",VIV.MASSLOSS(${start},${masses})))`,
        format: "percent",
        note: "Of the mass into the cold. A gain is negative.",
      },
      {
        title: "Air h",
        spilled:
          `=IF(OR(COUNTA(${temperatures})=0,${start}="",${litres}="",${elevation}=""),"",` +
          `IF(${temperatures}="","",INDEX(VIV.BOXAIR(${start},${temperatures},${litres},${elevation}),0,1)))`,
        format: "whole",
        note: "Hours until a box that is shut tight must be aired, at the soonest, for the mass into the cold.",
      },
      {
        title: "Sign",
        each: (row) => `=IF(B${row}="","",IF(B${row}<${tooCold},"too cold",IF(B${row}>${tooWarm},"too warm","ok")))`,
      },
      { title: "Seen and done", input: filled(([, , , seen]) => seen ?? null) },
    ],
  }),
  {
    rules: [
      { range: block(`B${FIRST}`, LOG_ROWS), when: `=AND(ISNUMBER($B${FIRST}),$B${FIRST}<${tooCold})`, look: "stop" },
      { range: block(`B${FIRST}`, LOG_ROWS), when: `=AND(ISNUMBER($B${FIRST}),$B${FIRST}>${tooWarm})`, look: "care" },
      { range: block(`F${FIRST}`, LOG_ROWS), when: `=$F${FIRST}="too cold"`, look: "stop" },
      { range: block(`F${FIRST}`, LOG_ROWS), when: `=$F${FIRST}="too warm"`, look: "care" },
      {
        range: block(`D${FIRST}`, LOG_ROWS),
        when: `=AND(ISNUMBER($D${FIRST}),ISNUMBER(${agreed}),$D${FIRST}>${agreed})`,
        look: "stop",
      },
    ],
  },
);
