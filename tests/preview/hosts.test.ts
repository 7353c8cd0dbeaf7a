import { playOnHosts } from "./hosts";

/** A few at each run of the suite, always the same; `npm run stories -- 500 7` plays 500 others, from seed 7. */
const count = Number(process.env.STORIES ?? 8);
const seed = Number(process.env.SEED ?? 5);

jest.setTimeout(count * 60_000);

test(`${count} stories of seed ${seed}: the preview, Excel and their files hold the same`, () =>
  playOnHosts(count, seed));
