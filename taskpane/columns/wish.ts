import { namesOf, type AnyDefinition, type Parameter } from "../../functions/define";
import type { System, Unit } from "../../functions/units";
import { answerHeadings } from "../uses/heading";
import { headingOf, labelOf } from "../uses/heading";
import { roleOf } from "../uses/role";
import { conceptOf, type ConceptKey } from "./concepts";
import type { Expression, Guard } from "./expression";

/** What a wish has to be told: a column of the table, a figure or date that stands once, or cells elsewhere. */
export interface Want {
  readonly name: string;
  readonly label: string;
  readonly from: "column" | "once" | "cells";
  readonly concept: ConceptKey;
  readonly parameter: Parameter;
  readonly optional: boolean;
}

/** Which wants are given. */
export type Has = (name: string) => boolean;

/** A column that a keeper may want, in the keeper's words. */
export interface Wish {
  readonly key: string;
  readonly words: string;
  readonly heading: string;
  readonly definition: AnyDefinition;
  /** Of an answer of several cells, which. */
  readonly answer: number;
  readonly unit: Unit;
  readonly wants: readonly Want[];
  /** Whether a row's answer is made of the rows above it as well, so that their order counts. */
  readonly looksBack: boolean;
  readonly guards: (has: Has) => readonly Guard[];
  readonly body: (has: Has, system: System) => Expression;
}

/** What a wish says beyond its definition. */
export interface Told {
  readonly words?: string;
  readonly heading?: string;
  readonly answer?: number;
  /** Optional arguments that are asked for too. */
  readonly with?: readonly string[];
  /** Arguments that are columns of the table although a sample has them once. */
  readonly columns?: readonly string[];
  /** What is known of a want beyond its argument. */
  readonly wants?: Readonly<Record<string, Partial<Want>>>;
  /** Columns whose cell may be blank. */
  readonly mayBeBlank?: readonly string[];
  readonly atLeast?: { readonly rows: number; readonly of: string };
}

export const wantOf = (name: string, parameter: Parameter, from: Want["from"], more: Partial<Want> = {}): Want => ({
  name,
  label: from === "column" ? headingOf(name, "none") : labelOf(name, parameter.unit),
  from,
  concept: conceptOf(name, parameter),
  parameter,
  optional: parameter.optional,
  ...more,
});

/** The wish for what a definition answers row by row; undefined where it answers no row. */
export const wishOf = (definition: AnyDefinition, told: Told = {}): Wish | undefined => {
  const { parameters, result, forEach } = definition;
  if (result.shape === "table" || result.shape === "list") return undefined;
  const names: readonly string[] = forEach ? namesOf(forEach) : [];
  const roles = new Map(
    Object.keys(parameters).map((name) => [
      name,
      told.columns?.includes(name) ? ("row" as const) : roleOf(definition, name),
    ]),
  );
  if ([...roles.values()].includes("before")) return undefined;
  // Beside a column that is read whole the latest of a column is one cell of this row.
  const looksBack = [...roles].some(
    ([name, role]) => role === "column" && !names.includes(name) && parameters[name]?.kind === "column",
  );
  if (!looksBack && ![...roles.values()].includes("row")) return undefined;
  if ([...roles].some(([name, role]) => role === "column" && parameters[name]?.kind !== "column")) return undefined;
  const wants = Object.entries(parameters).flatMap(([name, parameter]): readonly Want[] => {
    const role = roles.get(name);
    if (parameter.kind === "units") return [];
    if (names.includes(name)) {
      return looksBack && name === names[0]
        ? [wantOf(name, parameter, "column", { label: "Whose row it is", concept: "animal", optional: true })]
        : [];
    }
    if (parameter.optional && !told.with?.includes(name)) return [];
    const more = told.wants?.[name];
    if (role === "row" || role === "column") return [wantOf(name, parameter, "column", more)];
    return [wantOf(name, parameter, parameter.reads === "range" ? "cells" : "once", more)];
  });
  const answer = told.answer ?? 0;
  const column = result.columns.find((_, i) => i === answer);
  return {
    key: definition.name,
    words: told.words ?? definition.summary.replace(/\.$/, ""),
    heading: told.heading ?? answerHeadings(definition)[answer] ?? definition.name,
    definition,
    answer,
    unit: column?.unit ?? "none",
    wants,
    looksBack,
    guards: (has) => [
      ...wants
        .filter(({ name, from }) => from === "column" && has(name) && !told.mayBeBlank?.includes(name))
        .map(({ name }) => ({ blank: name })),
      ...(told.atLeast
        ? [
            {
              fewer: told.atLeast.rows,
              of: told.atLeast.of,
              animal: names[0] !== undefined && has(names[0]) ? names[0] : undefined,
            },
          ]
        : []),
    ],
    body: (has, system) => {
      const given = Object.entries(parameters).map(([name, parameter]): Expression => {
        if (parameter.kind === "units") return system === "imperial" ? { word: "imperial" } : "none";
        if (name === names[1])
          return names[0] !== undefined && has(names[0]) && looksBack ? { cell: names[0] } : "none";
        if (!has(name)) return "none";
        const role = roles.get(name);
        if (role === "column") return { toHere: name };
        return role === "row" ? { cell: name } : { once: name };
      });
      while (given.at(-1) === "none") given.pop();
      return { call: definition, given, ...(result.columns.length > 1 ? { pick: answer } : {}) };
    },
  };
};
