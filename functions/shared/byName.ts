/** The rows of one name of a long table. */
export interface Group {
  /** As it is spelled where it stands first. */
  readonly name: string;
  readonly rows: readonly number[];
}

/** Two names are the same whatever their capitals and the spaces around them. */
export const keyOf = (name: string): string => name.trim().normalize().toLowerCase();

/** The rows of each name, by its key, in the order in which the names first stand; rows without a name are in none. */
export const byName = (names: readonly (string | undefined)[]): ReadonlyMap<string, Group> => {
  const groups = new Map<string, { name: string; rows: number[] }>();
  const spelled = new Map<string, number[]>(); // most rows repeat a spelling: one look is enough for them
  for (let row = 0; row < names.length; row++) {
    const name = names[row];
    if (name === undefined) continue;
    let rows = spelled.get(name);
    if (!rows) {
      const key = keyOf(name);
      const group = groups.get(key) ?? { name: name.trim(), rows: [] };
      groups.set(key, group);
      rows = group.rows;
      spelled.set(name, rows);
    }
    rows.push(row);
  }
  return groups;
};
