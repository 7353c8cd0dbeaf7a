import { readdirSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";

/**
 * Which part of the platform's API each member in use belongs to, by the tags "Api set: ExcelApi 1.9" of
 * @types/office-js, which come from the vendor's own reference. What the manifest asks for is the ceiling; what is
 * newer must stand inside `if (Office.context.requirements.isSetSupported(set, version))`.
 */
const CEILING: Readonly<Record<string, string>> = {
  ExcelApi: "1.12",
  CustomFunctionsRuntime: "1.3",
  SharedRuntime: "1.1",
};

const root = join(__dirname, "..", "..");
const folder = join(root, "addin", "excel");
const files = readdirSync(folder)
  .filter((name) => /\.tsx?$/.test(name))
  .map((name) => join(folder, name));

/** Lines that break the rule in each way, beside one that keeps it. */
const planted = join(folder, "planted.ts");
const PLANTED = `
export const newer = (range: Excel.Range) => range.valuesAsJson;
export const loaded = (range: Excel.Range) => range.load("values,valuesAsJson");
export const taken = ({ notes }: Excel.Worksheet) => notes;
export const guarded = (sheet: Excel.Worksheet) => {
  if (Office.context.requirements.isSetSupported("ExcelApi", "1.18")) return sheet.notes;
  return undefined;
};
export const guardedTooLow = (sheet: Excel.Worksheet) => {
  if (Office.context.requirements.isSetSupported("ExcelApi", "1.17")) return sheet.notes;
  return undefined;
};
export const guardedElsewhere = (sheet: Excel.Worksheet) => {
  if (Office.context.requirements.isSetSupported("ExcelApi", "1.18")) return undefined;
  else return sheet.notes;
};
`;

interface Use {
  readonly file: string;
  readonly member: string;
  readonly set: string;
  readonly version: string;
  readonly guarded: boolean;
}

/** Whether one version reaches another; a preview has none, and nothing reaches it. */
const reaches = (ceiling: string | undefined, version: string): boolean => {
  const [one, other] = [ceiling, version].map((text) =>
    /^(\d+)\.(\d+)$/
      .exec(text ?? "")
      ?.slice(1)
      .map(Number),
  );
  if (!one || !other) return false;
  const [a, b, c, d] = [...one, ...other] as [number, number, number, number];
  return a > c || (a === c && b >= d);
};

const usesOf = (): readonly Use[] => {
  const { options } = ts.parseJsonConfigFileContent(
    ts.readConfigFile(join(root, "tsconfig.json"), (name) => ts.sys.readFile(name)).config,
    ts.sys,
    root,
  );
  const host = ts.createCompilerHost(options);
  const plain = ts.createCompilerHost(options);
  host.fileExists = (name) => name === planted || plain.fileExists(name);
  host.getSourceFile = (name, ...rest) =>
    name === planted
      ? ts.createSourceFile(name, PLANTED, ts.ScriptTarget.ES2022, true)
      : plain.getSourceFile(name, ...rest);
  const program = ts.createProgram(
    [...files, planted],
    { ...options, incremental: false, tsBuildInfoFile: undefined },
    host,
  );
  const checker = program.getTypeChecker();

  const tagOf = (declaration: ts.Declaration): readonly [set: string, version: string] | undefined => {
    for (let node: ts.Node = declaration; !ts.isSourceFile(node); node = node.parent) {
      const found = /Api set: (\w+) ([\w.]+)/.exec(node.getFullText().slice(0, node.getStart() - node.getFullStart()));
      if (found) return [found[1] as string, found[2] as string];
    }
    return undefined;
  };
  const isGuarded = (node: ts.Node, set: string, version: string): boolean => {
    for (let at = node; !ts.isSourceFile(at); at = at.parent) {
      const { parent } = at;
      if (!ts.isIfStatement(parent) || parent.thenStatement !== at) continue;
      const { expression } = parent;
      if (!ts.isCallExpression(expression) || !expression.expression.getText().endsWith(".isSetSupported")) continue;
      const [asked, least] = expression.arguments.map((argument) =>
        ts.isStringLiteral(argument) ? argument.text : "",
      );
      if (asked === set && reaches(least, version)) return true;
    }
    return false;
  };

  /** The names in a text, or in a list that stands elsewhere. */
  const namesIn = (given: ts.Node): readonly string[] => {
    if (ts.isStringLiteral(given)) return given.text.split(",").map((one) => one.trim());
    if (ts.isArrayLiteralExpression(given)) return given.elements.flatMap(namesIn);
    const symbol = checker.getSymbolAtLocation(given);
    const meant = symbol && symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol;
    const declared = meant?.valueDeclaration;
    if (declared && ts.isVariableDeclaration(declared) && declared.initializer) return namesIn(declared.initializer);
    throw new Error(`${given.getText()} names what nobody can read here`);
  };

  const uses: Use[] = [];
  const look = (name: ts.Node, symbol: ts.Symbol | undefined, file: string): void => {
    for (const declaration of symbol?.declarations ?? []) {
      if (!/@types\/(office-js|custom-functions-runtime)\//.test(declaration.getSourceFile().fileName)) continue;
      const tag = tagOf(declaration);
      if (!tag) continue;
      const [set, version] = tag;
      uses.push({ file, member: symbol?.name ?? "", set, version, guarded: isGuarded(name, set, version) });
    }
  };
  for (const path of [...files, planted]) {
    const source = program.getSourceFile(path);
    if (!source) throw new Error(`${path} was not read`);
    const file = path.slice(folder.length + 1);
    const visit = (node: ts.Node): void => {
      if (ts.isPropertyAccessExpression(node)) look(node, checker.getSymbolAtLocation(node.name), file);
      if (ts.isPropertyAssignment(node)) {
        const type = checker.getContextualType(node.parent);
        if (type) look(node, type.getProperty(node.name.getText()), file);
      }
      if (ts.isBindingElement(node) && ts.isObjectBindingPattern(node.parent)) {
        const name = (node.propertyName ?? node.name).getText();
        look(node, checker.getTypeAtLocation(node.parent).getProperty(name), file);
      }
      // What is named to `load` is asked for all the same.
      if (ts.isCallExpression(node) && ts.isPropertyAccessExpression(node.expression)) {
        const { expression: owner, name } = node.expression;
        const [given] = node.arguments;
        if (name.text === "load" && given) {
          for (const path of namesIn(given)) {
            let type: ts.Type | undefined = checker.getTypeAtLocation(owner);
            for (const step of path.split("/")) {
              const found: ts.Symbol | undefined = type?.getProperty(step);
              look(node, found, file);
              const held: ts.Type | undefined = found && checker.getTypeOfSymbolAtLocation(found, node);
              type = (held && checker.getIndexTypeOfType(held, ts.IndexKind.Number)) ?? held;
            }
          }
        }
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return uses;
};

const all = usesOf();
/** What is shared by all Office programs carries a tag for the mail program, which says nothing of Excel. */
const OTHERS = "Mailbox";
const beyond = (uses: readonly Use[]): readonly string[] =>
  uses
    .filter(({ set, version, guarded }) => set !== OTHERS && !guarded && !reaches(CEILING[set], version))
    .map(({ file, member, set, version }) => `${file}: ${member} is of ${set} ${version}`);

test("nothing in use is newer than what the manifest asks for, unless it is asked for at run time", () => {
  const own = all.filter(({ file }) => file !== "planted.ts");
  expect(own.length).toBeGreaterThan(80); // or the tags are not found any more
  expect(new Set(own.map(({ file }) => file)).size).toBeGreaterThan(4);
  expect(beyond(own)).toEqual([]);
});

test("what is newer is found, by whatever way it is reached, and a guard has to fit", () => {
  const found = beyond(all.filter(({ file }) => file === "planted.ts"));
  expect(found).toEqual([
    "planted.ts: valuesAsJson is of ExcelApi 1.16",
    "planted.ts: valuesAsJson is of ExcelApi 1.16",
    "planted.ts: notes is of ExcelApi 1.18",
    "planted.ts: notes is of ExcelApi 1.18",
    "planted.ts: notes is of ExcelApi 1.18",
  ]);
});
