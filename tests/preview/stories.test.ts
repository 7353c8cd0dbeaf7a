import { playStories } from "./stories";

/** A few at each run of the suite, always the same; `npm run stories -- 500 7` plays 500 others, from seed 7. */
const count = Number(process.env.STORIES ?? 80);
const seed = Number(process.env.SEED ?? 5);

jest.setTimeout(count * 60_000);

test(`${count} stories of seed ${seed}: either the new workbook stands whole, or the old one does`, () =>
  playStories(count, seed));
