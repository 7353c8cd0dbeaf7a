import { form } from "./shared/form";
import { f, once } from "./shared/formula";
import { firstOfLines, linesOfCall } from "./shared/lines";
import { log } from "./shared/log";
import { namedColumn, RowCell, type Cell } from "./shared/names";
import { LEVELS, says } from "./shared/rules";
import { animals, TODAY, type Animal } from "./shared/scenario";
import { date, MASS, number, oneOf, whole } from "./shared/takes";
import { blanksKept } from "./shared/words";

/** The keeper's limits, the animals, and what stands out in each before it is paired. */

const ANIMAL_ROWS = 8;
/** A line of each figure that is looked at: age, mass, clutches, weight. */
const MOST_LINES = 4;
const list: readonly Animal[] = Object.values(animals);

export const limits = form(
  "limits",
  ["Your limits", null, null, "Female", "Male", null, null],
  {
    on: {
      label: "Checked on",
      needed: "Day of the check",
      value: TODAY,
      across: 2,
      format: "date",
      takes: date,
      from: "animals.reminders.today",
    },
    femaleAge: {
      label: "Least age",
      unit: "months",
      value: 36,
      role: "setting",
      format: "whole",
      takes: whole([1, 600]),
    },
    maleAge: {
      value: 18,
      unit: "months",
      role: "setting",
      format: "whole",
      takes: whole([1, 600]),
      note: "18 months for males is common practice, no source.",
    },
    femaleMass: { label: "Least mass", unit: "g", value: 250, role: "setting", format: "tenth", takes: number(MASS) },
    maleMass: { value: 150, unit: "g", role: "setting", format: "tenth", takes: number(MASS) },
    clutches: {
      label: "Most clutches a season",
      value: 1,
      role: "setting",
      format: "whole",
      takes: whole([0, 12], "clutches"),
    },
    mode: {
      label: "Eggs or live young",
      needed: true,
      value: "eggs",
      takes: oneOf("eggs", "live"),
      note: "eggs for layers, live for live-bearers.",
    },
    earliest: {
      label: "Days to laying or birth",
      needed: "Days to laying or birth",
      value: 40,
      format: "whole",
      takes: whole([1, 400], "days"),
      note: "Your own fewest and most days, from matings of the same animals or their kind. Invented in the example.",
    },
    latest: { value: 60, format: "whole", takes: whole([1, 400], "days") },
  },
  { across: 3 },
);
const { on, femaleAge, maleAge, femaleMass, maleMass, clutches: mostClutches } = limits;
const mothers = namedColumn("clutches.mother");
const befores = namedColumn("clutches.before");

const [females, pairedOn, seen] = ["female", "on", "seen"].map((one) => namedColumn(`pairings.${one}`));
/** Whether a mating was seen after she laid last, up to the day of the check; one without a day may be such a one. */
const matedSince = (label: Cell): string => {
  const lastLaid = `SUMPRODUCT(MAX((${mothers}=${label})*${namedColumn("clutches.laid")}))`;
  return `SUMPRODUCT((${females}=${label})*(${seen}="mated")*(1-ISNUMBER(${pairedOn})*(1-(${pairedOn}>${lastLaid})*(${pairedOn}<=${on}))))>0`;
};

/** All that stands out of one animal. */
const linesFor = (row: number): Cell => new RowCell("lines.told", row);

/** The animals of the season, females and males. */
export const breeders = log(
  "animals",
  ANIMAL_ROWS,
  {
    label: { title: "Animal", needed: "An animal", input: list.map(({ label }) => label) },
    sex: {
      title: "Sex",
      input: list.map(({ sex }) => sex),
      takes: oneOf("female", "male", "unknown"),
      from: "animals.list.sex",
      by: "animals.label",
    },
    born: {
      title: "Born",
      input: list.map(({ born }) => born),
      format: "date",
      takes: date,
      from: "animals.list.born",
      by: "animals.label",
    },
    mass: {
      title: "Mass,",
      unit: "g",
      input: list.map(({ mass }) => mass),
      format: "tenth",
      takes: number(MASS),
      from: "animals.list.mass",
      by: "animals.label",
      note: "Weighed on the day of the check, or close to it.",
    },
    age: {
      title: "Age,",
      unit: "months",
      each: ({ born }) => once`VIV.AGE(${born},${on})`,
      format: "whole",
      note: "Age on the day of the check.",
    },
    clutches: {
      title: "Clutches",
      each: ({ label, sex }) => f`IF(OR(${label}="",${sex}="",${sex}="male"),"",COUNTIF(${mothers},${label}))`,
      format: "whole",
      note: "Laid this season, counted in the table of clutches.",
    },
    share: {
      title: "Of mass before",
      each: ({ label, sex, mass }) =>
        f`IF(OR(${label}="",${mass}="",${sex}="male",COUNTIFS(${mothers},${label},${befores},">0")=0),"",${mass}/LOOKUP(2,1/((${mothers}=${label})*(${befores}<>"")),${befores}))`,
      format: "percent",
      note: "Mass now as a share of her mass before her last clutch.",
    },
    check: {
      title: "Check",
      each: ({ label: { row } }) => {
        const { level, more } = firstOfLines(linesFor(row));
        return f`IF(${linesFor(row)}="","",${level}&IF(${more}>0," +"&${more},""))`;
      },
      note: "stop: do not pair. care: know why you do it. +2: two more things stand out, told at the foot.",
      rules: LEVELS,
    },
    told: {
      title: "The gravest thing",
      wide: 2,
      each: ({ label: { row } }) => f`IF(${linesFor(row)}="","",${firstOfLines(linesFor(row)).words})`,
    },
    gravid: {
      title: "May be gravid",
      skip: 1,
      each: ({ label, sex }) => f`IF(OR(${label}="",${sex}="male",${on}=""),"",IF(${matedSince(label)},"yes",""))`,
      note: "yes from a mating that was seen until she lays; Today keeps her warm meanwhile. Past her last day ask your reptile vet, and if she is not, put nothing at that mating. A mating without a day counts. A blank does not say that she is not.",
      rules: [says("yes", "care")],
    },
  },
  { titleLines: 2, grows: true },
);
/** Worked out once for each animal. One of unknown sex is held against the limits of a female, the stricter ones. */
const check = (row: number): string => {
  const of = (column: string): Cell => new RowCell(`animals.${column}`, row);
  const [sex, mass, age] = [of("sex"), of("mass"), of("age")];
  const [clutches, share] = [of("clutches"), of("share")];
  const female = `${age},${mass},${femaleAge},${femaleMass},${clutches},${blanksKept(`${mostClutches}`)}`;
  const blank = (...cells: readonly Cell[]): string => `OR(${cells.map((one) => `${one}=""`).join(",")})`;
  const unknown = `IF(${blank(sex, mass, age)},TRUE,IF(${sex}="male",${blank(maleAge, maleMass)},${blank(femaleAge, femaleMass)}))`;
  const call = `IF(${sex}="male",VIV.PAIRINGCHECK(${age},${mass},${maleAge},${maleMass}),IF(${share}="",VIV.PAIRINGCHECK(${female}),VIV.PAIRINGCHECK(${female},${share})))`;
  return f`IF(${of("label")}="","",IF(${unknown},"care: Not judged: sex, birth, mass, the day of the check or a limit above is blank.",${linesOfCall(call, MOST_LINES)}))`;
};

export const lines = log(
  "lines",
  ANIMAL_ROWS,
  {
    label: {
      title: null,
      each: ({ told }) => f`IF(LEN(${told})=0,"",${new RowCell("animals.label", told.row)})`,
    },
    told: { title: null, wide: 9, joined: true, each: ({ told }) => check(told.row), rules: LEVELS },
  },
  { title: "All that stands out, animal by animal, the gravest first", titleLines: 0, rowLines: MOST_LINES },
);
