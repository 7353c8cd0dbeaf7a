/** A line of the tables that the benchmark prints. */
export interface Line {
  readonly what: string;
  readonly milliseconds?: number;
  /** How many times as much processor time as the contestant that it is held against; below 1 is faster. */
  readonly ratio?: number;
  readonly against?: string;
  /** The most that the ratio may be. */
  readonly allowed?: number;
  /** What does not fit into the columns. */
  readonly note?: string;
  /** What the README tells of it, by the names that tests/proven.md has for it behind "bench." or the table's own. */
  readonly told?: Readonly<Record<string, number>>;
  /** Not measured here, and why: of such a run nothing is kept. */
  readonly missing?: string;
}

export interface Table {
  readonly title: string;
  /** What tests/proven.json calls a run of it, where that is not "bench". */
  readonly run?: string;
  readonly lines: readonly Line[];
}

/** Whether a line keeps to what it is allowed; one that has no ratio to show does not. */
export const keeps = ({ ratio, allowed }: Line): boolean => allowed === undefined || (ratio ?? Infinity) <= allowed;

/** What was allowed and not kept, a line each. */
export const missed = (tables: readonly Table[]): string[] =>
  tables.flatMap(({ title, lines }) =>
    lines
      .filter((line) => !keeps(line))
      .map(({ what, ratio, allowed }) => `${title}, ${what}: ${ratio?.toFixed(2) ?? "no ratio"}, allowed ${allowed}`),
  );

/** What the README tells of these tables, by the name of the run; undefined where a part was not measured. */
export const toldOf = (tables: readonly Table[]): ReadonlyMap<string, Readonly<Record<string, number>>> | undefined => {
  const told = new Map<string, Record<string, number>>();
  for (const { run = "bench", lines } of tables) {
    if (lines.some(({ missing }) => missing !== undefined)) return undefined;
    told.set(run, Object.assign(told.get(run) ?? {}, ...lines.map((line) => line.told)) as Record<string, number>);
  }
  return told;
};

export interface Contestant {
  readonly what: string;
  readonly run: () => unknown;
  /** The contestant that it is held against, and the most that the ratio may be. */
  readonly against?: string;
  readonly allowed?: number;
  readonly note?: string;
}

export const median = (numbers: readonly number[]): number => {
  const inOrder = [...numbers].sort((a, b) => a - b);
  return inOrder[inOrder.length >> 1] as number;
};

/** The last answers are kept where the compiler cannot see that nobody reads them. */
export const kept: unknown[] = [];

/** Processor time of this process, in ms: what else the machine does lengthens the time on the clock, and hardly this. */
export const processorTime = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/**
 * Runs the contestants in turn, round after round, so that a busy machine is busy for all of them. Of the rounds after the
 * first few, in which the engine compiles, the median counts, and of the ratios that of the rounds' own ratios.
 */
export const race = async (contestants: readonly Contestant[], rounds = 15, warmUps = 5): Promise<Line[]> => {
  const times = new Map<string, number[]>(contestants.map(({ what }) => [what, []]));
  const work = new Map<string, number[]>(contestants.map(({ what }) => [what, []]));
  for (let round = 0; round < warmUps + rounds; round++) {
    for (const { what, run } of contestants) {
      kept.length = 0;
      globalThis.gc?.({ type: "minor" }); // what one leaves behind is not counted against the next
      const [start, begun] = [performance.now(), processorTime()];
      kept.push(await run());
      const [worked, time] = [processorTime() - begun, performance.now() - start];
      if (round < warmUps) continue;
      times.get(what)?.push(time);
      work.get(what)?.push(worked);
    }
  }
  return contestants.map(({ what, against, allowed, note }) => {
    const own = work.get(what) as number[];
    const other = against === undefined ? undefined : work.get(against);
    return {
      what,
      milliseconds: median(times.get(what) as number[]),
      ...(other ? { ratio: median(own.map((time, i) => time / (other[i] as number))), against } : {}),
      ...(allowed === undefined ? {} : { allowed }),
      ...(note === undefined ? {} : { note }),
    };
  });
};

/** Two ways to the same figures have to agree before their times are worth a comparison. */
export const agree = (what: string, one: number, other: number, within: number): void => {
  if (!(Math.abs(one - other) <= within)) throw new Error(`${what}: ${one} and ${other} do not agree`);
};
