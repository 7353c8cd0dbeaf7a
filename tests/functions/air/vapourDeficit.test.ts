import psychrolib from "psychrolib";
import { vapourDeficit } from "../../../functions/air/vapourDeficit";
import { callCell } from "../../call";
import { saturation } from "../../tables/humidity.json";

psychrolib.SetUnitSystem(psychrolib.SI);
const at = (temperature: number, humidity: number): number => callCell(vapourDeficit, temperature, humidity) as number;

// WMO-No. 8 is up to 0.31 % below IAPWS-IF97 and PsychroLib between 0 and 40 °C: 0.35 %.
test.each(saturation)("IAPWS-IF97 at $temperature °C", ({ temperature, pressure }) => {
  for (const humidity of [1, 40, 75, 99]) {
    const truth = (pressure * (1 - humidity / 100)) / 10;
    expect(Math.abs(at(temperature, humidity) / truth - 1)).toBeLessThan(0.0035);
  }
});
test.each([1, 8, 16, 24, 32, 40])("PsychroLib at %d °C", (temperature) => {
  for (const humidity of [20, 50, 80]) {
    const truth =
      (psychrolib.GetSatVapPres(temperature) - psychrolib.GetVapPresFromRelHum(temperature, humidity / 100)) / 1000;
    expect(Math.abs(at(temperature, humidity) / truth - 1)).toBeLessThan(0.0035);
  }
});

test("saturated air draws nothing", () => expect(at(20, 100)).toBeCloseTo(0, 12));
test("0.5 for 50 % gets a message that says so", () =>
  expect(callCell(vapourDeficit, 20, 0.5)).toMatch(/humidity holds 0.5: .*; 80 for 80 %, not 0.8$/));
