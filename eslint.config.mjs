import { createRequire } from "node:module";

// What only checks need is installed under tests/.
const require = createRequire(new URL("./tests/package.json", import.meta.url));
const prettier = require("eslint-config-prettier");
const tseslint = require("typescript-eslint");

/** Imports run one way: functions <- taskpane <- addin. tests/layers.test.ts holds the same rule over the whole tree. */
const forbid = (files, folders, message) => ({
  files,
  rules: { "no-restricted-imports": ["error", { patterns: [{ regex: `(^|/)(${folders.join("|")})(/|$)`, message }] }] },
});

export default tseslint.config(
  { ignores: ["node_modules/", "dist/", "reports/", ".stryker-tmp/"] },
  ...tseslint.configs.strictTypeChecked,
  ...tseslint.configs.stylisticTypeChecked,
  {
    languageOptions: { parserOptions: { projectService: { allowDefaultProject: ["*.cjs", "*.mjs", "*.js"] } } },
    rules: {
      // A named cell of a sheet prints as its name, and the page turns that into its address.
      "@typescript-eslint/restrict-template-expressions": [
        "error",
        { allowNumber: true, allow: [{ from: "file", name: ["Cell", "RowCell", "Column"] }] },
      ],
      "@typescript-eslint/no-confusing-void-expression": ["error", { ignoreArrowShorthand: true }],
      // A port answers a promise whether or not this host has to wait.
      "@typescript-eslint/require-await": "off",
      // `x as number` says what is known; `x!` says nothing.
      "@typescript-eslint/non-nullable-type-assertion-style": "off",
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_", varsIgnorePattern: "^_" }],
    },
  },
  forbid(["functions/**/*.{ts,tsx}"], ["taskpane", "addin"], "functions/ knows neither the pane nor the add-in"),
  forbid(["taskpane/**/*.{ts,tsx}"], ["addin"], "taskpane/ knows functions/ and the Workbook port only"),
  {
    files: ["**/*.{mjs,cjs,js}"],
    extends: [tseslint.configs.disableTypeChecked],
    rules: { "@typescript-eslint/no-require-imports": "off" },
  },
  // A sheet's file is read like the sheet, and so whole: what is long is parted by what it shows.
  { files: ["taskpane/sheets/*.ts"], rules: { "max-lines": ["error", 200] } },
  prettier,
);
