import { catalogue } from "../../functions/catalogue";
import type { AnyDefinition, Parameter } from "../../functions/define";
import { appended, type Published } from "../../functions/published";
import published from "../../functions/published.json";
import { VERSION } from "../../functions/release";

const [first, second, ...others] = catalogue as [AnyDefinition, AnyDefinition, ...AnyDefinition[]];
const withParameters = (names: readonly string[]): AnyDefinition => ({
  ...first,
  parameters: Object.fromEntries(names.map((name) => [name, {} as Parameter])),
});
const names = Object.keys(first.parameters);

test("the list is what the catalogue holds, and nothing published has moved", () =>
  expect(appended(published, catalogue, VERSION)).toEqual(published));

test("a new function enters with the version, an argument behind the others is taken", () => {
  const [added] = appended([], [first], "9.9.9");
  expect(added).toEqual({ ...published[0], since: "9.9.9" });
  const [longer] = appended(published.slice(0, 1), [withParameters([...names, "more"])], "9.9.9") as [Published];
  expect(longer.arguments).toEqual([...names, "more"]);
  expect(longer.since).toBe(published[0]?.since);
});

test("a name that is gone, an argument that is gone, renamed or moved, and a column that is gone are refused", () => {
  expect(() => appended(published, [first, ...others], VERSION)).toThrow(`${second.name} is published`);
  for (const wrong of [names.slice(1), ["renamed", ...names.slice(1)], ["before", ...names], [...names].reverse()]) {
    expect(() => appended(published, [withParameters(wrong), second, ...others], VERSION)).toThrow(
      `${first.name} is published with the arguments`,
    );
  }
  const table = catalogue.find(({ result }) => result.columns.length > 1) as AnyDefinition;
  const shorter = { ...table, result: { ...table.result, columns: table.result.columns.slice(1) } } as AnyDefinition;
  expect(() =>
    appended(
      published,
      catalogue.map((one) => (one === table ? shorter : one)),
      VERSION,
    ),
  ).toThrow(`${table.name} is published with the columns`);
});
