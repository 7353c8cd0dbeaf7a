import { LETTER, TEXT } from "./style";

/** px left free beside the words, where the picture says nothing of it. */
const EDGE = 8;

/** On which paper a picture is saved, whatever the page looks like. Tones have 3 to 1 against both. */
export const PAPERS = {
  light: { paper: "#ffffff", ink: "#000000" },
  dark: { paper: "#292929", ink: "#ffffff" },
} as const;
export type Paper = keyof typeof PAPERS;

/** Words in lines of so many letters; a word that is longer has a line of its own. */
const lines = (caption: string, most: number): readonly string[] =>
  caption.split(/\s+/).reduce<string[]>((rows, word) => {
    const last = rows.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= most) rows[rows.length - 1] = `${last} ${word}`;
    else rows.push(word);
    return rows;
  }, []);

/**
 * A drawn picture as an SVG file's text with its caption below. What was corrected, and from which stations, must travel
 * with a picture that is passed on.
 */
export const svgText = (picture: SVGSVGElement, caption: string, on: Paper = "light"): string => {
  const document = picture.ownerDocument;
  const { paper, ink } = PAPERS[on];
  const [width, height, size] = ["width", "height", "font-size"].map((key) => Number(picture.getAttribute(key))) as [
    number,
    number,
    number,
  ];
  const [line, edge] = [Math.round(size * 1.35), Number(picture.getAttribute("data-edge") ?? EDGE)];
  const words =
    caption.trim() === "" ? [] : lines(caption.trim(), Math.floor((width - 2 * edge) / (size * (LETTER / TEXT))));
  const tall = height + (words.length > 0 ? words.length * line + edge : 0);

  const copy = picture.cloneNode(true) as SVGSVGElement;
  copy.removeAttribute("style");
  for (const [key, value] of Object.entries({
    xmlns: "http://www.w3.org/2000/svg",
    height: tall,
    viewBox: `0 0 ${width} ${tall}`,
    color: ink,
  })) {
    copy.setAttribute(key, String(value));
  }
  const sheet = document.createElementNS("http://www.w3.org/2000/svg", "rect");
  for (const [key, value] of Object.entries({ width, height: tall, fill: paper }))
    sheet.setAttribute(key, String(value));
  copy.querySelector("defs")?.after(sheet);
  // What words stand on, so that no line runs through them.
  for (const under of copy.querySelectorAll("[data-part=paper]")) under.setAttribute("fill", paper);
  for (const [i, told] of words.entries()) {
    const text = document.createElementNS("http://www.w3.org/2000/svg", "text");
    text.setAttribute("x", String(edge));
    text.setAttribute("text-anchor", "start");
    text.setAttribute("y", String(height + line * (i + 1) - 2));
    text.textContent = told;
    copy.append(text);
  }
  return new (document.defaultView as Window & typeof globalThis).XMLSerializer().serializeToString(copy);
};

/**
 * The same as a PNG file's bytes, `scale` pixels to one of the picture's.
 * Rejects with an Error whose message is for the keeper where the browser cannot draw it.
 */
export const pngBytes = async (
  picture: SVGSVGElement,
  caption: string,
  on: Paper = "light",
  scale = 2,
): Promise<Uint8Array> => {
  const document = picture.ownerDocument;
  const image = document.createElement("img");
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svgText(picture, caption, on))}`;
  try {
    await image.decode();
  } catch (failure) {
    throw new Error("The picture could not be drawn here. Nothing was saved; save it as SVG instead.", {
      cause: failure,
    });
  }
  const canvas = document.createElement("canvas");
  canvas.width = image.naturalWidth * scale;
  canvas.height = image.naturalHeight * scale;
  const context = canvas.getContext("2d");
  context?.drawImage(image, 0, 0, canvas.width, canvas.height);
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/png"));
  if (!context || !blob)
    throw new Error("The picture could not be drawn here. Nothing was saved; save it as SVG instead.");
  return new Uint8Array(await blob.arrayBuffer());
};
