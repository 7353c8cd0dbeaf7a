const { createRequire } = require("node:module");

/** What only tests need is installed under tests/. */
const { resolve } = createRequire(require.resolve("./tests/package.json"));

/** The spreadsheet engine's CommonJS files require a few packages that are ES modules only: these are transformed. */
const esModules = [
  "nanoid",
  "kdbush",
  "rbush",
  "quickselect",
  "cjk-regex",
  "unicode-regex",
  "regexp-util",
  "franc-min",
  "trigram-utils",
  "n-gram",
  "collapse-white-space",
  "numfmt",
  "suncalc",
  "vega-datasets",
  "arquero",
  "@uwdata",
  "@observablehq",
  "d3",
  "d3-[a-z-]+",
  "internmap",
  "interval-tree-1d",
  "isoformat",
  "delaunator",
  "robust-predicates",
  "binary-search-bounds",
  "marked",
  "strip-bom",
  "uuid",
];
const swc = [
  resolve("@swc/jest"),
  {
    jsc: {
      target: "es2022",
      parser: { syntax: "typescript", tsx: true },
      transform: { react: { runtime: "automatic" } },
    },
    module: { type: "commonjs" },
  },
];

/**
 * Tests run in a context of their own, in which every look at a global is dear: the spreadsheet engine, which makes objects by
 * the million, takes a third longer. These are handed to each module as arguments; what a test may put another in the place
 * of, such as `Date` or a timer, is not among them.
 */
const globals = (
  "Array ArrayBuffer BigInt Boolean DataView Error Float64Array Infinity Int32Array JSON Map Math Number Object Promise " +
  "Reflect RegExp Set String Symbol TypeError Uint8Array Uint32Array WeakMap WeakSet isFinite isNaN parseFloat parseInt"
).split(" ");

module.exports = {
  testEnvironment: "<rootDir>/tests/environment.cjs",
  sandboxInjectedGlobals: globals,
  modulePathIgnorePatterns: ["<rootDir>/.stryker-tmp", "<rootDir>/dist"],
  setupFilesAfterEnv: ["<rootDir>/tests/faults.ts", "<rootDir>/tests/network.ts"],
  testSequencer: "<rootDir>/tests/slowestFirst.cjs",
  // Those of tests/mutation are for the runner of changed numbers: the same proof stands in tests/native.
  testMatch: ["<rootDir>/tests/!(mutation)/**/*.test.{ts,tsx}", "<rootDir>/tests/*.test.{ts,tsx}"],
  transform: {
    "^.+\\.tsx?$": swc,
    [`node_modules/(${esModules.join("|")})/.+\\.m?js$`]: swc,
    "node_modules/@univerjs/.+\\.js$": "<rootDir>/addin/build/plainFields.cjs",
  },
  transformIgnorePatterns: [`/node_modules/(?!(.*/node_modules/)?(${[...esModules, "@univerjs"].join("|")})/)`],
  moduleNameMapper: { "^lodash-es$": resolve("lodash"), "\\.css$": "<rootDir>/tests/noStyles.cjs" },
  // Jest would leave one core idle: of two that is half.
  maxWorkers: "100%",
  workerIdleMemoryLimit: "1500MB",
};
