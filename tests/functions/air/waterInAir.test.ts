import psychrolib from "psychrolib";
import { waterInAir } from "../../../functions/air/waterInAir";
import { callCell } from "../../call";
import { saturation } from "../../tables/humidity.json";
import { yardstick } from "../../yardstick";

psychrolib.SetUnitSystem(psychrolib.SI);
const at = (temperature: number, humidity: number): number => callCell(waterInAir, temperature, humidity) as number;

// IAPWS-IF97 pressures as an ideal gas of 461.5 J/(kg K); WMO-No. 8 is up to 0.31 % below them: 0.35 %.
yardstick(waterInAir, { against: "IAPWS-IF97", within: 0.0035, unit: "share" }, () =>
  saturation.flatMap(({ temperature, pressure }) => {
    const saturated = (1000 * pressure * 100) / (461.5 * (temperature + 273.15));
    return [100, 40].map((humidity) => [at(temperature, humidity), (saturated * humidity) / 100] as const);
  }),
);

// PsychroLib by another way, the density and the humidity ratio of moist air: 0.4 % with its own gas constants.
yardstick(waterInAir, { against: "PsychroLib", within: 0.004, unit: "share" }, () =>
  [1, 8, 16, 24, 32, 40].flatMap((temperature) =>
    [20, 50, 80, 100].map((humidity) => {
      const ratio = psychrolib.GetHumRatioFromRelHum(temperature, humidity / 100, 101_325);
      const density = psychrolib.GetMoistAirDensity(temperature, ratio, 101_325);
      return [at(temperature, humidity), (1000 * density * ratio) / (1 + ratio)] as const;
    }),
  ),
);

test("0.5 for 50 % gets a message that says so", () =>
  expect(callCell(waterInAir, 20, 0.5)).toMatch(/humidity holds 0.5: .*; 80 for 80 %, not 0.8$/));
