// Serves the built preview and the handbook to this machine's browser. Plain Node: nothing but files of two folders.
import { existsSync } from "node:fs";
import { createServer } from "node:http";
import { dirname, join, resolve as resolvePath } from "node:path";
import { fileURLToPath } from "node:url";
import sirv from "sirv";

const HERE = dirname(fileURLToPath(import.meta.url));
const FIRST_PORT = 4173;
const PORTS_TRIED = 20;

const filesOf = (folder) =>
  sirv(folder, { dev: true, setHeaders: (response) => response.setHeader("x-content-type-options", "nosniff") });

/**
 * Serves a folder to this machine alone, and the handbook that stands beside it at /handbook/; answers the server and its
 * address once it listens. Port 0: any free one.
 */
export const serve = (folder, port) =>
  new Promise((resolve, reject) => {
    const files = filesOf(folder);
    const beside = filesOf(dirname(folder));
    const server = createServer((request, response) =>
      (request.url.startsWith("/handbook/") ? beside : files)(request, response, () =>
        response.writeHead(404).end("not here"),
      ),
    );
    server.once("error", reject);
    server.listen(port, "127.0.0.1", () => resolve({ server, address: `http://localhost:${server.address().port}/` }));
  });

const start = async () => {
  const folder = resolvePath(process.argv[2] ?? join(HERE, "..", "..", "dist", "preview"));
  if (!existsSync(join(folder, "index.html"))) throw new Error("there is no built preview: run npm run build first");
  const wanted = Number(process.env.PORT);
  for (let port = wanted || FIRST_PORT, tries = 1; ; port++, tries++) {
    try {
      const { address } = await serve(folder, port);
      console.log(`
The preview workbook is at ${address} (Ctrl+C ends it).
The handbook is at ${address}handbook/index.html: begin there with the first hour.

In Excel itself: npm run excel serves the add-in on this machine and says what to click in Excel on the web,
on Windows and on Mac. For a club: npm run build -- --site ADDRESS writes dist/ for any web host.
`);
      return;
    } catch (error) {
      if (error.code !== "EADDRINUSE" || wanted || tries >= PORTS_TRIED) throw error;
    }
  }
};

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  start().catch((error) => {
    console.error(error.message);
    process.exitCode = 1;
  });
}
