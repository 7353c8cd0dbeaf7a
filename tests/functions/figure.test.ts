import fc from "fast-check";
import { figure, figures } from "../../functions/shared/figure";
import { swapped } from "../../functions/shared/swapped";

test("a figure has two decimals at most, its unit, and the system of the call", () => {
  expect(figure(8, "celsius")).toBe("8 °C");
  expect(figure(8, "celsius", "imperial")).toBe("46.4 °F");
  expect(figure(1 / 3, "gram")).toBe("0.33 g");
  expect(figure(0.1, "share")).toBe("0.1");
});

test("figures that differ read differently, with no more decimals than that takes", () => {
  expect(figures([10, 10.001], "celsius")).toEqual(["10 °C", "10.001 °C"]);
  expect(figures([10, 10.1], "celsius")).toEqual(["10 °C", "10.1 °C"]);
  expect(figures([1.9996, 2, 1.5], "celsius")).toEqual(["1.9996 °C", "2 °C", "1.5 °C"]);
  expect(figures([2, 2], "day")).toEqual(["2 days", "2 days"]);
});

test("no two figures are told to be above each other and read the same", () => {
  const degrees = fc.double({ min: -90, max: 60, noNaN: true });
  const step = fc.integer({ min: 1, max: 9 }).map((digits) => 10 ** -digits);
  fc.assert(
    fc.property(degrees, step, fc.constantFrom("metric" as const, "imperial" as const), (high, above, units) => {
      const problem = swapped(["low", high + above], ["high", high], "celsius", units);
      const [, low, top] = /^low holds (.*), above high (.*): /.exec(problem?.message ?? "") ?? [];
      expect(low).toBeDefined();
      expect(low).not.toBe(top);
      expect(parseFloat(low as string)).toBeGreaterThan(parseFloat(top as string));
    }),
  );
});

test("fifteen decimals are told, and not a sixteenth, which few numbers carry", () => {
  expect(figures([1, 1 + 1e-15], "share")).toEqual(["1", "1.000000000000001"]);
  expect(figures([1, 1 + 2 ** -52], "share")).toEqual(["1", "1"]);
});
