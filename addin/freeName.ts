/** A sheet's name that is not taken: "Winter log", "Winter log (2)", ... at most 31 characters, as all programs allow. */
export const freeName = (wanted: string, taken: readonly string[]): string => {
  const used = new Set(taken.map((name) => name.toLowerCase()));
  for (let i = 1; ; i++) {
    const tail = i === 1 ? "" : ` (${i})`;
    const name = `${wanted.slice(0, 31 - tail.length)}${tail}`;
    if (!used.has(name.toLowerCase())) return name;
  }
};
