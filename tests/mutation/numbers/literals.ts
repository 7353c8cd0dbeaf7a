import { readFileSync } from "node:fs";
import { join, relative } from "node:path";
import ts from "typescript";

/** A number that stands in the code, and what it becomes: one more where it is small and whole, a twentieth more elsewhere. */
export interface Literal {
  readonly id: number;
  /** From the root of the project. */
  readonly file: string;
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly from: number;
  readonly to: number;
  /** The line that it stands in, with the number between ‹ and ›: two of a line are told apart. */
  readonly code: string;
}

const SMALL = 20;
const MORE = 1.05;
const changed = (value: number): number => (Number.isInteger(value) && value < SMALL ? value + 1 : value * MORE);

/** What says in words how a function is used and no figure of it: its examples are held by themselves. */
const APART = new Set(["examples"]);

const isApart = (node: ts.Node): boolean => ts.isPropertyAssignment(node) && APART.has(node.name.getText());

/** Every numeric literal of a file that is worked with when it runs; not types, keys and examples. */
export const literalsOf = (root: string, path: string, firstId: number): readonly Literal[] => {
  const text = readFileSync(path, "utf8");
  const source = ts.createSourceFile(path, text, ts.ScriptTarget.ES2022, true);
  const lines = text.split("\n");
  const found: Literal[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node) || isApart(node)) return;
    if (ts.isNumericLiteral(node)) {
      const { parent } = node;
      const isKey = (ts.isPropertyAssignment(parent) || ts.isPropertySignature(parent)) && parent.name === node;
      if (isKey) return;
      const [start, end] = [node.getStart(source), node.getEnd()];
      const { line, character } = source.getLineAndCharacterOfPosition(start);
      const own = lines[line] ?? "";
      const after = character + end - start;
      const from = Number(node.text.replaceAll("_", ""));
      found.push({
        id: firstId + found.length,
        file: relative(root, path),
        line: line + 1,
        start,
        end,
        from,
        to: changed(from),
        code: `${own.slice(0, character)}‹${own.slice(character, after)}›${own.slice(after)}`.trim(),
      });
      return;
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
};

/** The file with each of its numbers as one that may be another: `which_` is asked for; `met_` notes what is worked with. */
export const switchable = (root: string, file: string, literals: readonly Literal[], noting: boolean): string => {
  let text = readFileSync(join(root, file), "utf8");
  for (const { id, start, end, to } of [...literals].reverse()) {
    const own = text.slice(start, end);
    const either = noting ? `(met_(${id}),${own})` : `(which_===${id}?${to}:${own})`;
    text = `${text.slice(0, start)}${either}${text.slice(end)}`;
  }
  return text;
};
