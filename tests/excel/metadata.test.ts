import Ajv from "ajv";
import { functionsJson, MOST_LETTERS } from "../../addin/metadata";
import { catalogue } from "../../functions/catalogue";

const json = functionsJson("https://example.org/almanac/handbook");

/**
 * The keys of the platform's documentation of the custom-functions JSON, and the lengths of its unified-manifest
 * schemas (package @microsoft/app-manifest 1.1.2, v1.23 the narrower). The published JSON schema of this file is of
 * 2019, lacks half of the keys and is itself not valid, so that it is no yardstick.
 */
const text = (least: number, most: number, pattern?: string) => ({
  type: "string",
  minLength: least,
  maxLength: most,
  ...(pattern === undefined ? {} : { pattern }),
});
const schema = {
  type: "object",
  additionalProperties: false,
  required: ["functions", "allowCustomDataForDataTypeAny", "allowErrorForDataTypeAny"],
  properties: {
    allowCustomDataForDataTypeAny: { const: true },
    allowErrorForDataTypeAny: { const: true },
    functions: {
      type: "array",
      minItems: 1,
      maxItems: 20_000,
      items: {
        type: "object",
        additionalProperties: false,
        required: ["id", "name", "description", "helpUrl", "parameters", "result"],
        properties: {
          // Letters and digits alone: a dot becomes an underscore in a saved file.
          id: text(3, 64, "^[A-Z][A-Z0-9]*$"),
          name: text(3, 64, "^[A-Z][A-Z0-9]*$"),
          description: text(1, 128),
          helpUrl: text(1, 2048, "^https://"),
          parameters: {
            type: "array",
            maxItems: 20,
            items: {
              type: "object",
              additionalProperties: false,
              required: ["name", "description", "type", "dimensionality"],
              properties: {
                name: text(1, 64, "^[a-zA-Z][a-zA-Z0-9]*$"),
                description: text(1, 128),
                type: { const: "any" },
                dimensionality: { const: "matrix" },
                optional: { const: true },
              },
            },
          },
          result: {
            type: "object",
            additionalProperties: false,
            required: ["type", "dimensionality"],
            properties: { type: { const: "any" }, dimensionality: { const: "matrix" } },
          },
        },
      },
    },
  },
};
const validate = new Ajv({ allErrors: true, strict: true }).compile(schema);
const errorsOf = (value: unknown): readonly string[] =>
  validate(value) ? [] : (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message ?? ""}`);

describe("functions.json", () => {
  test("is of the form that the platform takes", () => expect(errorsOf(JSON.parse(JSON.stringify(json)))).toEqual([]));
  test("has every function once, under one name", () => {
    expect(json.functions.map(({ id }) => id)).toEqual(catalogue.map(({ name }) => name));
    expect(new Set(json.functions.map(({ id }) => id)).size).toBe(json.functions.length);
    for (const { id, name } of json.functions) expect(name).toBe(id);
  });
  test("no name can be taken for a cell", () => {
    for (const { name } of json.functions) {
      expect(name).not.toMatch(/^[A-Z]{1,3}\d{1,7}$/); // a cell in the A1 style, to XFD1048576
      expect(name).not.toMatch(/^R\d*C\d*$/); // a cell in the R1C1 style
    }
  });
  test("optional arguments come last", () => {
    for (const { id, parameters } of json.functions) {
      const optional = parameters.map((parameter) => "optional" in parameter);
      expect([id, optional]).toEqual([id, [...optional].sort((a, b) => Number(a) - Number(b))]);
    }
  });
  test("a description is cut between its parts, never through one", () => {
    for (const { parameters } of json.functions) {
      for (const { description } of parameters) {
        expect(description.length).toBeLessThanOrEqual(MOST_LETTERS);
        expect(description).not.toMatch(/[;,:]\s*$/);
      }
    }
    const lapse = json.functions.find(({ id }) => id === "LAPSE");
    expect(lapse?.parameters[0]?.description).toBe("Temperature at the station; from -90 to 60 °C");
    expect(lapse?.parameters[3]?.description).toMatch(/"standard", "high", .*; left out: "standard", 6\.5 K\/km/);
  });
  test("a planted fault is found", () => {
    const [first] = json.functions;
    const changed = (change: object) => errorsOf({ ...json, functions: [{ ...first, ...change }] });
    expect(changed({})).toEqual([]);
    expect(changed({ id: "A.B" })).not.toEqual([]);
    expect(changed({ description: "x".repeat(129) })).not.toEqual([]);
    expect(changed({ volatile: true })).not.toEqual([]);
    expect(errorsOf({ ...json, allowErrorForDataTypeAny: false })).not.toEqual([]);
  });
});
