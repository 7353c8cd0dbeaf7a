/** Where names stand on the map, so that they cover nothing that matters. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface Wanted {
  /** From the fullest to the shortest. */
  readonly texts: readonly string[];
  readonly x: number;
  readonly y: number;
  /** px between the mark's middle and the words. */
  readonly gap: number;
}

export interface Label {
  readonly text: string;
  readonly x: number;
  readonly y: number;
}

const LETTER = 6.4; // px, the mean width of a bold letter of 11 px in the system's font
const LINE = 13; // px

export const boxAround = (x: number, y: number, r: number): Box => ({
  left: x - r,
  top: y - r,
  right: x + r,
  bottom: y + r,
});

const overlap = (one: Box, other: Box): boolean =>
  one.right >= other.left && one.left <= other.right && one.bottom >= other.top && one.top <= other.bottom;

/** The first free of eight sides, with the fullest text that finds one; what finds none is left out. */
export const placeLabels = (
  wanted: readonly Wanted[],
  covered: readonly Box[],
  width: number,
  height: number,
): readonly Label[] => {
  const taken = [...covered];
  const place = ({ texts, x, y, gap }: Wanted): Label[] => {
    for (const text of texts) {
      const wide = text.length * LETTER + 4;
      const [right, left] = [gap, -gap - wide];
      const sides = [
        [right, -LINE / 2],
        [left, -LINE / 2],
        [-wide / 2, -gap - LINE],
        [-wide / 2, gap],
        [right, 5],
        [left, 5],
        [right, -18],
        [left, -18],
      ] as const;
      for (const [dx, dy] of sides) {
        const box = { left: x + dx, top: y + dy, right: x + dx + wide, bottom: y + dy + LINE };
        const fits = box.left > 2 && box.right < width - 2 && box.top > 2 && box.bottom < height - 2;
        if (fits && !taken.some((other) => overlap(box, other))) {
          taken.push(box);
          return [{ text, x: box.left + 2, y: box.bottom - 3 }];
        }
      }
    }
    return [];
  };
  return wanted.flatMap(place);
};
