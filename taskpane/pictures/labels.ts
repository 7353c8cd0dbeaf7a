export const wrapped = (name: string, most: number): readonly string[] =>
  name.split(" ").reduce<string[]>((lines, part) => {
    const last = lines.at(-1);
    if (last !== undefined && last.length + part.length < most) lines[lines.length - 1] = `${last} ${part}`;
    else lines.push(part);
    return lines;
  }, []);

/** Rows of labels such that none covers another: for each, the lowest row that is free where the label stands. */
export const lanesOf = (places: readonly { readonly middle: number; readonly wide: number }[]): readonly number[] => {
  const ends: number[] = [];
  return places.map(({ middle, wide }) => {
    const free = ends.findIndex((end) => end <= middle - wide / 2);
    const lane = free < 0 ? ends.length : free;
    ends[lane] = middle + wide / 2 + 4;
    return lane;
  });
};

/** Places of labels beside the plot, moved apart so that none covers another. */
export const apart = (
  wanted: readonly { readonly y: number; readonly tall: number }[],
  top: number,
  bottom: number,
): readonly number[] => {
  const order = wanted.map((_, i) => i).sort((a, b) => (wanted[a]?.y ?? 0) - (wanted[b]?.y ?? 0));
  const placed = wanted.map(({ y }) => y);
  let from = top;
  for (const i of order) {
    const tall = wanted[i]?.tall ?? 0;
    placed[i] = Math.max(placed[i] ?? 0, from + tall / 2);
    from = (placed[i] ?? 0) + tall / 2;
  }
  let until = Math.max(bottom, top);
  for (const i of [...order].reverse()) {
    const tall = wanted[i]?.tall ?? 0;
    placed[i] = Math.min(placed[i] ?? 0, until - tall / 2);
    until = (placed[i] ?? 0) - tall / 2;
  }
  return placed;
};
