import type { Band } from "../../../functions/network/network";
import { inWords, MONTHS, type Reach, type YearFigures } from "./year";

const TOP = 16; // px, the words over an axis stand there
const AIR = 120; // px, the height of the temperatures
const WET = 44; // px, the height of the rain
const GAP = 28; // px, between the two, for the lowest figure of one and the words of the other
const LEFT = 30;
const RIGHT = 6;

interface YearChartProps {
  readonly of: YearFigures;
  readonly reach: Reach;
  /** px of the drawing, which grows and shrinks with the pane. */
  readonly width: number;
}

/**
 * Highs and lows over the months, each a line in its band, and rain below on the same months. Plain elements: a chart of
 * the drawing library brings a style element along, which the pane's page does not allow.
 */
export const YearChart = ({ of, reach, width }: YearChartProps) => {
  const { coldest, warmest, wettest } = reach;
  const inner = width - LEFT - RIGHT;
  const x = (month: number): number => LEFT + (inner * (month + 0.5)) / MONTHS.length;
  const y = (celsius: number): number => TOP + (AIR * (warmest - celsius)) / (warmest - coldest);
  const step = warmest - coldest > 30 ? 10 : 5;
  const first = Math.ceil(coldest / step) * step;
  const ticks = Array.from({ length: Math.floor((warmest - first) / step) + 1 }, (_, i) => first + i * step);

  const rainTop = TOP + AIR + GAP;
  const bottom = wettest > 0 ? rainTop + WET : TOP + AIR;
  const tall = (mm: number): number => (WET * mm) / wettest;
  const bar = (inner / MONTHS.length) * 0.7;

  const points = (bands: readonly Band[], of: keyof Band): string[] =>
    bands.map((band, month) => `${x(month).toFixed(1)},${y(band[of]).toFixed(1)}`);
  const band = (bands: readonly Band[], kind: string) => (
    <g className={kind}>
      {bands.some(({ least, most }) => most > least) && (
        <polygon points={[...points(bands, "most"), ...points(bands, "least").reverse()].join(" ")} />
      )}
      <polyline points={points(bands, "likely").join(" ")} />
    </g>
  );

  return (
    <svg className="yearChart" viewBox={`0 0 ${width} ${bottom + 16}`} role="img" aria-label={inWords(of)}>
      <text x={0} y={10}>
        °C
      </text>
      {ticks.map((tick) => (
        <g key={tick} className={tick === 0 ? "grid zero" : "grid"}>
          <line x1={LEFT} x2={width - RIGHT} y1={y(tick)} y2={y(tick)} />
          <text x={LEFT - 5} y={y(tick) + 4} textAnchor="end">
            {tick < 0 ? `−${-tick}` : tick}
          </text>
        </g>
      ))}
      {band(of.low, "low")}
      {band(of.high, "high")}
      {wettest > 0 && (
        <g className="rain">
          <text x={0} y={rainTop - 8}>
            {of.rain.some((mm) => Number.isNaN(mm)) ? "Rain not reported" : "mm of rain"}
          </text>
          {[wettest, 0].map((mm) => (
            <g key={mm} className={mm === 0 ? "grid zero" : "grid"}>
              <line x1={LEFT} x2={width - RIGHT} y1={bottom - tall(mm)} y2={bottom - tall(mm)} />
              <text x={LEFT - 5} y={bottom - tall(mm) + 4} textAnchor="end">
                {mm}
              </text>
            </g>
          ))}
          {of.rain.map((mm, month) =>
            Number.isNaN(mm) ? null : (
              <rect key={month} x={x(month) - bar / 2} width={bar} y={bottom - tall(mm)} height={tall(mm)} />
            ),
          )}
        </g>
      )}
      {MONTHS.map((month, i) => (
        <text key={month} x={x(i)} y={bottom + 13} textAnchor="middle">
          {month[0]}
        </text>
      ))}
    </svg>
  );
};
