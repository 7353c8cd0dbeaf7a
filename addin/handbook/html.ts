import { Marked, type Tokens } from "marked";
import type { Page } from "../../taskpane/handbook/page";
import { fileOf } from "../../taskpane/handbook/paths";

/** The pictures that pages name. */
export interface Pictures {
  /** In pixels of the page: one that knows it does not jump while it loads. */
  readonly sizeOf: (name: string) => { readonly width: number; readonly height: number };
  /** Those that are drawn into the page as SVG. */
  readonly drawn: Readonly<Record<string, string>>;
}

export const escaped = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll('"', "&quot;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");

/** "What it takes" → "what-it-takes". */
export const idOf = (words: string): string =>
  words
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-|-$/g, "");

/** The way from a page up to the handbook's top: "" or "../". */
export const upFrom = (path: string): string => "../".repeat(path.split("/").length - 1);

/** Letters of a cell that is a sentence. */
const LONG = 40;

const addressOf = (href: string, up: string): string => {
  const [path = "", part] = href.split("#");
  return `${path === "" ? "" : `${up}${fileOf(path)}`}${part === undefined ? "" : `#${part}`}`;
};

/** What stands below a page's title, as HTML. */
export const bodyOf = ({ path, markdown }: Page, pictures: Pictures): string => {
  const up = upFrom(path);
  let tables = 0;
  const marked = new Marked({
    renderer: {
      heading({ tokens, depth }: Tokens.Heading) {
        const words = this.parser.parseInline(tokens);
        const plain = this.parser.parseInline(tokens, this.parser.textRenderer);
        return `<h${depth} id="${idOf(plain)}">${words}</h${depth}>\n`;
      },
      link({ href, tokens }: Tokens.Link) {
        return `<a href="${escaped(addressOf(href, up))}">${this.parser.parseInline(tokens)}</a>`;
      },
      image({ href, text }: Tokens.Image) {
        const drawing = pictures.drawn[href];
        if (drawing !== undefined) {
          return `<span class="scroll" tabindex="0" role="region" aria-label="Drawing">${drawing}</span>`;
        }
        const { width, height } = pictures.sizeOf(href);
        return `<img src="${up}${escaped(href)}.webp" alt="${escaped(text)}" width="${width}" height="${height}" loading="lazy">`;
      },
      blockquote({ tokens }: Tokens.Blockquote) {
        return `<div class="caution" role="note">${this.parser.parse(tokens)}</div>\n`;
      },
      table(token: Tokens.Table) {
        const cell = (wanted: string, { tokens, align, text }: Tokens.TableCell): string => {
          // A corner without words heads nothing.
          const tag = text === "" ? "td" : wanted;
          const kind = align === "right" ? "figure" : text.length > LONG ? "long" : "";
          return `<${tag}${kind && ` class="${kind}"`}${tag === "th" ? ' scope="col"' : ""}>${this.parser.parseInline(tokens)}</${tag}>`;
        };
        const line = (tag: string, cells: readonly Tokens.TableCell[]): string =>
          `<tr>${cells.map((one) => cell(tag, one)).join("")}</tr>`;
        const sheet = token.header[0]?.text === "" ? ' class="cells"' : "";
        return `<div class="scroll" tabindex="0" role="region" aria-label="Table ${++tables}"><table${sheet}><thead>${line("th", token.header)}</thead><tbody>${token.rows.map((row) => line("td", row)).join("\n")}</tbody></table></div>\n`;
      },
    },
  });
  return marked.parse(markdown, { async: false });
};

/** What the whole handbook shares, on every page. */
export interface Frame {
  /** The pages that each page leads to at its top. */
  readonly parts: readonly Pick<Page, "path" | "title">[];
  readonly version: string;
}

const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; base-uri 'none'; form-action 'none'";

/** The parts of the handbook that are folders of it, and so hold the pages below them. */
const isWithin = (path: string, part: string): boolean =>
  path === part || (part.endsWith("/index") && path.startsWith(part.slice(0, -"index".length)));

export const htmlOf = (page: Page, { parts, version }: Frame, pictures: Pictures): string => {
  const up = upFrom(page.path);
  const menu = parts
    .map(({ path, title }) => {
      const here =
        path === page.path ? ' aria-current="page"' : isWithin(page.path, path) ? ' aria-current="true"' : "";
      return `<li><a href="${up}${fileOf(path)}"${here}>${escaped(title)}</a></li>`;
    })
    .join("\n        ");
  return `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8">
    <meta name="viewport" content="width=device-width, initial-scale=1">
    <meta http-equiv="Content-Security-Policy" content="${POLICY}">
    <meta name="color-scheme" content="light dark">
    <meta name="description" content="${escaped(page.about)}">
    <link rel="icon" href="data:,">
    <link rel="stylesheet" href="${up}handbook.css">
    <script defer src="${up}search.js" data-top="${up}"></script>
    <title>${escaped(page.title)} · Vivarium Almanac</title>
  </head>
  <body>
    <a class="skip" href="#main">To the page itself</a>
    <header>
      <p class="name"><a href="${up}index.html">Vivarium Almanac <span>Handbook</span></a></p>
      <nav aria-label="Handbook">
        <ul>
        ${menu}
        </ul>
      </nav>
      <div id="search" role="search"></div>
    </header>
    <main id="main">
      <h1>${escaped(page.title)}</h1>
${bodyOf(page, pictures)}
    </main>
    <footer>
      <p>Vivarium Almanac ${escaped(version)}. No veterinary advice: <a href="${up}care.html">cautions and when to call a vet</a>. The animals and figures of the examples are invented.</p>
      <p><a href="${up}support.html">Support</a> · <a href="${up}privacy.html">Privacy</a> · <a href="${up}credits.html">Licences and credits</a> · <a href="${up}changes.html">Changes</a></p>
    </footer>
  </body>
</html>
`;
};
