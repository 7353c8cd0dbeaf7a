import type { Left, LeftOut } from "../../functions/network/leaveOneOut";

const LINE = 22;
const TOP = 46;
const LABELS = 290;
const PANEL = 210;
const BETWEEN = 30;
const STEPS = [0, 1, 2, 3, 4];
const RADIUS = 5;

const across = (panel: number, kelvin: number): number =>
  LABELS + panel * (PANEL + BETWEEN) + (PANEL * kelvin) / (STEPS.at(-1) as number);

const text = (x: number, y: number, words: string, anchor = "middle"): string =>
  `<text x="${x}" y="${y}" text-anchor="${anchor}">${words}</text>`;

const grid = (panel: number, title: string, bottom: number): string =>
  [
    text(across(panel, 2), 16, title),
    ...STEPS.map(
      (kelvin) =>
        `<line class="quiet" x1="${across(panel, kelvin)}" x2="${across(panel, kelvin)}" y1="${TOP - 8}" y2="${bottom}" stroke-width="0.5"/>${text(across(panel, kelvin), 34, `${kelvin}`)}`,
    ),
  ].join("");

const marks = (panel: number, y: number, { off, nearest }: Left): string =>
  `<line class="quiet" x1="${across(panel, off)}" x2="${across(panel, nearest)}" y1="${y}" y2="${y}"/>` +
  `<rect class="other" x="${across(panel, nearest) - RADIUS}" y="${y - RADIUS}" width="${2 * RADIUS}" height="${2 * RADIUS}"/>` +
  `<circle class="own" cx="${across(panel, off)}" cy="${y}" r="${RADIUS}"/>`;

/** How far off the estimate was where a station was left out, beside the nearest station, as SVG that takes the page's colours. */
export const leaveOneOutDrawing = (lines: readonly LeftOut[], name: string): string => {
  const bottom = TOP + LINE * lines.length;
  const width = across(1, STEPS.at(-1) as number) + 12;
  const key = bottom + 26;
  const rows = lines.map(({ stations, number, highs, lows }, i) => {
    const y = TOP + LINE * i + LINE / 2;
    return `${text(LABELS - 14, y + 4, `${stations} (${number})`, "end")}${marks(0, y, highs)}${marks(1, y, lows)}`;
  });
  return [
    `<svg class="drawn" role="img" aria-label="${name}" viewBox="0 0 ${width} ${key + 12}" width="${width}" height="${key + 12}" xmlns="http://www.w3.org/2000/svg">`,
    grid(0, "Highs, K", bottom),
    grid(1, "Lows, K", bottom),
    ...rows,
    `<circle class="own" cx="${LABELS}" cy="${key - 4}" r="${RADIUS}"/>${text(LABELS + 12, key, "the estimate", "start")}`,
    `<rect class="other" x="${LABELS + 110}" y="${key - 4 - RADIUS}" width="${2 * RADIUS}" height="${2 * RADIUS}"/>${text(LABELS + 126, key, "the nearest station, 6.5 K per km", "start")}`,
    "</svg>",
  ].join("\n");
};
