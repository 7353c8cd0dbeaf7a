import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { teamsHighContrastTheme, webDarkTheme, webLightTheme } from "@fluentui/tokens";

const themes = { light: webLightTheme, dark: webDarkTheme, contrast: teamsHighContrastTheme } as const;

/** The tokens that the style sheets of the pane name. */
const used = (root: string): readonly string[] => {
  const sheets = ["components", "views"].flatMap((folder) =>
    readdirSync(join(root, "taskpane", folder))
      .filter((name) => name.endsWith(".css") && name !== "themes.css")
      .map((name) => readFileSync(join(root, "taskpane", folder, name), "utf8")),
  );
  const names = [...sheets.join("\n").matchAll(/var\(--(\w+)\)/g)].map(([, name]) => name as string);
  return [...new Set(names)].sort();
};

const block = (theme: keyof typeof themes, names: readonly string[]): string => {
  const values: Readonly<Record<string, string | number>> = { ...themes[theme] };
  const lines = names.map((name) => {
    const value = values[name];
    if (value === undefined) throw new Error(`the vendor has no token "${name}"`);
    return `  --${name}: ${value};`;
  });
  return [
    `.pane[data-theme="${theme}"] {`,
    `  color-scheme: ${theme === "light" ? "light" : "dark"};`,
    ...lines,
    "}",
  ].join("\n");
};

/** The vendor's tokens that the pane uses, once for each theme. */
export const themesCss = (root: string): string => {
  const names = used(root);
  const blocks = (Object.keys(themes) as (keyof typeof themes)[]).map((theme) => block(theme, names));
  return `/* Written by npm run generate from the vendor's tokens (MIT). */\n${blocks.join("\n")}\n`;
};
