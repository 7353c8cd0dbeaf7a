import type { Standing } from "./words";

/** A station's mark about a point: the shape alone says where it stands to the band. `r` is half the width. */
export const shapeOf = (standing: Standing, x: number, y: number, r: number): string =>
  standing === "below"
    ? `M${x - r},${y - 0.8 * r}h${2 * r}l${-r},${1.8 * r}z`
    : standing === "above"
      ? `M${x - r},${y + 0.8 * r}h${2 * r}l${-r},${-1.8 * r}z`
      : `M${x - r},${y}a${r},${r} 0 1 0 ${2 * r},0a${r},${r} 0 1 0 ${-2 * r},0z`;

/** The mark in a line of words, which say the same. */
export const Mark = ({ of }: { readonly of: Standing }) => (
  <svg className="stationMark" viewBox="-7 -7 14 14" aria-hidden="true">
    <path className={of} d={shapeOf(of, 0, 0, 4.5)} />
  </svg>
);
