import { type Problem, notUsable } from "../../problem";

/** Readings in the order of time; readings of the same moment in the order of temperature, so that rows may be mixed. */
export interface Series {
  readonly times: Float64Array;
  readonly temperatures: Float64Array;
  /** The times of the rows whose temperature is blank or cannot be read. */
  readonly skipped: readonly number[];
  /** How many temperatures stand beside no time that can be read. */
  readonly untimed: number;
}

/** Whether every row is whole and in order, as loggers write them: nothing needs to be copied then. */
const isSeries = (times: Float64Array, temperatures: Float64Array): boolean => {
  let before = -Infinity;
  let last = -Infinity;
  for (let i = 0; i < times.length; i++) {
    const time = times[i] as number;
    const temperature = temperatures[i] as number;
    // A comparison with NaN is false, whatever it is with.
    if (!(time > before ? temperature > -Infinity : time === before && temperature >= last)) return false;
    before = time;
    last = temperature;
  }
  return true;
};

/** Whole rows in order. */
const inOrder = (times: Float64Array, temperatures: Float64Array): Pick<Series, "times" | "temperatures"> => {
  if (isSeries(times, temperatures)) return { times, temperatures };
  // Loggers write long runs in order, or in reverse: this sort takes one look at each of their rows.
  const order = Array.from(times.keys()).sort(
    (a, b) => (times[a] as number) - (times[b] as number) || (temperatures[a] as number) - (temperatures[b] as number),
  );
  return {
    times: Float64Array.from(order, (i) => times[i] as number),
    temperatures: Float64Array.from(order, (i) => temperatures[i] as number),
  };
};

/**
 * The readings of two columns, NaN where a cell is blank or cannot be read; or the problem: columns of different lengths,
 * or nothing that can be read in them.
 */
export const seriesOf = (times: Float64Array, temperatures: Float64Array): Series | Problem => {
  if (times.length !== temperatures.length) {
    return notUsable(`times holds ${times.length} cells and temperatures ${temperatures.length}: give as many of each`);
  }
  if (isSeries(times, temperatures)) return { times, temperatures, skipped: [], untimed: 0 };

  const whole = { times: new Float64Array(times.length), temperatures: new Float64Array(times.length) };
  const skipped: number[] = [];
  let untimed = 0;
  let length = 0;
  for (let i = 0; i < times.length; i++) {
    const time = times[i] as number;
    const temperature = temperatures[i] as number;
    if (Number.isNaN(time)) {
      if (!Number.isNaN(temperature)) untimed++;
    } else if (Number.isNaN(temperature)) {
      skipped.push(time);
    } else {
      whole.times[length] = time;
      whole.temperatures[length] = temperature;
      length++;
    }
  }
  if (length === 0) {
    return notUsable(
      skipped.length === 0
        ? "times holds no date and time that can be read"
        : "temperatures holds no number that can be read beside a time",
    );
  }
  return { ...inOrder(whole.times.subarray(0, length), whole.temperatures.subarray(0, length)), skipped, untimed };
};
