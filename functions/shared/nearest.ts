/** How many letters must be put in, taken out or changed to make one word of the other (Levenshtein). */
export const editDistance = (one: string, other: string): number => {
  let before = Array.from({ length: other.length + 1 }, (_, j) => j);
  for (let i = 1; i <= one.length; i++) {
    const line = [i];
    for (let j = 1; j <= other.length; j++) {
      const changed = (before[j - 1] as number) + (one[i - 1] === other[j - 1] ? 0 : 1);
      line.push(Math.min(changed, (before[j] as number) + 1, (line[j - 1] as number) + 1));
    }
    before = line;
  }
  return before[other.length] as number;
};

/** The names that are spelled most like one that was not found, best first; capitals are of no matter. */
export const nearest = (names: readonly string[], sought: string, count: number): readonly string[] =>
  names
    .map((name) => ({ name, distance: editDistance(sought.toLowerCase(), name.toLowerCase()) }))
    .sort((one, other) => one.distance - other.distance)
    .slice(0, count)
    .map(({ name }) => name);
