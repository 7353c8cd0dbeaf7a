import { memo } from "react";
import type { Station } from "../../../../functions/network/station";
import { shapeOf } from "../Mark";
import type { Belt, Spot } from "../readPlace";
import type { Speaking } from "../speaking";
import { metres, standing, type Standing } from "../words";
import { boxAround, placeLabels, type Wanted } from "./labels";
import { isInView, kmPerPixel, RADIANS, toMap, type View } from "./view";

/** px a radian: names appear, and stations beyond the edge are pointed to. */
const NAMES_FROM = 250;
const BEYOND_FROM = 1500;
/** One scale holds for the whole map from here on. */
const SCALE_BAR_FROM = 120;
const LONGEST_BAR = 90; // px
const SHOWN_BEYOND = 3;

interface MarksProps {
  readonly view: View;
  readonly stations: readonly Station[];
  /** The stations to be named, best first. */
  readonly best: readonly Speaking[];
  readonly belt: Belt | undefined;
  readonly spot: Spot | undefined;
  /** The cross on its way, before it is picked. */
  readonly cross: Spot | undefined;
  readonly lit: Station | undefined;
}

const tenth = (value: number): number => Math.round(value * 10) / 10;

const short = (name: string): string => (name.length > 18 ? `${name.slice(0, 17)}…` : name);
const textsOf = ({ name, elevation }: Station, more = ""): readonly string[] => [
  `${short(name)} ${metres(elevation)}${more}`,
  short(name) + more,
];

const Cross = ({ at: [x, y], kind }: { readonly at: readonly [number, number]; readonly kind: string }) => {
  const d = `M${x - 11},${y}h8M${x + 3},${y}h8M${x},${y - 11}v8M${x},${y + 3}v8`;
  return (
    <>
      <path className="halo" d={d} />
      <path className={kind} d={d} />
    </>
  );
};

const ScaleBar = ({ view }: { readonly view: View }) => {
  const most = LONGEST_BAR * kmPerPixel(view);
  const power = 10 ** Math.floor(Math.log10(most));
  const km = ([5, 2, 1].find((times) => times * power <= most) ?? 1) * power;
  const d = `M10,${view.height - 14}v5h${tenth(km / kmPerPixel(view))}v-5`;
  return (
    <>
      <path className="halo" d={d} />
      <path className="bar" d={d} />
      <text x={14} y={view.height - 13}>{`${km} km`}</text>
    </>
  );
};

/** Stations, the place and the names over the ground. One path a kind: thousands of stations are four elements. */
export const Marks = memo(function Marks({ view, stations, best, belt, spot, cross, lit }: MarksProps) {
  const { width, height, scale } = view;
  const size = Math.min(5, Math.max(1.2, 1.2 + Math.log2(scale / 60) * 0.65));
  const lesser = size * Math.min(0.92, Math.max(0.5, 0.4 + scale / 600));
  const paths: Record<Standing, string> = { below: "", above: "", inside: "" };
  // Of marks of one kind that would cover one another, one is drawn.
  const filled = new Set<number>();
  for (const station of stations) {
    const [x, y] = toMap(view, station);
    if (x < -9 || y < -9 || x > width + 9 || y > height + 9) continue;
    const kind = belt ? standing(station.elevation, belt) : "inside";
    const cell =
      (Math.round(x / size) * 4096 + Math.round(y / size)) * 4 + (kind === "below" ? 0 : kind === "above" ? 1 : 2);
    if (filled.has(cell)) continue;
    filled.add(cell);
    paths[kind] += shapeOf(kind, tenth(x), tenth(y), tenth(belt && kind === "inside" ? size : lesser));
  }

  const named: Wanted[] = [];
  const beyond: { readonly x: number; readonly y: number; readonly angle: number; readonly kind: Standing }[] = [];
  if (lit) {
    const [x, y] = toMap(view, lit);
    named.push({ texts: textsOf(lit), x, y, gap: 9 });
  }
  if (spot && belt && scale > NAMES_FROM) {
    for (const { station, km } of best) {
      if (isInView(view, station)) {
        const [x, y] = toMap(view, station);
        if (station !== lit) named.push({ texts: textsOf(station), x, y, gap: 8 });
      } else if (scale > BEYOND_FROM && beyond.length < SHOWN_BEYOND && isInView(view, spot)) {
        // Where the line from the place to the station leaves the map, clear of the buttons and the bar.
        const [px, py] = toMap(view, spot);
        const [dx, dy] = toMap(view, station).map((value, i) => value - (i === 0 ? px : py)) as [number, number];
        const t = Math.min(
          ((dx > 0 ? width - 52 : 14) - px) / (dx || 1e-9),
          ((dy > 0 ? height - 40 : 14) - py) / (dy || 1e-9),
        );
        if (t <= 0) continue;
        const [x, y] = [tenth(px + t * dx), tenth(py + t * dy)];
        beyond.push({ x, y, angle: Math.atan2(dy, dx) / RADIANS, kind: standing(station.elevation, belt) });
        named.push({ texts: textsOf(station, `, ${Math.round(km)} km`), x, y, gap: 14 });
      }
    }
  }
  const crosses = [spot, cross].flatMap((at) => (at ? [toMap(view, at).map(tenth) as [number, number]] : []));
  const covered = [
    { left: width - 44, top: 0, right: width, bottom: 120 },
    { left: 0, top: height - 30, right: 110, bottom: height },
    ...crosses.map(([x, y]) => boxAround(x, y, 10)),
    ...beyond.map(({ x, y }) => boxAround(x, y, 10)),
    ...best.map(({ station }) => boxAround(...toMap(view, station), size)),
  ];
  const labels = placeLabels(named, covered, width, height);

  return (
    <svg className="marks" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      <g strokeWidth={Math.min(1.3, Math.max(0.45, size / 3))}>
        {(["below", "above", "inside"] as const).map((kind) => (
          <path key={kind} className={kind} d={paths[kind]} />
        ))}
      </g>
      {beyond.map(({ x, y, angle, kind }) => (
        <g key={`${x},${y}`}>
          <path className={kind} d={shapeOf(kind, x, y, size)} />
          <path className="bar" d="M8,0h6m-3,-3l3,3l-3,3" transform={`translate(${x},${y}) rotate(${angle})`} />
        </g>
      ))}
      {lit && <circle className="lit" cx={toMap(view, lit)[0]} cy={toMap(view, lit)[1]} r={size + 4} />}
      {labels.map(({ text, x, y }) => (
        <text key={text} x={x} y={y}>
          {text}
        </text>
      ))}
      {spot && <Cross at={toMap(view, spot).map(tenth) as [number, number]} kind="place" />}
      {cross && <Cross at={toMap(view, cross).map(tenth) as [number, number]} kind="cross" />}
      {scale > SCALE_BAR_FROM && <ScaleBar view={view} />}
    </svg>
  );
});
