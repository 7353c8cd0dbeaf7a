import { relative, sep } from "node:path";
import { parse, transform, type Expression, type Options, type Program } from "@swc/core";
import type { LoaderContext } from "webpack";
import { catalogue } from "../../functions/catalogue";
import { readersOnly } from "../../functions/reference";

const isReadersOnly = (name: string): boolean => (readersOnly as readonly string[]).includes(name);

/** `defineFunction({ … })` without what only a reader wants. */
const withoutThem = (expression: Expression | undefined): void => {
  if (expression?.type !== "CallExpression") return;
  const { callee, arguments: given } = expression;
  const [definition] = given;
  if (callee.type !== "Identifier" || callee.value !== "defineFunction") return;
  if (definition?.expression.type !== "ObjectExpression") return;
  const object = definition.expression;
  object.properties = object.properties.filter(
    (property) =>
      property.type !== "KeyValueProperty" || property.key.type !== "Identifier" || !isReadersOnly(property.key.value),
  );
};

/** Definitions stand at the top of their file, or are answered by a function there that is given the catalogue. */
const strip = (program: Program): void => {
  for (const item of program.body) {
    const declared = item.type === "ExportDeclaration" ? item.declaration : item;
    if (declared.type !== "VariableDeclaration") continue;
    for (const { init } of declared.declarations) {
      withoutThem(init);
      if (init?.type === "ArrowFunctionExpression" && init.body.type !== "BlockStatement") withoutThem(init.body);
    }
  }
};

/** What was taken out, by the function's name, as the module that the pane asks. */
const table = (): string => {
  const all = Object.fromEntries(
    catalogue.map((definition) => [
      definition.name,
      Object.fromEntries(readersOnly.map((name) => [name, definition[name]])),
    ]),
  );
  return `const all = JSON.parse(${JSON.stringify(JSON.stringify(all))});\nexport const referenceOf = ({ name }) => all[name];`;
};

/**
 * A loader of the bundler for the files of functions/: what only a reader wants leaves the definitions and stands in
 * the module functions/reference instead.
 */
export default async function (this: LoaderContext<Options>, source: string): Promise<string> {
  const file = relative(this.rootContext, this.resourcePath).split(sep).join("/");
  if (file === "functions/reference.ts") return table();
  const options = this.getOptions();
  const program = await parse(source, { syntax: "typescript", target: "es2022" });
  strip(program);
  return (await transform(program, { ...options, filename: this.resourcePath, configFile: false, swcrc: false })).code;
}
