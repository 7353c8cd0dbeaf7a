import psychrolib from "psychrolib";
import { waterInAir } from "../../../functions/air/waterInAir";
import { callCell } from "../../call";
import { saturation } from "../../tables/humidity.json";

psychrolib.SetUnitSystem(psychrolib.SI);
const at = (temperature: number, humidity: number): number => callCell(waterInAir, temperature, humidity) as number;

// IAPWS-IF97 pressures as an ideal gas of 461.5 J/(kg K); WMO-No. 8 is up to 0.31 % below them: 0.35 %.
test.each(saturation)("IAPWS-IF97 at $temperature °C", ({ temperature, pressure }) => {
  const truth = (1000 * pressure * 100) / (461.5 * (temperature + 273.15));
  expect(Math.abs(at(temperature, 100) / truth - 1)).toBeLessThan(0.0035);
  expect(Math.abs(at(temperature, 40) / (0.4 * truth) - 1)).toBeLessThan(0.0035);
});

// PsychroLib by another way, the density and the humidity ratio of moist air: 0.4 % with its own gas constants.
test.each([1, 8, 16, 24, 32, 40])("PsychroLib at %d °C", (temperature) => {
  for (const humidity of [20, 50, 80, 100]) {
    const ratio = psychrolib.GetHumRatioFromRelHum(temperature, humidity / 100, 101_325);
    const density = psychrolib.GetMoistAirDensity(temperature, ratio, 101_325);
    const truth = (1000 * density * ratio) / (1 + ratio);
    expect(Math.abs(at(temperature, humidity) / truth - 1)).toBeLessThan(0.004);
  }
});

test("0.5 for 50 % gets a message that says so", () =>
  expect(callCell(waterInAir, 20, 0.5)).toMatch(/humidity holds 0.5: .*; 80 for 80 %, not 0.8$/));
