import type { Look } from "../sheet";
import type { Cell } from "./names";
import type { Rule } from "./region";

/** Rules that colour a cell by what it shows. They look at cells, never at VIV functions, and never at colour alone. */

export const says = (word: string, look: Look, over?: number): Rule => ({
  when: (own) => `=${own}="${word}"`,
  look,
  ...(over ? { over } : {}),
});

export const begins = (word: string, look: Look, over?: number): Rule => ({
  when: (own) => `=LEFT(${own},${word.length})="${word}"`,
  look,
  ...(over ? { over } : {}),
});

export const saysSomething = (look: Look): Rule => ({ when: (own) => `=LEN(${own})>0`, look });

/** A figure under a limit that is given: a blank is no figure, and a blank limit limits nothing. */
export const under = (limit: Cell | number | string, look: Look): Rule => ({
  when: (own) => `=AND(ISNUMBER(${own}),ISNUMBER(${limit}),${own}<${limit})`,
  look,
});

export const over = (limit: Cell | number | string, look: Look): Rule => ({
  when: (own) => `=AND(ISNUMBER(${own}),ISNUMBER(${limit}),${own}>${limit})`,
  look,
});

export const moreThanNone = (look: Look): Rule => ({ when: (own) => `=N(${own})>0`, look });

/** The levels of a check, which begin its words. A note has no colour: the room for the longest words would stand there in grey. */
export const LEVELS: readonly Rule[] = (["stop", "care"] as const).map((level) => begins(level, level));
