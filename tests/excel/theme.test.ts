import { themeOf } from "../../addin/excel/theme";

test.each([
  ["#FFFFFF", { contrast: false, dark: true }, "light"],
  ["#262626", { contrast: false, dark: false }, "dark"],
  ["#444444", { contrast: false, dark: false }, "dark"],
  ["#262626", { contrast: true, dark: false }, "contrast"],
  [undefined, { contrast: false, dark: true }, "dark"],
  [undefined, { contrast: false, dark: false }, "light"],
  ["", { contrast: false, dark: true }, "dark"],
] as const)("a background of %s with %o is %s", (background, prefers, theme) =>
  expect(themeOf(background, prefers)).toBe(theme),
);
