import {
  isArrayNode,
  isBinaryNode,
  isCallNode,
  isLiteralNode,
  isReferenceNode,
  isUnaryNode,
  parseA1Ref,
  stringifyA1Ref,
  type AstExpression,
  type CallExpression,
  type RangeA1,
  type ReferenceA1,
} from "@borgar/fx";
import { PREFIX, type AnyDefinition, type Parameter, type Value } from "../../functions/define";
import { NoTwin, nativeOf, type Expression, type Expressions } from "../../functions/nativeCall";
import { MISSING } from "../../functions/twin";
import { twinOf } from "../../functions/twins";
import { asPiece, textOf, treeOf } from "./syntax";

/**
 * A formula with every call of ours written in functions that every spreadsheet has. A formula that fills many cells is
 * written anew for each of them, because only new spreadsheets fill cells from one formula: where it goes through a range
 * cell by cell, each cell's formula names its own.
 */

/** How many cells an answer fills. */
export interface Extent {
  readonly rows: number;
  readonly columns: number;
}

/** The cells that an answer fills from the formula in a cell on, where that formula fills cells: "B5#" names them. */
export type SpillAt = (reference: string) => Extent | undefined;

export interface NativeFormulas {
  /** How many cells the formula fills as it is written, where that can be told from it. */
  readonly extent: Extent | undefined;
  /** The formula, with its "=", of a cell of what it fills. `isLast`: no row below it is written. Throws `NoTwin`. */
  cell(row: number, column: number, isLast: boolean): string;
}

/** What Excel takes as one formula, in letters. */
const LONGEST = 8192;

/** Functions that go through ranges cell by cell in every argument. */
const CELL_BY_CELL = new Set(
  (
    "IF IFERROR IFNA NOT ABS INT ROUND ROUNDUP ROUNDDOWN SIGN MOD SQRT EXP LN LOG LOG10 POWER SIN COS TAN ASIN ACOS ATAN " +
    "RADIANS DEGREES DATE YEAR MONTH DAY WEEKDAY EDATE EOMONTH HOUR MINUTE SECOND TIME ISNUMBER ISTEXT ISBLANK ISERROR " +
    "ISNA ISERR ISLOGICAL TEXT VALUE LEFT RIGHT MID LEN LOWER UPPER TRIM SEARCH FIND SUBSTITUTE CHOOSE CHAR ROW COLUMN " +
    "CEILING FLOOR N T"
  ).split(" "),
);

/** Functions that read ranges whole, with the arguments through which they go cell by cell all the same. */
const WHOLE: Readonly<Record<string, readonly number[]>> = {
  ...Object.fromEntries(
    (
      "AND OR SUM COUNT COUNTA COUNTBLANK MIN MAX AVERAGE MEDIAN STDEV SUMPRODUCT ROWS COLUMNS PI NA TRUE FALSE TODAY NOW " +
      "CONCATENATE AGGREGATE SUBTOTAL SLOPE INTERCEPT RSQ STEYX TEXTJOIN CONCAT"
    )
      .split(" ")
      .map((name) => [name, []]),
  ),
  INDEX: [1, 2],
  SMALL: [1],
  LARGE: [1],
  MATCH: [0],
  LOOKUP: [0],
  VLOOKUP: [0, 2],
  HLOOKUP: [0, 2],
  COUNTIF: [1],
  SUMIF: [1],
  AVERAGEIF: [1],
};

const definitionOf = (catalogue: readonly AnyDefinition[], { callee }: CallExpression): AnyDefinition | undefined => {
  const found = new RegExp(`^(?:_xldudf_)?${PREFIX}[._]([A-Z][A-Z0-9]*)$`, "i").exec(callee.name);
  return found ? catalogue.find(({ name }) => name === found[1]?.toUpperCase()) : undefined;
};

const rangeOf = (reference: string): (ReferenceA1 & { readonly range: Required<RangeA1> }) | undefined => {
  const found = parseA1Ref(reference, { allowNamed: false }) as ReferenceA1 | undefined;
  if (typeof found?.range.top !== "number" || typeof found.range.left !== "number") return undefined;
  const { top, left, bottom = top, right = left } = found.range;
  return bottom === null || right === null
    ? undefined
    : ({ ...found, range: { ...found.range, top, left, bottom, right } } as ReturnType<typeof rangeOf>);
};

const ONE: Extent = { rows: 1, columns: 1 };
const cellsOf = ({ range }: { readonly range: Required<RangeA1> }): Extent => ({
  rows: (range.bottom as number) - (range.top as number) + 1,
  columns: (range.right as number) - (range.left as number) + 1,
});
const together = (extents: readonly (Extent | undefined)[]): Extent | undefined =>
  extents.reduce<Extent | undefined>(
    (one, other) =>
      one && other && { rows: Math.max(one.rows, other.rows), columns: Math.max(one.columns, other.columns) },
    ONE,
  );

/** The place in a block of one row or one column that repeats over the others; undefined outside of it. */
const placeIn = ({ rows, columns }: Extent, row: number, column: number): readonly [number, number] | undefined => {
  const place = [rows === 1 ? 0 : row, columns === 1 ? 0 : column] as const;
  return place[0] < rows && place[1] < columns ? place : undefined;
};

class Translation {
  constructor(
    private readonly catalogue: readonly AnyDefinition[],
    private readonly spillAt: SpillAt,
  ) {}

  private isOurs(node: AstExpression | null): boolean {
    if (isCallNode(node)) {
      return definitionOf(this.catalogue, node) !== undefined || node.arguments.some((one) => this.isOurs(one));
    }
    return (isBinaryNode(node) || isUnaryNode(node)) && node.arguments.some((one) => this.isOurs(one));
  }

  /** "B5#" as the cells that it stands for. */
  private spilled(node: AstExpression): AstExpression {
    if (!isUnaryNode(node) || node.operator !== "#") return node;
    const [of] = node.arguments;
    const found = isReferenceNode(of) ? rangeOf(of.value) : undefined;
    const extent = isReferenceNode(of) ? this.spillAt(of.value) : undefined;
    if (!found || !extent || !isReferenceNode(of)) throw new NoTwin('it refers by "#" to answers that are not there');
    const { range } = found;
    const bottom = (range.top as number) + extent.rows - 1;
    const right = (range.left as number) + extent.columns - 1;
    return {
      ...of,
      value: stringifyA1Ref({
        ...found,
        range: { ...range, bottom, right, $bottom: range.$top, $right: range.$left },
      }),
    };
  }

  /** How many cells a part of the formula stands for; undefined where only working it out would tell. */
  extent(given: AstExpression | null): Extent | undefined {
    if (given === null) return ONE;
    const node = this.spilled(given);
    if (isReferenceNode(node)) {
      const found = rangeOf(node.value);
      return found ? cellsOf(found) : undefined;
    }
    if (isArrayNode(node)) return { rows: node.elements.length, columns: node.elements[0]?.length ?? 1 };
    if (isUnaryNode(node)) return this.extent(node.arguments[0] ?? null);
    if (isBinaryNode(node)) {
      if (":, ".includes(node.operator)) return undefined;
      return together(node.arguments.map((one) => this.extent(one)));
    }
    if (!isCallNode(node)) return ONE;
    const definition = definitionOf(this.catalogue, node);
    if (definition) return this.extentOfOurs(definition, node);
    const name = node.callee.name.toUpperCase();
    const [first = null, row = null, column = null] = node.arguments;
    if (name === "TRANSPOSE") {
      const of = this.extent(first);
      return of && { rows: of.columns, columns: of.rows };
    }
    if (name === "INDEX" && this.isOurs(first)) {
      const of = this.extent(first);
      return of && { rows: this.isNone(row) ? of.rows : 1, columns: this.isNone(column) ? of.columns : 1 };
    }
    const through = CELL_BY_CELL.has(name) ? node.arguments.map((_, i) => i) : (WHOLE[name] ?? []);
    return together(through.map((i) => this.extent(node.arguments[i] ?? null)));
  }

  private extentOfOurs(definition: AnyDefinition, call: CallExpression): Extent | undefined {
    const { result } = definition;
    const { shape, columns } = result;
    const parameters = Object.entries(definition.parameters);
    if (result.shape === "list") {
      const like = parameters.findIndex(([name]) => name === result.like);
      return this.extent(call.arguments[like] ?? null);
    }
    if (shape === "table") {
      const rows = this.native(definition, call, 0, 0).rows;
      return rows === undefined ? undefined : { rows, columns: columns.length };
    }
    const over = together(
      parameters.map(([, { reads, kind }], i) =>
        reads === "cell" && kind !== "units" ? this.extent(call.arguments[i] ?? null) : ONE,
      ),
    );
    return over && (shape === "columns" ? { rows: over.rows, columns: columns.length } : over);
  }

  /** Whether a row or column of INDEX is 0 or left out, which asks for all of them. */
  private isNone(node: AstExpression | null): boolean {
    return node === null || (isLiteralNode(node) && node.value === 0);
  }

  /** One cell of what a part of the formula stands for. */
  element(given: AstExpression | null, row: number, column: number, isLast: boolean): string {
    if (given === null) return "";
    const node = this.spilled(given);
    const at = (part: AstExpression | null): string => this.element(part, row, column, isLast);
    if (isReferenceNode(node)) return this.cellOf(node.value, row, column);
    if (isArrayNode(node)) {
      const place = placeIn({ rows: node.elements.length, columns: node.elements[0]?.length ?? 1 }, row, column);
      const found = place && node.elements[place[0]]?.[place[1]];
      return found ? textOf(found) : MISSING;
    }
    if (isBinaryNode(node) && ":, ".includes(node.operator)) return this.one(textOf(node), row, column);
    if (isUnaryNode(node) || isBinaryNode(node)) {
      return textOf(node, (part) => (part === node ? undefined : asPiece(at(part))));
    }
    if (!isCallNode(node)) return textOf(node);
    const definition = definitionOf(this.catalogue, node);
    if (definition) return this.ours(definition, node, row, column, isLast);
    const name = node.callee.name.toUpperCase();
    const [first = null, down = null, across = null] = node.arguments;
    if (name === "TRANSPOSE") return this.element(first, column, row, false);
    if (name === "INDEX" && this.isOurs(first)) {
      const [r, c] = [this.indexed(down, row), this.indexed(across, column)];
      return this.element(first, r, c, isLast && this.isNone(down));
    }
    if (CELL_BY_CELL.has(name)) return `${node.callee.name}(${node.arguments.map(at).join(",")})`;
    const through = WHOLE[name];
    if (!through && (row > 0 || column > 0)) {
      throw new NoTwin(`${name} stands in a formula that fills many cells`);
    }
    const written = node.arguments.map((one, i) => (through?.includes(i) ? at(one) : this.whole(one)));
    return `${node.callee.name}(${written.join(",")})`;
  }

  /** The row or column that INDEX asks for, from 0. */
  private indexed(node: AstExpression | null, own: number): number {
    if (this.isNone(node)) return own;
    if (isLiteralNode(node) && typeof node.value === "number" && node.value >= 1) return Math.floor(node.value) - 1;
    throw new NoTwin("INDEX looks up its answers by a figure of the sheet");
  }

  private one(text: string, row: number, column: number): string {
    if (row > 0 || column > 0) throw new NoTwin(`${text} stands in a formula that fills many cells`);
    return text;
  }

  /** A cell of a range; a name or a table's column only where one cell is asked for. */
  private cellOf(reference: string, row: number, column: number): string {
    const found = rangeOf(reference);
    if (!found) return this.one(reference, row, column);
    const place = placeIn(cellsOf(found), row, column);
    if (!place) return MISSING;
    const { range } = found;
    const [top, left] = [(range.top as number) + place[0], (range.left as number) + place[1]];
    // Within a range every cell has a row and a column of its own, so the next cell's formula names the next.
    const { rows, columns } = cellsOf(found);
    const [$top, $left] = [rows === 1 && range.$top, columns === 1 && range.$left];
    return stringifyA1Ref({
      ...found,
      range: { top, left, bottom: top, right: left, $top, $left, $bottom: $top, $right: $left },
    });
  }

  /** A part that is read whole: nothing in it goes cell by cell, so that a call of ours has to be a single figure. */
  private whole(node: AstExpression | null): string {
    return textOf(node, (part) => {
      if (isUnaryNode(part) && part.operator === "#") return textOf(this.spilled(part));
      if (!isCallNode(part)) return undefined;
      if (!definitionOf(this.catalogue, part)) {
        return part === node || !this.isOurs(part) ? undefined : this.element(part, 0, 0, false);
      }
      const extent = this.extent(part);
      if (extent?.rows !== 1 || extent.columns !== 1) throw new NoTwin("many of its answers are taken together");
      return asPiece(this.element(part, 0, 0, false));
    });
  }

  private ours(definition: AnyDefinition, call: CallExpression, row: number, column: number, isLast: boolean): string {
    const { shape } = definition.result;
    if (shape === "cell") return this.native(definition, call, row, column).cell({ row: 0, column: 0, isLast });
    if (shape === "columns") return this.native(definition, call, row, 0).cell({ row: 0, column, isLast });
    if (shape === "list") {
      const extent = this.extentOfOurs(definition, call);
      const place = extent && placeIn(extent, row, column);
      if (!place) throw new NoTwin("its list is no row or column of cells");
      return this.native(definition, call, 0, 0).cell({ row: Math.max(...place), column: 0, isLast });
    }
    return this.native(definition, call, 0, 0).cell({ row, column, isLast });
  }

  private native(definition: AnyDefinition, call: CallExpression, row: number, column: number) {
    const twin = twinOf(definition);
    if (!twin) throw new NoTwin(`${definition.name} cannot be written in functions that every spreadsheet has`);
    const parameters = Object.values(definition.parameters);
    return nativeOf(
      definition,
      twin,
      call.arguments.map((node, i) => {
        const parameter = parameters[i];
        if (!parameter) throw new NoTwin("it has an argument too many");
        return this.argument(node, parameter, row, column);
      }),
    );
  }

  private argument(
    node: AstExpression | null,
    parameter: Parameter,
    row: number,
    column: number,
  ): Expression | Expressions | undefined {
    if (node === null) return undefined;
    if (parameter.reads === "cell") {
      const literal = this.literal(node, row, column);
      const text = asPiece(this.element(node, row, column, false));
      return literal === undefined ? { text } : { text, literal };
    }
    const range = this.spilled(this.unmasked(node));
    if (isReferenceNode(range)) {
      const found = rangeOf(range.value);
      if (!found) {
        if (parameter.length === undefined) throw new NoTwin("one of its ranges is no range of cells");
        return {
          whole: range.value,
          each: Array.from({ length: parameter.length }, (_, i) => ({ text: `INDEX(${range.value},${i + 1})` })),
        };
      }
      const { rows, columns } = cellsOf(found);
      // A plan may come with its stages before its dates.
      const left =
        parameter.kind === "plan" && rows === parameter.length ? (found.range.right as number) : found.range.left;
      const own = { ...found, range: { ...found.range, left } } as typeof found;
      return {
        whole: stringifyA1Ref(own),
        each: this.cells(
          { ...range, value: stringifyA1Ref(own) },
          { rows, columns: left === found.range.left ? columns : 1 },
        ),
      };
    }
    const extent = this.extent(range);
    if (!extent) throw new NoTwin("it cannot be told how many cells one of its ranges has");
    if (parameter.kind === "plan" && extent.rows === parameter.length && extent.columns > 1) {
      return { each: Array.from({ length: extent.rows }, (_, i) => this.expression(range, i, extent.columns - 1)) };
    }
    return { each: this.cells(range, extent) };
  }

  private cells(node: AstExpression, { rows, columns }: Extent): Expression[] {
    if (rows > 1 && columns > 1) throw new NoTwin("one of its ranges is a block");
    return Array.from({ length: rows * columns }, (_, i) => this.expression(node, rows > 1 ? i : 0, rows > 1 ? 0 : i));
  }

  private expression(node: AstExpression, row: number, column: number): Expression {
    const literal = this.literal(node, row, column);
    const text = asPiece(this.element(node, row, column, false));
    return literal === undefined ? { text } : { text, literal };
  }

  /** What stands in the formula itself. */
  private literal(node: AstExpression, row: number, column: number): Value | undefined {
    if (isLiteralNode(node)) return node.value;
    if (isArrayNode(node)) {
      const place = placeIn({ rows: node.elements.length, columns: node.elements[0]?.length ?? 1 }, row, column);
      const found = place && node.elements[place[0]]?.[place[1]];
      return found && isLiteralNode(found) ? found.value : undefined;
    }
    if (isUnaryNode(node) && node.operator === "-") {
      const [of] = node.arguments;
      return isLiteralNode(of) && typeof of.value === "number" ? -of.value : undefined;
    }
    return undefined;
  }

  /** IF(A1:A9="","",A1:A9) hands blanks over as blanks, which a reference does by itself. */
  private unmasked(node: AstExpression): AstExpression {
    if (!isCallNode(node) || node.callee.name.toUpperCase() !== "IF") return node;
    const [test, blank, range] = node.arguments;
    if (!isBinaryNode(test) || test.operator !== "=" || !isReferenceNode(range)) return node;
    const [of, nothing] = test.arguments;
    const isEmpty = (one: AstExpression | null | undefined): boolean => isLiteralNode(one) && one.value === "";
    return isReferenceNode(of) && of.value === range.value && isEmpty(nothing) && isEmpty(blank) ? range : node;
  }
}

/** Whether a function of ours is called anywhere in the formula; undefined where it cannot be read. */
export const nativeFormulas = (
  catalogue: readonly AnyDefinition[],
  formula: string,
  spillAt: SpillAt = () => undefined,
): NativeFormulas => {
  const tree = treeOf(formula);
  if (!tree) throw new NoTwin("it cannot be read");
  const translation = new Translation(catalogue, spillAt);
  return {
    get extent() {
      return translation.extent(tree);
    },
    cell(row, column, isLast) {
      const text = `=${translation.element(tree, row, column, isLast)}`;
      if (text.length > LONGEST) throw new NoTwin(`it would be longer than ${LONGEST} letters`);
      return text;
    },
  };
};
