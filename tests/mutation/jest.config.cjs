// A worker of its own would keep its coverage to itself.
const { workerIdleMemoryLimit: _, ...base } = require("../../jest.config.cjs");

module.exports = {
  ...base,
  rootDir: "../..",
  modulePathIgnorePatterns: [],
  testEnvironment: require.resolve("./environment.cjs"),
  testMatch: ["<rootDir>/tests/mutation/together.ts"],
};
