import { readFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { parse, transform, type Options, type Program } from "@swc/core";
import type { LoaderContext } from "webpack";
import { catalogue } from "../../functions/catalogue";
import type { AnyDefinition } from "../../functions/define";
import { places, wordsOf } from "../../functions/readersWords";

/** What is for readers, and the native twins: a sheet that calculates needs neither. */
const apart: readonly string[] = [...places.ofDefinition, "twin"];
/** Asks for a file of functions/ with nothing but the twin of each definition. */
const TWINS = "?twins";

/** Any node of the parsed program, or a list of them. */
type Node = Readonly<Record<string, unknown>>;

const isNode = (value: unknown): value is Node => typeof value === "object" && value !== null;
const isText = (value: unknown): boolean =>
  isNode(value) && (value.type === "StringLiteral" || value.type === "TemplateLiteral");
const includes = (list: readonly string[], name: unknown): boolean => list.includes(name as string);

/** The makers of parameters that a file knows: those that it imports, and in their own file all. */
const makersIn = (program: Program, file: string): ReadonlyMap<string, number> => {
  const imported = program.body.flatMap((item) =>
    item.type === "ImportDeclaration" && /\/(define|monthlyValues)$/.test(item.source.value)
      ? item.specifiers.map(({ local }) => local.value)
      : [],
  );
  return new Map(
    Object.entries(places.ofMakers).filter(([name]) => file === "functions/define.ts" || imported.includes(name)),
  );
};

const silence = ({ span }: Node): Node => ({ type: "StringLiteral", span, value: "", raw: '""' });

/** Takes readers' words out of a program, and of definitions what is not wanted: a property goes, an argument becomes an empty text. */
const strip = (program: Program, file: string, isWanted: (name: string) => boolean): void => {
  const makers = makersIn(program, file);
  const stays = (property: unknown): boolean => {
    if (!isNode(property) || property.type !== "KeyValueProperty" || !isNode(property.key)) return true;
    const { value: name } = property.key;
    return !(includes(places.ofParts, name) && isText(property.value));
  };
  const walk = (node: unknown): void => {
    if (!isNode(node)) return;
    if (node.type === "ObjectExpression") {
      (node as { properties: unknown[] }).properties = (node.properties as unknown[]).filter(stays);
    }
    // What a maker says where it is given nothing.
    if (node.type === "AssignmentPattern" && isNode(node.left) && includes(places.ofParts, node.left.value)) {
      if (isText(node.right)) (node as { right: unknown }).right = silence(node.right as Node);
    }
    if (node.type === "CallExpression" && isNode(node.callee) && node.callee.type === "Identifier") {
      const args = node.arguments as { expression: Node }[];
      const said = args[makers.get(String(node.callee.value)) ?? args.length];
      if (said && isText(said.expression)) said.expression = silence(said.expression);
      const definition = args[0]?.expression;
      if (node.callee.value === "defineFunction" && definition?.type === "ObjectExpression") {
        (definition as { properties: unknown[] }).properties = (definition.properties as Node[]).filter(
          ({ key }) => !isNode(key) || key.type !== "Identifier" || isWanted(String(key.value)),
        );
        // With nothing but its twin it is no definition any more: what completes definitions is not asked.
        if (!isWanted("parameters")) Object.assign(node, { type: "ParenthesisExpression", expression: definition });
      }
    }
    for (const part of Object.values(node)) walk(part);
  };
  walk(program);
};

/** What was taken out, by the function's name, as the module that the pane asks. */
const table = (): string => {
  const all = Object.fromEntries(catalogue.map((definition) => [definition.name, wordsOf(definition)]));
  return [
    'import { withWords } from "./readersWords";',
    `const all = JSON.parse(${JSON.stringify(JSON.stringify(all))});`,
    "export const referenceOf = (definition) => withWords(definition, all[definition.name]);",
  ].join("\n");
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
  strip(program, file, (name) => (forTwins ? name === "twin" : !apart.includes(name)));
  if (forTwins) {
    for (const item of program.body) {
      if (item.type !== "ImportDeclaration" || !item.source.value.startsWith(".")) continue;
      item.source = {
        ...item.source,
        value: `${item.source.value}${TWINS}`,
        raw: JSON.stringify(`${item.source.value}${TWINS}`),
      };
    }
  }
  return (await transform(program, { ...options, filename: this.resourcePath, configFile: false, swcrc: false })).code;
}
