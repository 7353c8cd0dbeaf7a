import { areaOf } from "../actions/place";
import type { Block, Sheet } from "../sheets/sheet";

const ROWS = 34;
const COLUMNS = 14;
const ROW = 3; // heights and widths are the picture's own measure: a row is 3, a character 1

/** The cells of a block that hold something, each as long as its text, at most as wide as its column. */
const marks = (block: Block, left: readonly number[], widths: readonly number[]) => {
  const at = areaOf(block.at);
  if (!at) return [];
  const [spillRows, spillColumns] = block.spills ?? [block.rows.length, block.rows[0]?.length ?? 0];
  const found = [];
  for (let row = 0; row < spillRows && at.row + row < ROWS; row++) {
    for (let column = 0; column < spillColumns && at.column + column < COLUMNS; column++) {
      const content = block.spills ? "=" : block.rows[row]?.[column];
      if (content === null || content === undefined || content === "") continue;
      const text = String(content);
      const room = widths[at.column + column] ?? 9;
      const isFormula = text.startsWith("=");
      const length = block.role === "title" || block.role === "text" ? text.length : Math.min(text.length, room - 1);
      found.push({
        x: left[at.column + column] ?? 0,
        y: (at.row + row) * ROW,
        width: isFormula ? Math.max(1, room - 2) : Math.max(1, length),
        role: block.role,
      });
    }
  }
  return found;
};

/** A small drawing of a sheet, from the same data as the sheet: where the keeper writes, what is worked out, the charts. */
export const Miniature = ({ sheet }: { readonly sheet: Sheet }) => {
  const widths = Array.from({ length: COLUMNS }, (_, i) => sheet.widths[i] ?? 9);
  const left = widths.reduce<number[]>((sums, width) => [...sums, (sums.at(-1) ?? 0) + width], [0]);
  const end = left[COLUMNS] ?? 0;
  return (
    <svg
      className="miniature"
      viewBox={`0 0 ${end} ${ROWS * ROW}`}
      preserveAspectRatio="none"
      aria-hidden="true"
      focusable="false"
    >
      {sheet.blocks
        .flatMap((block) => marks(block, left, widths))
        .map(({ role, ...mark }, i) => (
          <rect key={i} {...mark} height={ROW - 1} className={role} />
        ))}
      {sheet.charts.map(({ area }) => {
        const place = areaOf(area);
        if (!place) return null;
        const x = left[Math.min(place.column, COLUMNS)] ?? end;
        const width = (left[Math.min(place.column + place.columns, COLUMNS)] ?? end) - x;
        const [y, height] = [place.row * ROW, place.rows * ROW];
        const wave = `M${x} ${y + height * 0.75} Q${x + width / 4} ${y + height * 0.7} ${x + width / 2} ${y + height / 4} T${x + width} ${y + height * 0.75}`;
        return (
          <g key={area}>
            <rect x={x} y={y} width={width} height={height} className="chart" />
            <path d={wave} />
          </g>
        );
      })}
    </svg>
  );
};
