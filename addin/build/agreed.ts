import { readdirSync } from "node:fs";
import { join, relative, sep } from "node:path";

/** A figure, or a table of figures. */
export type Figures = number | readonly (Figures | null)[] | { readonly [name: string]: Figures };

const FUNCTIONS = join(__dirname, "../../functions");
/** Lists of words, what follows from a definition, and what a proof has measured. */
const APART =
  /^(?:(?:sources|cautions|catalogue|release|texts|twins?|reference|yardsticks|define)|network.leaveOneOut)\.ts$/;

const isDefinition = (value: unknown): boolean => typeof value === "object" && value !== null && "calculate" in value;

/** The figures of a value, without the words beside them; undefined where it has none, is an argument, or calculates. */
const figuresIn = (value: unknown): Figures | undefined => {
  if (typeof value === "number") return value;
  if (typeof value !== "object" || value === null) return undefined;
  if ("reads" in value || Object.values(value).some((one) => typeof one === "function")) return undefined;
  if (Array.isArray(value)) {
    const each = value.map((one) => figuresIn(one) ?? null);
    return each.every((one) => one === null) ? undefined : each;
  }
  const named = Object.entries(value).flatMap(([name, one]): [string, Figures][] => {
    const figures = figuresIn(one);
    return figures === undefined ? [] : [[name, figures]];
  });
  return named.length === 0 ? undefined : Object.fromEntries(named);
};

/** Every figure and every table of figures that a file of `functions/` hands to others, by "rules/limits.CLEAR_DAYS". */
export const figuresOf = (): Readonly<Record<string, Figures>> =>
  Object.fromEntries(
    readdirSync(FUNCTIONS, { recursive: true })
      .map((file) => relative(FUNCTIONS, join(FUNCTIONS, String(file))))
      .filter((file) => file.endsWith(".ts") && !APART.test(file))
      .sort()
      .flatMap((file) => {
        const name = file.slice(0, -3).split(sep).join("/");
        // Written so that a bundler finds the files too, as the one of the numbers' mutants does.
        // eslint-disable-next-line @typescript-eslint/no-require-imports -- each file by its name
        const exported = require(`../../functions/${name}.ts`) as Readonly<Record<string, unknown>>;
        return Object.entries(exported).flatMap(([key, value]): [string, Figures][] => {
          // A definition's limits and examples are held by themselves.
          const figures = isDefinition(value) ? undefined : figuresIn(value);
          return figures === undefined ? [] : [[`${name}.${key}`, figures]];
        });
      }),
  );

/** What was agreed, with the figures that are new: what stands there already does not change by itself. */
export const withNewFigures = (before: Readonly<Record<string, Figures>>): Readonly<Record<string, Figures>> => ({
  ...figuresOf(),
  ...before,
});
