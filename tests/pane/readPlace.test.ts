import { NO_FIELDS, readPlace, type FieldName, type PlaceFields } from "../../taskpane/views/places/readPlace";
import { degrees, direction, standingWords } from "../../taskpane/views/places/words";

const typed = (fields: Partial<PlaceFields>) => readPlace({ ...NO_FIELDS, ...fields });

test("nothing typed is nothing wrong", () => {
  expect(readPlace(NO_FIELDS)).toEqual({ warnings: {} });
});

test.each([
  ["46.5", "9.8", 46.5, 9.8],
  ["46,5", "9,8", 46.5, 9.8],
  [" 12.5 S ", "70.25°w", -12.5, -70.25],
  ["−12.5", "+70", -12.5, 70],
  ["0", "180 W", 0, -180],
])("%s and %s are a place", (latitude, longitude, north, east) => {
  const read = typed({ latitude, longitude });
  expect(read.spot).toEqual({ latitude: north + 0, longitude: east });
  expect(read.warnings).toEqual({});
});

test.each<[FieldName, string, RegExp]>([
  ["latitude", "95", /^Latitude holds "95": it lies between -90 and 90\.$/],
  ["longitude", "-190", /^Longitude holds "-190": it lies between -180 and 180\.$/],
  ["latitude", "9.8 E", /E belongs to the longitude/],
  ["longitude", "46 N", /N belongs to the latitude/],
  ["latitude", "-12 S", /south as -12\.5 or 12\.5 S/],
  ["latitude", "46°30'", /A minute is 1\/60/],
  ["longitude", "1,234.5", /write degrees/],
  ["bandLow", "1,500", /can be read in two ways: write 1500\.$/],
  ["bandHigh", "1.500 m", /can be read in two ways: write 1500\.$/],
  ["elevation", "high", /^Elevation holds "high": write metres, such as 1500\.$/],
  ["bandLow", "-500", /it lies between -450 and 6000 m/],
  ["bandHigh", "8848", /it lies between -450 and 6000 m/],
])("%s %s is answered in words", (field, text, words) => {
  const { warnings, spot, belt } = typed({ [field]: text });
  expect(Object.keys(warnings)).toEqual([field]);
  expect(warnings[field]).toMatch(words);
  expect([spot, belt]).toEqual([undefined, undefined]);
});

test("the elevation is the middle of the band until one is typed", () => {
  expect(typed({ bandLow: "1200", bandHigh: "1801" }).elevation).toBe(1501);
  expect(typed({ bandLow: "1200", bandHigh: "1800", elevation: "1700" })).toMatchObject({
    elevation: 1700,
    belt: { low: 1200, high: 1800 },
    warnings: {},
  });
  // Wrong is not blank.
  expect(typed({ bandLow: "1200", bandHigh: "1800", elevation: "x" }).elevation).toBeUndefined();
  expect(typed({ bandLow: "1200", bandHigh: "1800", elevation: "2500" }).warnings.elevation).toMatch(
    /outside the band/,
  );
});

test("a band that ends below its beginning is no band", () => {
  const { belt, elevation, warnings } = typed({ bandLow: "1800", bandHigh: "1200" });
  expect([belt, elevation]).toEqual([undefined, undefined]);
  expect(warnings.bandHigh).toMatch(/ends at 1200 m, below its lower end at 1800 m/);
});

test("places and directions in words", () => {
  expect(degrees({ latitude: -12.5, longitude: -70.254 })).toBe("12.50° S, 70.25° W");
  const zurich = { latitude: 47.37, longitude: 8.54 };
  expect(direction(zurich, { latitude: 47.37, longitude: 15 })).toBe("east");
  expect(direction(zurich, { latitude: 40, longitude: 0 })).toBe("south-west");
  expect(direction({ latitude: 0, longitude: 179 }, { latitude: 0, longitude: -179 })).toBe("east");
  expect(standingWords(900, { low: 1200, high: 1800 })).toBe("300 m below the band");
  expect(standingWords(1800, { low: 1200, high: 1800 })).toBe("in the band");
});
