import { readFileSync } from "node:fs";
import { createServer, type ServerResponse } from "node:http";
import { join } from "node:path";
import { context, build, type BuildOptions, type Plugin } from "esbuild";
import { handbookFiles } from "../handbook/make";
import { page } from "./page";

/**
 * Serves the preview while it is worked on: `npm run dev`. The packages are put together once; our own code again at
 * each change, and then the page loads itself anew. `?sheet=coolingPlan&cleared` opens one sheet, without its example.
 */
const root = join(__dirname, "..", "..");
const port = Number(process.env.PORT) || 4174;

const common = {
  bundle: true,
  write: false,
  outdir: "/",
  format: "iife",
  target: "es2022",
  jsx: "automatic",
  define: { "process.env.NODE_ENV": '"development"' },
  logLevel: "error",
} satisfies BuildOptions;

/** Where one script leaves the packages for the other. */
const SHELF = "globalThis.almanacPackages";

/** Takes every package from the shelf, and writes down which are wanted. */
const fromShelf = (wanted: Set<string>): Plugin => ({
  name: "packages from the shelf",
  setup(to) {
    to.onResolve({ filter: /^[^./]/ }, ({ path, kind }) => {
      if (kind === "entry-point") return undefined;
      wanted.add(path);
      return { path, namespace: "shelf" };
    });
    to.onLoad({ filter: /\.css$/, namespace: "shelf" }, () => ({ contents: "", loader: "css" }));
    to.onLoad({ filter: /.*/, namespace: "shelf" }, ({ path }) => ({
      contents: `module.exports = ${SHELF}[${JSON.stringify(path)}];`,
    }));
  },
});

/**
 * The engine reads what is typed through our own reader, as in the build. Here the packages hold a copy of it from the
 * start, which does not hear of another manner of dates chosen in the page: that is looked at in the built preview.
 */
const ownReader: Plugin = {
  name: "own reader of what is typed",
  setup(to) {
    to.onResolve({ filter: /^numfmt$/ }, ({ importer }) =>
      /node_modules[\\/]@univerjs/.test(importer) ? { path: join(root, "addin", "preview", "numfmt.ts") } : undefined,
    );
  },
};

const shelf = (wanted: ReadonlySet<string>): string => {
  const styles = [...wanted].filter((name) => name.endsWith(".css"));
  const scripts = [...wanted].filter((name) => !name.endsWith(".css"));
  return [
    ...styles.map((name) => `import ${JSON.stringify(name)};`),
    ...scripts.map((name, i) => `import * as package${i} from ${JSON.stringify(name)};`),
    `${SHELF} = {`,
    ...scripts.map((name, i) => `${JSON.stringify(name)}: { __esModule: true, ...package${i} },`),
    "};",
  ].join("\n");
};

const files = new Map<string, string>();
const listening = new Set<ServerResponse>();
let handbook: ReturnType<typeof handbookFiles> = new Map();

const RELOAD = 'new EventSource("/changes").onmessage = () => location.reload();';

const start = async (): Promise<void> => {
  const wanted = new Set<string>();
  let started = 0;
  let known = 0;
  const keep: Plugin = {
    name: "keep what is built",
    setup(to) {
      to.onStart(() => void (started = performance.now()));
      to.onEnd(async ({ outputFiles = [], errors }) => {
        if (errors.length > 0) return;
        for (const { path, text } of outputFiles) files.set(path.slice(path.lastIndexOf("/") + 1), text);
        const took = performance.now() - started;
        // A package that is imported for the first time is put beside the others.
        if (wanted.size > known) {
          known = wanted.size;
          const packages = await build({
            ...common,
            stdin: { contents: shelf(wanted), resolveDir: root, sourcefile: "packages.js" },
            plugins: [ownReader],
          });
          for (const { path, text } of packages.outputFiles)
            files.set(path.endsWith(".css") ? "packages.css" : "packages.js", text);
        }
        console.log(`Our own code in ${took.toFixed(0)} ms.`);
        for (const response of listening) response.write("data: changed\n\n");
      });
    },
  };
  const own = await context({
    ...common,
    entryPoints: { own: join(root, "addin", "preview", "main.tsx") },
    plugins: [fromShelf(wanted), keep],
  });
  await own.rebuild();
  await own.watch();

  const types = { html: "text/html", js: "text/javascript", css: "text/css", webp: "image/webp", txt: "text/plain" };
  const typeOf = (name: string): string => types[name.slice(name.lastIndexOf(".") + 1) as keyof typeof types];
  createServer(({ url = "/" }, response) => {
    const name = new URL(url, "http://localhost").pathname.slice(1);
    if (name === "changes") {
      response.writeHead(200, { "content-type": "text/event-stream" });
      listening.add(response);
      response.on("close", () => listening.delete(response));
      return;
    }
    if (name === "") {
      const template = readFileSync(join(root, "addin", "preview", "index.html"), "utf8");
      response.setHeader("content-type", "text/html");
      response.end(page(template, ["packages.css", "own.css", "packages.js", "own.js", "reload.js"]));
      return;
    }
    if (name.startsWith("handbook/")) {
      // Its written pages are read anew with each page that is asked for; for its code this has to be started again.
      if (name.endsWith(".html")) handbook = handbookFiles(root);
      const file = handbook.get(name.slice("handbook/".length));
      if (file === undefined) return void response.writeHead(404).end("not here");
      response.setHeader("content-type", typeOf(name));
      response.end(file);
      return;
    }
    if (/^network\/[\w.-]+$/.test(name)) {
      response.end(readFileSync(join(root, "functions", name)));
      return;
    }
    const text = name === "reload.js" ? RELOAD : files.get(name);
    if (text === undefined) return void response.writeHead(404).end("not here");
    response.setHeader("content-type", typeOf(name));
    response.end(text);
  }).listen(port, "127.0.0.1", () => console.log(`The preview is at http://localhost:${port}/ (Ctrl+C ends it).`));
};

start().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
});
