import { lapse } from "../../functions/climate/lapse";
import {
  column,
  count,
  date,
  moment,
  optional,
  quantity,
  text,
  type AnyDefinition,
  type Argument,
} from "../../functions/define";
import { formulaOf } from "../../functions/formula";

const definition = {
  name: "MADEUP",
  parameters: {
    day: date("a day"),
    time: moment("a moment"),
    words: text("words"),
    list: column(quantity("celsius", "a list", [0, 50])),
    last: optional(count("none", "a count", [0, 9]), "none"),
  },
} as unknown as AnyDefinition;

test.each<[string, readonly Argument[]]>([
  ["24,300,1400", [24, 300, 1400]],
  ['24,300,1400,"dry","imperial"', [24, 300, 1400, "dry", "imperial"]],
  ["-0.5", [-0.5]],
  ["1E-7,1E+21", [1e-7, 1e21]],
  ["TRUE,FALSE", [true, false]],
])("LAPSE is typed with (%s)", (typed, given) => expect(formulaOf(lapse, { given })).toBe(`=VIV.LAPSE(${typed})`));

test.each<[string, string, readonly Argument[]]>([
  ["dates are calls, where a date is wanted", 'DATE(2026,10,5),,"2026-10-05"', ["2026-10-05", null, "2026-10-05"]],
  ["January is month 1, December 12", "DATE(2026,1,31),DATE(2026,12,31)", ["2026-01-31", "2026-12-31"]],
  ["a serial number stays one", "46300,46300.5", [46_300, 46_300.5]],
  ["half past eight", ",DATE(2026,10,5)+TIME(8,30,0)", [null, "2026-10-05T08:30:00"]],
  ["the last second of a day", ",DATE(2026,10,5)+TIME(23,59,59)", [null, "2026-10-05T23:59:59"]],
  ["five to one at night, and a second", ",DATE(2026,10,5)+TIME(0,55,1)", [null, "2026-10-05T00:55:01"]],
  ["midnight is the day alone", ",DATE(2026,10,5)", [null, "2026-10-05T00:00:00"]],
  ["text that is no date stays text", '"5/10/2026"', ["5/10/2026"]],
  ["blanks keep the place of what follows", ',,"a",,3', [null, null, "a", null, 3]],
  ["blanks fall away at the end", "DATE(2026,10,5)", ["2026-10-05", null, null]],
  ["nothing given", "", []],
  ["quotes in text are doubled", ',,"a ""b"""', [null, null, 'a "b"']],
  [
    "a block is an array, which holds neither functions nor blanks",
    ',,,{"2026-10-05",-1.5;"",TRUE}',
    [
      null,
      null,
      null,
      [
        ["2026-10-05", -1.5],
        [null, true],
      ],
    ],
  ],
])("%s", (_, typed, given) => expect(formulaOf(definition, { given })).toBe(`=VIV.MADEUP(${typed})`));
