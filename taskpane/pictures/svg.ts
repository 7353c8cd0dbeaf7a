import { TEXT } from "./style";

const SVG = "http://www.w3.org/2000/svg";

export type Attributes = Readonly<Record<string, string | number>>;

/** Elements of a picture. */
export interface Pen {
  readonly make: <K extends keyof SVGElementTagNameMap>(
    tag: K,
    attributes?: Attributes,
    content?: string | readonly SVGElement[],
  ) => SVGElementTagNameMap[K];
  readonly says: (x: number, y: number, text: string, more?: Attributes) => SVGTextElement;
}

export const penOf = (document: Document): Pen => {
  const make: Pen["make"] = (tag, attributes = {}, content = []) => {
    const element = document.createElementNS(SVG, tag);
    for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
    if (typeof content === "string") element.textContent = content;
    else element.append(...content);
    return element;
  };
  return { make, says: (x, y, text, more = {}) => make("text", { x, y, "text-anchor": "start", ...more }, text) };
};

/** Ids in a page must differ, and the same picture may be drawn twice. */
let drawn = 0;
export const newId = (): string => `picture-${++drawn}`;

export const FONT = "system-ui, 'Segoe UI', sans-serif";

/** A picture takes its text colour from where it is put, names itself, and says in words what it shows. */
export const introduced = <T extends SVGSVGElement>(
  picture: T,
  { make }: Pen,
  { id, title, summary, size = TEXT }: { id: string; title: string; summary: string; size?: number },
  ...defs: readonly SVGElement[]
): T => {
  const look = {
    "font-family": FONT,
    "font-size": size,
    fill: "currentColor",
    role: "img",
    "aria-labelledby": `${id}-title`,
    "aria-describedby": `${id}-summary`,
  };
  for (const [key, value] of Object.entries(look)) picture.setAttribute(key, String(value));
  picture.style.setProperty("max-width", "100%");
  picture.style.setProperty("height", "auto");
  picture.prepend(
    make("title", { id: `${id}-title` }, title),
    make("desc", { id: `${id}-summary` }, summary || title),
    make("defs", {}, defs),
  );
  return picture;
};
