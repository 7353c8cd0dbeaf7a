import type { Theme } from "../../taskpane";

/** WCAG's relative luminance, from 0 to 1, without its gamma: enough to tell a dark page from a light one. */
const brightness = (hex: string): number => {
  const [red, green, blue] = [1, 3, 5].map((at) => parseInt(hex.slice(at, at + 2), 16) / 255) as [
    number,
    number,
    number,
  ];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
};

/**
 * The theme of the window around the pane. The system's own contrast colours come first; then Office's background,
 * which Excel on the web does not tell; then what the browser prefers.
 */
export const themeOf = (
  background: string | undefined,
  prefers: { readonly contrast: boolean; readonly dark: boolean },
): Theme => {
  if (prefers.contrast) return "contrast";
  const told = background !== undefined && /^#[0-9a-f]{6}/i.test(background);
  return (told ? brightness(background) < 0.5 : prefers.dark) ? "dark" : "light";
};
