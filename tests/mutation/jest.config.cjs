// A worker of its own would keep its coverage to itself.
const { workerIdleMemoryLimit: _, ...base } = require("../../jest.config.cjs");

/** The tests that bear on the arithmetic and the boundary; the hosts have their own. */
module.exports = {
  ...base,
  rootDir: "../..",
  modulePathIgnorePatterns: [],
  testEnvironment: "@stryker-mutator/jest-runner/jest-env/node",
  testMatch: ["<rootDir>/tests/{functions,boundary,readings}/**/*.test.ts", "<rootDir>/tests/examples.test.ts"],
};
