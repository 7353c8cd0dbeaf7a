import { readFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { parse, transform, type Expression, type Options, type Program } from "@swc/core";
import type { LoaderContext } from "webpack";
import { catalogue } from "../../functions/catalogue";
import type { AnyDefinition } from "../../functions/define";
import { readersOnly } from "../../functions/reference";

/** What is for readers, and the native twins: a sheet that calculates needs neither. */
const apart: readonly string[] = [...readersOnly, "twin"];
/** Asks for a file of functions/ with nothing but the twin of each definition. */
const TWINS = "?twins";

/** `defineFunction({ … })` with the properties that are wanted. */
const keep = (expression: Expression | undefined, isWanted: (name: string) => boolean): void => {
  if (expression?.type !== "CallExpression") return;
  const { callee, arguments: given } = expression;
  const [definition] = given;
  if (callee.type !== "Identifier" || callee.value !== "defineFunction") return;
  if (definition?.expression.type !== "ObjectExpression") return;
  const object = definition.expression;
  object.properties = object.properties.filter(
    (property) => !("key" in property) || property.key.type !== "Identifier" || isWanted(property.key.value),
  );
};

/** Definitions stand at the top of their file, or are answered by a function there that is given the catalogue. */
const strip = (program: Program, isWanted: (name: string) => boolean): void => {
  for (const item of program.body) {
    const declared = item.type === "ExportDeclaration" ? item.declaration : item;
    if (declared.type !== "VariableDeclaration") continue;
    for (const { init } of declared.declarations) {
      keep(init, isWanted);
      if (init?.type === "ArrowFunctionExpression" && init.body.type !== "BlockStatement") keep(init.body, isWanted);
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

/** The functions with a twin, each from its own file, as the module that whoever writes native formulas asks. */
const twins = async (root: string): Promise<string> => {
  const folder = join(root, "functions");
  const program = await parse(readFileSync(join(folder, "catalogue.ts"), "utf8"), { syntax: "typescript" });
  const lines: string[] = [];
  const entries: string[] = [];
  for (const item of program.body) {
    if (item.type !== "ImportDeclaration" || item.typeOnly) continue;
    const file = (await import(join(folder, item.source.value))) as Readonly<Record<string, Partial<AnyDefinition>>>;
    for (const { local } of item.specifiers) {
      const { name, twin } = file[local.value] ?? {};
      if (!twin) continue;
      lines.push(`import { ${local.value} } from "${item.source.value}${TWINS}";`);
      entries.push(`${name}: ${local.value}.twin`);
    }
  }
  return `${lines.join("\n")}\nconst all = { ${entries.join(", ")} };\nexport const twinOf = ({ name }) => all[name];`;
};

/**
 * A loader of the bundler for the files of functions/: what only a reader wants leaves the definitions and stands in
 * the module functions/reference instead; the native twins stand in functions/twins.
 */
export default async function (this: LoaderContext<Options>, source: string): Promise<string> {
  const file = relative(this.rootContext, this.resourcePath).split(sep).join("/");
  if (file === "functions/reference.ts") return table();
  if (file === "functions/twins.ts") return twins(this.rootContext);
  const options = this.getOptions();
  const program = await parse(source, { syntax: "typescript", target: "es2022" });
  const forTwins = this.resourceQuery === TWINS;
  strip(program, (name) => (forTwins ? name === "twin" : !apart.includes(name)));
  if (forTwins) {
    for (const item of program.body) {
      if (item.type !== "ImportDeclaration" || !item.source.value.startsWith(".")) continue;
      item.source = {
        ...item.source,
        value: `${item.source.value}${TWINS}`,
        raw: JSON.stringify(`${item.source.value}${TWINS}`),
      } as typeof item.source;
    }
  }
  return (await transform(program, { ...options, filename: this.resourcePath, configFile: false, swcrc: false })).code;
}
