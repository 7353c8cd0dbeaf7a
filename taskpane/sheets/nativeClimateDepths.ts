import { cautions } from "../../functions/cautions";
import { cold, year } from "./nativeClimateMonths";
import { fromOf } from "./nativeClimatePictures";
import { WIDE } from "./nativeClimateSources";
import { choices, SOURCES } from "./nativeClimatePlaces";
import { f } from "./shared/formula";
import { log } from "./shared/log";
import { MONTHS } from "./shared/part";
import { picture } from "./shared/picture";
import { under } from "./shared/rules";
import { words } from "./shared/running";
import { rounded } from "./shared/words";

/** The year to plan by from the air down: what is left of day, night and season at some depths in bare ground. */

export const underGround = words("underGround", [3, WIDE], cautions.bareGround);

const { high, low } = year;
/** Depths in cm, as UNDERGROUND takes them in both systems. */
type Depth = 10 | 50 | 100;
const ready = (formula: string): string =>
  f`IF(OR(COUNT(${high})<12,COUNT(${low})<12,${choices.ground}=""),"",${formula})`;
const at = (depth: Depth, part: 1 | 2): string =>
  ready(`INDEX(VIV.UNDERGROUND(${high},${low},${depth},${choices.ground}),0,${part})`);
const night = { measures: "°C", format: "tenth", rules: [under(choices.cold, "cold")] } as const;
const day = { measures: "°C", format: "tenth" } as const;
const inAir = (column: unknown): string => f`IF(${String(column)}="","",${String(column)})`;

export const depths = log(
  "depths",
  12,
  {
    month: { title: "Month", label: MONTHS },
    highAir: { ...day, title: "High in air", spilled: inAir(high) },
    high10: { ...day, title: "High, 10 cm", spilled: at(10, 1) },
    high50: { ...day, title: "High, 50 cm", spilled: at(50, 1) },
    high100: { ...day, title: "High, 100 cm", spilled: at(100, 1) },
    lowAir: { ...night, title: "Low in air", spilled: inAir(low) },
    low10: { ...night, title: "Low, 10 cm", spilled: at(10, 2) },
    low50: { ...night, title: "Low, 50 cm", spilled: at(50, 2) },
    low100: { ...night, title: "Low, 100 cm", spilled: at(100, 2) },
  },
  { title: "From the air down: the year to plan by, in bare, even ground; blue is below your cold", titleLines: 2 },
);

const told = (words: string, of: "MAX" | "MIN", columns: readonly unknown[]): string => {
  const [air, ten, fifty, hundred] = columns.map((one) => rounded(`${of}(${String(one)})`));
  return `"${words} "&${air}&" °C in the air, "&${ten}&" °C at 10 cm, "&${fifty}&" °C at 50 cm, "&${hundred}&" °C at 100 cm"`;
};
const { highAir, high10, high50, high100, lowAir, low10, low50, low100 } = depths;
const summary = words(
  "depthsSummary",
  [3, WIDE],
  f`IF(COUNT(${low100})<12,"",${told("Lows of the coldest month:", "MIN", [lowAir, low10, low50, low100])}&". "&${told("Highs of the warmest:", "MAX", [highAir, high10, high50, high100])}&", on average, in ground of "&${choices.ground}&".")`,
);
export const depthsFrom = words(
  "depthsFrom",
  [4, WIDE],
  f`IF(COUNT(${low100})<12,"",IF(${choices.planBy}="${SOURCES[1]}",${fromOf.first},IF(${choices.planBy}="${SOURCES[2]}",${fromOf.second},${fromOf.estimate})))`,
);

export const down = [
  depths,
  picture([15, WIDE], {
    title: "From the air down",
    along: `${depths.month}`,
    axis: "°C",
    series: [
      {
        draw: "band",
        name: "In the air, night to day",
        low: `${lowAir}`,
        high: `${highAir}`,
        from: `${depthsFrom.said}`,
      },
      { draw: "band", name: "At 10 cm", low: `${low10}`, high: `${high10}`, from: `${depthsFrom.said}` },
      { draw: "band", name: "At 50 cm", low: `${low50}`, high: `${high50}`, from: `${depthsFrom.said}` },
      { draw: "band", name: "At 100 cm", low: `${low100}`, high: `${high100}`, from: `${depthsFrom.said}` },
      { draw: "threshold", name: "Cold", values: `${cold.threshold}` },
    ],
    summary: `${summary.said}`,
    cautions: ["bareGround"],
  }),
  summary,
] as const;
