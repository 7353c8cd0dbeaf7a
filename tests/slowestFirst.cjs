const { readFileSync } = require("node:fs");
const Sequencer = require("@jest/test-sequencer").default;

/** The longest that a test file lets one of its tests take, in ms. */
const patience = ({ path }) => {
  const asked = /jest\.setTimeout\((?:\w+ \* )?([\d_]+)\)/.exec(readFileSync(path, "utf8"));
  return asked ? Number(asked[1].replaceAll("_", "")) : 0;
};

/**
 * On a fresh clone nothing is known of how long a file takes, and jest would go by its length: a slow one that begins last
 * leaves a core idle for a minute. What asks for the most patience begins first; beyond that the order stays jest's.
 */
module.exports = class SlowestFirst extends Sequencer {
  sort(tests) {
    const sorted = [...super.sort(tests)];
    if (sorted.some(({ duration }) => duration !== undefined)) return sorted;
    return sorted.sort((one, other) => patience(other) - patience(one));
  }
};
