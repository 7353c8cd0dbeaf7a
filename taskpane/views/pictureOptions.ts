/** How a picture may be saved. */
export const pictureKinds = [
  ["png", "PNG, for posts"],
  ["svg", "SVG, for print"],
] as const;

export const papers = [
  ["light", "Light"],
  ["dark", "Dark"],
] as const;
