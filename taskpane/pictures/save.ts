/** Room for the caption under the picture, in pixels of the picture. */
const LINE = 16;
const LETTER = 6.4;

const lines = (caption: string, width: number): readonly string[] => {
  const most = Math.floor((width - 16) / LETTER);
  return caption.split(/\s+/).reduce<string[]>((rows, word) => {
    const last = rows.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= most) rows[rows.length - 1] = `${last} ${word}`;
    else rows.push(word);
    return rows;
  }, []);
};

/**
 * A drawn picture as an SVG file's text, black on white whatever the page looks like, with its caption below. What was
 * corrected, and from which stations, must travel with a picture that is passed on.
 */
export const svgText = (picture: SVGSVGElement, caption: string): string => {
  const document = picture.ownerDocument;
  const width = Number(picture.getAttribute("width"));
  const height = Number(picture.getAttribute("height"));
  const words = caption.trim() === "" ? [] : lines(caption.trim(), width);
  const tall = height + (words.length > 0 ? words.length * LINE + 8 : 0);

  const copy = picture.cloneNode(true) as SVGSVGElement;
  copy.removeAttribute("style");
  for (const [key, value] of Object.entries({
    xmlns: "http://www.w3.org/2000/svg",
    height: tall,
    viewBox: `0 0 ${width} ${tall}`,
    color: "#000000",
  })) {
    copy.setAttribute(key, String(value));
  }
  const paper = document.createElementNS("http://www.w3.org/2000/svg", "rect");
  for (const [key, value] of Object.entries({ width, height: tall, fill: "#ffffff" }))
    paper.setAttribute(key, String(value));
  copy.querySelector("defs")?.after(paper);
  for (const [i, line] of words.entries()) {
    const text = document.createElementNS("http://www.w3.org/2000/svg", "text");
    text.setAttribute("x", "8");
    text.setAttribute("text-anchor", "start");
    text.setAttribute("y", String(height + LINE * (i + 1) - 2));
    text.textContent = line;
    copy.append(text);
  }
  return new (document.defaultView as Window & typeof globalThis).XMLSerializer().serializeToString(copy);
};

/**
 * The same as a PNG file's bytes, `scale` pixels to one of the picture's.
 * Rejects with an Error whose message is for the keeper where the browser cannot draw it.
 */
export const pngBytes = async (picture: SVGSVGElement, caption: string, scale = 2): Promise<Uint8Array> => {
  const document = picture.ownerDocument;
  const image = document.createElement("img");
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svgText(picture, caption))}`;
  try {
    await image.decode();
  } catch {
    throw new Error("The picture could not be drawn here. Nothing was saved; save it as SVG instead.");
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
