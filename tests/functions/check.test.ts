import { checkRows, NOTHING, type Rule } from "../../functions/shared/check";
import type { SourceKey } from "../../functions/sources";

const rule: Rule<"warmth"> = { of: "warmth", level: "care", words: "It is {is}, past {limit}", source: "practice" };
const check = (changes: Partial<Rule<"warmth">>, value: number | undefined) =>
  checkRows([{ ...rule, ...changes }], { warmth: { value, unit: "celsius" } });
const fires = (changes: Partial<Rule<"warmth">>, value: number | undefined) =>
  check(changes, value)[0]?.[1] !== NOTHING;

test.each<[string, Partial<Rule<"warmth">>, readonly number[], readonly (number | undefined)[]]>([
  ["under 4", { under: 4 }, [3.9, -100], [4, 100, undefined]],
  ["over 15", { over: 15 }, [15.1, 100], [15, -100, undefined]],
  ["under 4 or over 15", { under: 4, over: 15 }, [3.9, 15.1], [4, 10, 15, undefined]],
  ["under 0", { under: 0 }, [-0.1], [0, 1]],
  ["over 0", { over: 0 }, [0.1], [0, -1]],
])("a rule for what lies %s fires there, not at its limit nor without a figure", (_, limits, past, within) => {
  expect(past.filter((value) => !fires(limits, value))).toEqual([]);
  expect(within.filter((value) => fires(limits, value))).toEqual([]);
});

test.each<[string, SourceKey]>([
  ["common practice, no source", "practice"],
  ["your own limit", "ownLimit"],
  ["source: Parton, W. J. & Logan, J. A. (1981)", "partonLogan1981"],
  ["recalled: Sen, P. K. (1968)", "theilSen"],
  [
    "source: American Meteorological Society. Glossary of Meteorology: dry-adiabatic lapse rate, approximately 9.8 K per km",
    "dryAdiabat",
  ],
])("a source is named by its authors and year, or in full without a year: %s", (told, source) =>
  expect(check({ over: 15, source }, 16)).toEqual([["care", `It is 16 °C, past 15 °C (${told}).`]]),
);
