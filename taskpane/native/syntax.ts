import {
  isArrayNode,
  isBinaryNode,
  isCallNode,
  isErrorNode,
  isLiteralNode,
  isReferenceNode,
  isUnaryNode,
  parse,
  tokenize,
  type AstExpression,
} from "@borgar/fx";
import { NoTwin } from "../../functions/nativeCall";

/** A formula as a tree; undefined where it cannot be read. */
export const treeOf = (formula: string): AstExpression | undefined => {
  try {
    return parse(tokenize(formula));
  } catch {
    // The parser's only way of saying so.
    return undefined;
  }
};

/** How closely an operator binds what stands beside it, as every spreadsheet has it. */
const BINDS: readonly (readonly string[])[] = [["=", "<>", "<", ">", "<=", ">="], ["&"], ["+", "-"], ["*", "/"], ["^"]];
const SIGN = BINDS.length; // a sign before a figure binds closer than "^"
const REFERENCE = SIGN + 1;
const PIECE = REFERENCE + 1;

const closeness = (node: AstExpression | null): number => {
  if (isBinaryNode(node)) {
    const found = BINDS.findIndex((operators) => operators.includes(node.operator));
    return found < 0 ? REFERENCE : found;
  }
  return isUnaryNode(node) ? SIGN : PIECE;
};

/** Writes a part of a tree, or passes it on by answering undefined. */
export type Rewrite = (node: AstExpression) => string | undefined;

/**
 * A tree as formula text, with the brackets that it needs. `rewrite` is asked of every part first; what it writes has to
 * stand as one piece.
 */
export const textOf = (node: AstExpression | null, rewrite: Rewrite = () => undefined): string => {
  if (node === null) return "";
  const own = rewrite(node);
  if (own !== undefined) return own;
  const within = (part: AstExpression | null, least: number): string =>
    closeness(part) < least ? `(${textOf(part, rewrite)})` : textOf(part, rewrite);
  if (isLiteralNode(node)) return node.raw;
  if (isErrorNode(node) || isReferenceNode(node)) return node.value;
  if (isCallNode(node)) return `${node.callee.name}(${node.arguments.map((one) => textOf(one, rewrite)).join(",")})`;
  if (isArrayNode(node)) {
    return `{${node.elements.map((row) => row.map((one) => textOf(one, rewrite)).join(",")).join(";")}}`;
  }
  if (isUnaryNode(node)) {
    const [part = null] = node.arguments;
    const text = within(part, SIGN);
    return node.operator === "%" || node.operator === "#" ? `${text}${node.operator}` : `${node.operator}${text}`;
  }
  if (isBinaryNode(node)) {
    const [left = null, right = null] = node.arguments;
    const own = closeness(node);
    if (node.operator === ",") return `(${textOf(left, rewrite)},${textOf(right, rewrite)})`; // several areas as one
    return `${within(left, own)}${node.operator}${within(right, own + 1)}`;
  }
  throw new NoTwin("it names figures by LET or LAMBDA, which only new spreadsheets know");
};

/** The same text in brackets where it would not stand as one piece among operators. */
export const asPiece = (text: string): string => {
  const tree = treeOf(`=${text}`);
  return tree && closeness(tree) >= REFERENCE ? text : `(${text})`;
};
