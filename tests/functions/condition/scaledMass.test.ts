import fc from "fast-check";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { scaledMass } from "../../../functions/condition/scaledMass";
import { cautions } from "../../../functions/cautions";
import { call, callCell, down } from "../../call";
import { mean, uniform } from "../../statistics";
import table from "../../tables/scaledMass.json";
import { yardstick } from "../../yardstick";

interface Bird {
  readonly Species: string;
  readonly "Body Mass (g)": number | null;
  readonly "Flipper Length (mm)": number | null;
}

/** Palmer penguins (CC0), as vega-datasets 3.2.1 packs them; two of them were not measured. */
const penguins = JSON.parse(readFileSync(join(__dirname, "../../tables/penguins.json"), "utf8")) as readonly Bird[];
const flock = (birds: readonly Bird[]) => ({
  masses: birds.map((bird) => bird["Body Mass (g)"]),
  lengths: birds.map((bird) => bird["Flipper Length (mm)"]),
});
/** Four of each: enough animals for an exponent of their own, which is the one of the few. */
const herd = (values: readonly number[]) => down([...values, ...values, ...values, ...values]);

const datasets: Record<string, { masses: readonly (number | null)[]; lengths: readonly (number | null)[] }> = {
  penguins_all: flock(penguins),
  penguins_Adelie: flock(penguins.filter(({ Species }) => Species === "Adelie")),
  women: table.women,
  trees_vol_girth: table.trees_vol_girth,
};

// Tolerance 1e-8 relative, as in the table: exact algebra, figures printed to ten decimals.
describe.each(table.fits)("$dataset, against R smatr 3.4-8", ({ dataset, animals, exponent, length }) => {
  const { masses, lengths } = datasets[dataset] as (typeof datasets)[string];
  const answers = call(scaledMass, down(masses), down(lengths)).flat();
  const measured = masses.flatMap((mass, i) =>
    mass === null ? [] : [{ mass, scaled: answers[i], length: lengths[i] as number }],
  );

  test("as many animals, and an empty cell for each that was not measured", () => {
    expect(measured.length).toBe(animals);
    expect(answers.filter((answer) => answer === "").length).toBe(masses.length - animals);
  });

  test("the rows", () => {
    const rows = table.rows.filter((row) => row.dataset === dataset);
    expect(rows.length).toBe(3);
    for (const row of rows) {
      const found = measured[row.entry - 1];
      expect([found?.mass, found?.length]).toEqual([row.mass, row.length]);
    }
  });

  test("the exponent and the mean length given change nothing", () => {
    const given = call(scaledMass, down(masses), down(lengths), length, exponent).flat();
    for (const [i, answer] of answers.entries()) {
      if (answer === "") expect(given[i]).toBe("");
      else expect(Math.abs((given[i] as number) / (answer as number) - 1)).toBeLessThan(1e-8);
    }
  });
});

// by definition
test("bodies of one shape scale to one mass with the exponent 3, and so they do with their own", () => {
  fc.assert(
    fc.property(
      fc.uniqueArray(fc.integer({ min: 300, max: 2000 }), { minLength: 3, maxLength: 20 }),
      fc.double({ min: 100, max: 1500, noNaN: true }),
      (lengths, reference) => {
        const masses = lengths.map((length) => 4e-7 * length ** 3);
        const wanted = 4e-7 * reference ** 3;
        for (const exponent of [3, undefined]) {
          for (const [scaled] of call(scaledMass, down(masses), down(lengths), reference, exponent)) {
            expect(Math.abs((scaled as number) / wanted - 1)).toBeLessThan(1e-6);
          }
        }
      },
    ),
  );
});

test("an animal at the reference length keeps its mass, and one animal is enough where the exponent is given", () => {
  expect(callCell(scaledMass, 250, 900, 900, 2.9)).toBeCloseTo(250, 12);
});

test("the answer lies as the masses lie", () => {
  expect(call(scaledMass, [[200, 250, 300]], [[800, 900, 1000]], 900, 3)[0]).toHaveLength(3);
});

test("missing weights: a row with one figure says which is blank, and counts for nothing", () => {
  const [masses, lengths] = [
    [200, 250, 300, 240],
    [800, 900, 1000, 880],
  ] as const;
  const plain = call(scaledMass, down(masses), down(lengths)).flat();
  const messy = call(
    scaledMass,
    down([200, null, 250, 300, 777, null, 240]),
    down([800, 850, 900, 1000, null, null, 880]),
  );
  expect(messy.flat()).toEqual([
    plain[0],
    "#N/A row 2 of masses is blank",
    plain[1],
    plain[2],
    "#N/A row 5 of lengths is blank",
    "",
    plain[3],
  ]);
});

test("what cannot be answered", () => {
  expect(callCell(scaledMass, down([200, 300]), down([800, 900, 1000]))).toBe(
    "#VALUE! masses holds 2 cells and lengths 3: give as many of each",
  );
  expect(callCell(scaledMass, down([200, 300]), down([800, 900]))).toBe(
    "#N/A masses holds 2 with a length: give three or more, or an exponent",
  );
  const unsure =
    "#VALUE! masses holds 12 animals whose mass does not rise with length as bodies do: give animals of more different lengths, or an exponent";
  expect(callCell(scaledMass, herd([300, 250, 200]), herd([800, 900, 1000]))).toBe(unsure); // falls
  expect(callCell(scaledMass, herd([300, 250, 200]), herd([800, 800, 800]))).toBe(unsure); // one length
  expect(callCell(scaledMass, herd([200, 200, 200]), herd([800, 900, 1000]))).toBe(unsure); // one mass
  expect(callCell(scaledMass, herd([200, 250, 300]), herd([900, 901, 902]))).toBe(unsure); // exponent of 180
});

// By definition of the slope, and exact: logarithms of powers of two are whole multiples of one another.
test.each([
  ["0.5, the least", [1, 2, 4], [1, 4, 16], 2, Math.SQRT2],
  ["4", [1, 16, 256], [1, 2, 4], 2, 16],
  ["8, the most", [1, 256, 65_536], [1, 2, 4], 2, 256],
])("an exponent of %s is taken", (_, masses, lengths, reference, wanted) => {
  for (const scaled of call(scaledMass, herd(masses), herd(lengths), reference).flat()) {
    expect(scaled).toBeCloseTo(wanted, 9);
  }
});

test.each<[string, number[], number[]]>([
  ["hardly rises, an exponent of 0.25", [1, 2, 4], [1, 16, 256]],
  ["rises too steeply, an exponent of 9", [0.5, 256, 131_072], [1, 2, 4]],
  ["rises and falls by as much", [1, 2, 2, 1], [1, 1, 2, 2]],
])("a mass that %s is not that of bodies", (_, masses, lengths) =>
  expect(callCell(scaledMass, herd(masses), herd(lengths), 900)).toMatch(
    /^#VALUE! masses holds \d+ animals whose mass does not rise with length as bodies do/,
  ),
);

test("animals of one mass and one length tell no exponent, however many they are", () => {
  // The mean of equal logarithms may be off by a rounding, and each animal off the mean by as much: that is no spread.
  for (let animals = 10; animals <= 30; animals++) {
    const [masses, lengths] = [down(Array(animals).fill(207.2)), down(Array(animals).fill(819))];
    expect(callCell(scaledMass, masses, lengths, 900)).toMatch(/whose mass does not rise with length as bodies do/);
  }
});

test("below ten animals the exponent is 3, and what the caution says", () => {
  const nine = Array.from({ length: 9 }, (_, i) => 1 + i / 10);
  const masses = nine.map((length) => length ** 2);
  const given = call(scaledMass, down(masses), down(nine), 1, 3);
  expect(call(scaledMass, down(masses), down(nine), 1)).toEqual(given);
  const ten = [...nine, 2];
  const own = call(scaledMass, down(ten.map((length) => length ** 2)), down(ten), 1).flat();
  for (const scaled of own) expect(scaled).toBeCloseTo(1, 9); // their own exponent, 2
  expect(cautions.narrowLengths).toMatch(/^Below ten animals the exponent is 3/);
});

/** Three animals of one shape, 8 % off in mass and 3 % in length by chance: their own slope is a matter of that chance. */
test("of three animals the slope would be anything, which is why it is not taken", () => {
  const random = uniform(3);
  const gauss = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const deviation = (values: readonly number[]): number =>
    Math.sqrt(mean(values.map((value) => (value - mean(values)) ** 2)));
  const slopes = Array.from({ length: 2000 }, () => {
    const lengths = Array.from({ length: 3 }, () => Math.log(900) + 0.08 * gauss());
    const masses = lengths.map((length) => 3 * length + 0.1 * gauss());
    return deviation(masses) / deviation(lengths);
  }).sort((a, b) => a - b);
  expect(slopes[100]).toBeLessThan(2.4);
  expect(slopes[1900]).toBeGreaterThan(4.5);
});

// Exact algebra, figures printed to ten decimals.
yardstick(scaledMass, { against: "R smatr 3.4-8", within: 1e-8, unit: "share" }, () =>
  table.rows.map((row) => {
    const { masses, lengths } = datasets[row.dataset] as (typeof datasets)[string];
    const answers = call(scaledMass, down(masses), down(lengths)).flat();
    const measured = answers.filter((_, i) => masses[i] !== null);
    return [measured[row.entry - 1] as number, row.scaled] as const;
  }),
);
