import { lapse } from "../../functions/climate/lapse";
import * as define from "../../functions/define";
import { limitsInWords, quoted, signature, takesInWords } from "../../functions/words";

const { column, count, date, months, quantity, text } = define;

test("a signature has what is optional in brackets", () =>
  expect(signature(lapse)).toBe("VIV.LAPSE(temperature, stationElevation, homeElevation, [rate], [units])"));

test.each([
  [["high", "low"], '"high" or "low"'],
  [["high"], '"high"'],
  [["high", "low", "median"], '"high", "low", "median"'],
])("%j are quoted", (words, told) => expect(quoted(words)).toBe(told));

test.each<[string, define.Parameter]>([
  ["a number from -90 to 60 °C", quantity("celsius", "", [-90, 60])],
  ["a number from 0 to 1", quantity("share", "", [0, 1])],
  ['a number from -15 to 15 K/km, or "standard", "high", "low", "median", "dry"', lapse.parameters.rate],
  ["a whole number from 0 to 9 days", count("day", "", [0, 9])],
  ["a date", date("")],
  ["a date with its time", define.moment("")],
  ['"one" or "two"', define.choice("", ["one", "two"])],
  ['"metric" or "imperial"', define.unitsParameter],
  ["text", text("")],
  ["any cell", define.anything("")],
  ["12 cells, January to December, °C", months("celsius", "", [-90, 60])],
  ["12 cells, January to December", months("none", "", [-90, 60])],
  ["6 dates, or 6 rows of stage and date", define.plan()],
  ["a row or a column of cells, each a number from 1 to 9 g", column(quantity("gram", "", [1, 9]))],
  ["a row or a column of cells, each a date with its time", define.logged(define.moment(""))],
  ["rows of name, elevation", define.rows("", { name: text(""), elevation: quantity("metre", "", [0, 1]) })],
])("an argument takes %s", (told, parameter) => expect(takesInWords(parameter)).toBe(told));

// 1 ft is 0.3048 m and 1 oz is 28.349523125 g: 10 m is 32.808 ft, 100 m is 328.08 ft, 1 g is 0.035274 oz.
test.each<[string, define.CellParameter, "metric" | "imperial"]>([
  ["from 0.125 to 123.456 g", quantity("gram", "", [0.125, 123.456]), "metric"],
  ["from 32.9 to 328 ft", quantity("metre", "", [10, 100]), "imperial"],
  ["from 329 to 3280 ft", quantity("metre", "", [100, 1000]), "imperial"],
  ["from 0.036 to 35.2 oz", quantity("gram", "", [1, 1000]), "imperial"],
  ["from 14 to 212 °F", quantity("celsius", "", [-10, 100]), "imperial"],
  ["from 0.125 to 99.5 %", quantity("percent", "", [0.125, 99.5]), "imperial"],
  ["from 1900-03-01 to 9999-12-31", date(""), "metric"],
  ["", text(""), "metric"],
])("limits are told '%s': converted ones short and rounded inwards, others as they are", (told, parameter, system) =>
  expect(limitsInWords(parameter, system)).toBe(told),
);
