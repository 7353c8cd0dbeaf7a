import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { teamsHighContrastTheme, webDarkTheme, webLightTheme } from "@fluentui/tokens";

const themes = { light: webLightTheme, dark: webDarkTheme, contrast: teamsHighContrastTheme } as const;

export type Theme = keyof typeof themes;

/** The tokens that style sheets name. */
export const tokensIn = (styles: string): readonly string[] =>
  [...new Set([...styles.matchAll(/var\(--(\w+)\)/g)].map(([, name]) => name as string))].sort();

const used = (root: string): readonly string[] =>
  tokensIn(
    ["components", "views"]
      .flatMap((folder) =>
        readdirSync(join(root, "taskpane", folder))
          .filter((name) => name.endsWith(".css") && name !== "themes.css")
          .map((name) => readFileSync(join(root, "taskpane", folder, name), "utf8")),
      )
      .join("\n"),
  );

/** What the tokens are in a theme, for what `selector` chooses. */
export const themeBlock = (selector: string, theme: Theme, names: readonly string[]): string => {
  const values: Readonly<Record<string, string | number>> = { ...themes[theme] };
  const lines = names.map((name) => {
    const value = values[name];
    if (value === undefined) throw new Error(`the vendor has no token "${name}"`);
    return `  --${name}: ${value};`;
  });
  return [`${selector} {`, `  color-scheme: ${theme === "light" ? "light" : "dark"};`, ...lines, "}"].join("\n");
};

/** The vendor's tokens that the pane uses, once for each theme. */
export const themesCss = (root: string): string => {
  const names = used(root);
  const blocks = (Object.keys(themes) as Theme[]).map((theme) =>
    themeBlock(`.pane[data-theme="${theme}"]`, theme, names),
  );
  return `/* Written by npm run generate from the vendor's tokens (MIT). */\n${blocks.join("\n")}\n`;
};
