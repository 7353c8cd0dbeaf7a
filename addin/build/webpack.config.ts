import { createRequire } from "node:module";
import { join, sep } from "node:path";
import CssPlugin from "mini-css-extract-plugin";
import Minify from "terser-webpack-plugin";
import { DefinePlugin, type Configuration } from "webpack";

const root = join(__dirname, "..", "..");
const resolve = createRequire(__filename).resolve;
const FUNCTIONS = join(root, "functions") + sep;

/** What a keeper waits for: minified by terser, which drops the declarations that nothing uses (a quarter of the script). */
const FIRST_LOADED = /^(functions|taskpane)\.[0-9a-f]+\.js$/;
const dropping = (include: RegExp) => new Minify({ include, extractComments: false });
/** All else by esbuild, which keeps them but takes a sixth of the time. */
const quick = (files: { exclude?: RegExp }) =>
  new Minify({ ...files, minify: Minify.esbuildMinify, extractComments: false });

const typescript = {
  jsc: {
    target: "es2022",
    parser: { syntax: "typescript", tsx: true },
    transform: { react: { runtime: "automatic" } },
  },
} as const;

/** What both pages share. Files of functions/ may need a loader of their own. */
const common = (functions = resolve("swc-loader")): Configuration => ({
  mode: "production",
  context: root,
  devtool: false,
  resolve: { extensions: [".ts", ".tsx", ".js"] },
  module: {
    rules: [
      { test: /\.tsx?$/, include: FUNCTIONS, loader: functions, options: typescript },
      { test: /\.tsx?$/, exclude: [/node_modules/, FUNCTIONS], loader: resolve("swc-loader"), options: typescript },
      { test: /\.css$/, use: [CssPlugin.loader, resolve("css-loader")] },
    ],
  },
  performance: { hints: false },
  stats: "errors-warnings",
});

/**
 * The pane and the functions of the add-in share one page, and so one runtime; the pane adds to the functions' script.
 * `reports`: whether the pane can report on the Excel in which it runs.
 */
export const excel = (path: string, reports: boolean): Configuration => ({
  ...common(join(__dirname, "readersOnly.ts")),
  name: "excel",
  optimization: { minimizer: [dropping(FIRST_LOADED), quick({ exclude: FIRST_LOADED })] },
  entry: {
    functions: "./addin/excel/functions.ts",
    taskpane: { import: "./addin/excel/taskpane.tsx", dependOn: "functions" },
  },
  output: {
    path,
    // Hashed like what it asks for later: a page that is cached never meets a script of another release.
    filename: "[name].[contenthash:8].js",
    chunkFilename: "[name].[contenthash:8].js",
    publicPath: "auto",
  },
  plugins: [new CssPlugin({ filename: "[name].[contenthash:8].css" }), new DefinePlugin({ REPORTS: String(reports) })],
});

/** The preview: the spreadsheet in a browser page, with the same pane. */
export const preview = (path: string): Configuration => {
  const shared = common();
  return {
    ...shared,
    name: "preview",
    optimization: { minimizer: [quick({})] },
    entry: { preview: "./addin/preview/main.tsx" },
    output: {
      path,
      filename: "[name].[contenthash:8].js",
      chunkFilename: "[name].[contenthash:8].js",
      publicPath: "auto",
    },
    plugins: [new CssPlugin({ filename: "[name].[contenthash:8].css" })],
    module: {
      rules: [
        ...(shared.module?.rules ?? []),
        { test: /\.js$/, include: /node_modules[\\/]@univerjs/, loader: join(__dirname, "plainFields.cjs") },
        // The engine reads what is typed through our own reader.
        {
          include: /node_modules[\\/]@univerjs/,
          resolve: { alias: { numfmt$: join(root, "addin", "preview", "numfmt.ts") } },
        },
      ],
    },
  };
};
