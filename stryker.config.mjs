/** Mutation testing of the arithmetic and of the boundary: `npm run mutate`. */
export default {
  testRunner: "jest",
  // One file that loads all tests is related to everything.
  jest: { configFile: "tests/mutation/jest.config.cjs", enableFindRelatedTests: false },
  coverageAnalysis: "perTest",
  // Lists of words; a changed word is seen by a reader, not by arithmetic.
  mutate: [
    "functions/**/*.ts",
    "addin/boundary/**/*.ts",
    "!functions/sources.ts",
    "!functions/cautions.ts",
    "!functions/catalogue.ts",
    "!functions/release.ts",
  ],
  mutator: { excludedMutations: ["StringLiteral"] },
  // What is only run while a module loads (words, limits, lists) would need every test again for each mutant.
  ignoreStatic: true,
  reporters: ["clear-text", "progress", "json", "html"],
  jsonReporter: { fileName: "reports/mutation/mutation.json" },
  htmlReporter: { fileName: "reports/mutation/mutation.html" },
  thresholds: { high: 95, low: 90, break: 90 },
  concurrency: 2,
  timeoutMS: 20_000,
  ignorePatterns: ["dist", "reports", "manifest/pictures"],
  tempDirName: ".stryker-tmp",
};
