/** Functions that were read in this visit, the latest first; nothing of it outlives the page. */
let used: readonly string[] = [];
const KEPT = 4;

export const noteUsed = (name: string): void => {
  used = [name, ...used.filter((one) => one !== name)].slice(0, KEPT);
};
export const lastUsed = (): readonly string[] => used;
