import { form } from "../../taskpane/sheets/shared/form";
import { eachLine, f, once } from "../../taskpane/sheets/shared/formula";
import { log } from "../../taskpane/sheets/shared/log";
import { named, through } from "../../taskpane/sheets/shared/names";
import { cellOf, page } from "../../taskpane/sheets/shared/page";
import { gap } from "../../taskpane/sheets/shared/region";
import { over } from "../../taskpane/sheets/shared/rules";
import { words } from "../../taskpane/sheets/shared/running";
import { number } from "../../taskpane/sheets/shared/takes";
import type { Content, Sheet } from "../../taskpane/sheets/sheet";

/** What names become on a sheet: addresses that follow from where the parts stand. */

const about = {
  key: "trial",
  name: "Trial",
  sentence: "A page of two parts.",
  cautions: ["noFoodInTheCold", "coldKills", "noVet"],
  sources: ["definition"],
  widths: [30, 20, 20, 1, 20, 20],
  cautionColumns: ["E", "F"],
} as const;

const trial = (moreRows: number): Sheet => {
  const limits = form("limits", "Limits", {
    most: { label: "Most", unit: "g", value: 7, takes: number([0, 9]), from: "other.part.most" },
    half: { label: "Half", value: ({ most }) => once`${most}/2`, format: "tenth" },
    low: { label: "From, to", value: 1 },
    high: { value: 2 },
  });
  const list = log(
    "list",
    3,
    {
      mass: { title: "Mass", unit: "g", input: [3, 8], rules: [over(limits.most, "care")] },
      share: { title: "Share", spilled: ({ mass }) => eachLine`${mass}/${limits.most}` },
      sofar: { title: "So far", each: ({ mass }) => f`SUM(${mass.upToHere})` },
      before: { title: "Before", skip: 1, each: ({ mass }) => (mass.isFirst ? "" : once`${mass.before}+0`) },
    },
    { named: { column: "mass", rows: ["first"] } },
  );
  const said = words("said", [1, 2], f`IF(${list.first}="","",SUM(${through(list.mass, list.share)}))`);
  const top = form("top", null, { total: { label: "Total", value: f`${named("limits.half")}+1` } });
  return page(about, top, gap(moreRows), { A: [limits], E: [list] }, said);
};

const at = (sheet: Sheet, address: string): Content | undefined =>
  sheet.blocks.find((block) => block.at === address)?.rows[0]?.[0];

test("a name is an address, and a formula follows when parts move", () => {
  const [near, far] = [trial(1), trial(4)];
  // The sentence, the example and the legend take rows 2 to 4, one stays free.
  expect(cellOf(near, "top.total")).toBe("B6");
  expect(cellOf(near, "limits.most")).toBe("B9");
  expect(cellOf(far, "limits.most")).toBe("B12");
  expect(at(near, "B6")).toBe("=$B$10+1");
  expect(at(far, "B6")).toBe("=$B$13+1");
  expect([cellOf(near, "limits.low"), cellOf(near, "limits.high")]).toEqual(["B11", "C11"]);
});

test("a stack in the columns of the cautions stands below them", () => {
  const cautions = trial(0).merges.filter((merge) => /^E\d+:F\d+$/.test(merge));
  const end = Math.max(...cautions.map((merge) => Number(/\d+$/.exec(merge)?.[0])));
  expect(cellOf(trial(0), "list.mass[1]")).toBe(`E${end + 2}`);
});

test("guards follow from the names in a formula", () => {
  const sheet = trial(0);
  const [mass, most] = [cellOf(sheet, "list.mass"), cellOf(sheet, "limits.most")];
  const fixed = (address: string): string => address.replace(/([A-Z]+)(\d+)/g, "$$$1$$$2");
  expect(at(sheet, cellOf(sheet, "limits.half"))).toBe(`=IF(OR(${fixed(most)}=""),"",${fixed(most)}/2)`);
  expect(at(sheet, cellOf(sheet, "list.share[1]"))).toBe(
    `=IF(OR(COUNTA(${fixed(mass)})=0,${fixed(most)}=""),"",IF(${fixed(mass)}="","",${fixed(mass)}/${fixed(most)}))`,
  );
});

test("a row names its own cells, those above and the one before", () => {
  const sheet = trial(0);
  const block = (name: string) => sheet.blocks.find((one) => one.at === cellOf(sheet, `${name}[1]`))?.rows.flat();
  const first = cellOf(sheet, "list.mass[1]");
  const [letter, row] = [first.replace(/\d+/, ""), Number(first.replace(/\D+/, ""))];
  expect(block("list.sofar")).toEqual([0, 1, 2].map((i) => `=SUM(${letter}$${row}:${letter}${row + i})`));
  expect(block("list.before")?.slice(0, 2)).toEqual(["", `=IF(OR(${first}=""),"",${first}+0)`]);
  expect(cellOf(sheet, "list.first")).toBe(first);
  expect(sheet.rules).toContainEqual({
    range: cellOf(sheet, "list.mass"),
    when: `=AND(ISNUMBER($${first}),ISNUMBER(${cellOf(sheet, "limits.most").replace(/(\w)(\d+)/, "$$$1$$$2")}),$${first}>${cellOf(sheet, "limits.most").replace(/(\w)(\d+)/, "$$$1$$$2")})`,
    look: "care",
  });
});

test("a unit stands in the label, in the title and in what an input takes", () => {
  const sheet = trial(0);
  const told = sheet.blocks.flatMap(({ rows }) => rows.flat());
  expect(told).toContain("Most, g");
  expect(told).toContain("Mass g");
  expect(sheet.validation).toEqual([
    expect.objectContaining({ message: "Give a number from 0 to 9 g, or leave it blank." }),
  ]);
});

test("a field says which cell of another sheet it repeats", () => {
  const sheet = trial(0);
  expect(sheet.links).toEqual([{ at: cellOf(sheet, "limits.most"), from: "other.part.most", words: "Most, g" }]);
});

test("a name that is not there, or there twice, is said", () => {
  expect(() => cellOf(trial(0), "limits.least")).toThrow("no cell is called limits.least");
  expect(() => cellOf(trial(0), "list.mass[4]")).toThrow("list.mass has no row 4");
  const lost = form("lost", null, { one: { label: "One", value: f`${named("nowhere.one")}+1` } });
  expect(() => page(about, lost)).toThrow("no cell is called nowhere.one");
  expect(() => page(about, lost, lost)).toThrow("two cells of one name");
});
