import { f, once } from "./shared/formula";
import { log } from "./shared/log";
import type { Column } from "./shared/names";
import { animals, type Animal } from "./shared/scenario";
import { MASS, number } from "./shared/takes";

const ROWS = 12;
const list: readonly Animal[] = Object.values(animals);

const scaled = (mass: Column, length: Column): string => {
  const measured = `(${mass}<>"")*(${length}<>"")`;
  return f`IF(SUMPRODUCT(${measured})<3,"",VIV.SCALEDMASS(IF(${measured},${mass},""),IF(${measured},${length},"")))`;
};

/** The condition of a keeper's animals, each held against the others. */
export const sideBySide = log(
  "side",
  ROWS,
  {
    label: { title: "Animal", input: list.map(({ label }) => label) },
    mass: {
      title: "Mass",
      unit: "g",
      input: list.map(({ mass }) => mass),
      format: "tenth",
      takes: number(MASS),
      from: "animals.list.mass",
      by: "side.label",
    },
    length: {
      title: "Length",
      unit: "cm",
      input: list.map(({ length }) => length),
      format: "tenth",
      takes: number([1, 1000]),
      from: "animals.list.length",
      by: "side.label",
    },
    scaled: {
      title: "Scaled",
      unit: "g",
      spilled: ({ mass, length }) => scaled(mass, length),
      format: "tenth",
      note: "What each would weigh at the mean length of all: three animals of one kind, or more.",
    },
    ofMean: {
      title: "Of mean",
      each: ({ scaled }) => f`IF(ISNUMBER(${scaled}),${scaled}/AVERAGE(${scaled.whole}),"")`,
      format: "percent",
    },
    beside: {
      title: "Beside the others",
      skip: 1,
      each: ({ ofMean }) => once`IF(${ofMean}<0.9,"thinner",IF(${ofMean}>1.1,"heavier","about the mean"))`,
      note: "More than a tenth off the mean of these animals: a reason to look, no verdict. Common practice, no source.",
      rules: [{ when: (own) => `=OR(${own}="thinner",${own}="heavier")`, look: "note" }],
    },
  },
  { title: "Condition: your animals side by side", grows: true },
);
