import psychrolib from "psychrolib";
import { vapourDeficit } from "../../../functions/air/vapourDeficit";
import { callCell } from "../../call";
import { saturation } from "../../tables/humidity.json";
import { yardstick } from "../../yardstick";

psychrolib.SetUnitSystem(psychrolib.SI);
const at = (temperature: number, humidity: number): number => callCell(vapourDeficit, temperature, humidity) as number;

// WMO-No. 8 is up to 0.31 % below IAPWS-IF97 and PsychroLib between 0 and 40 °C: 0.35 %.
yardstick(vapourDeficit, { against: "IAPWS-IF97", within: 0.0035, unit: "share" }, () =>
  saturation.flatMap(({ temperature, pressure }) =>
    [1, 40, 75, 99].map((humidity) => [at(temperature, humidity), (pressure * (1 - humidity / 100)) / 10] as const),
  ),
);
yardstick(vapourDeficit, { against: "PsychroLib", within: 0.0035, unit: "share" }, () =>
  [1, 8, 16, 24, 32, 40].flatMap((t) =>
    [20, 50, 80].map(
      (rh) => [at(t, rh), (psychrolib.GetSatVapPres(t) - psychrolib.GetVapPresFromRelHum(t, rh / 100)) / 1000] as const,
    ),
  ),
);

test("saturated air draws nothing", () => expect(at(20, 100)).toBeCloseTo(0, 12));
test("0.5 for 50 % gets a message that says so", () =>
  expect(callCell(vapourDeficit, 20, 0.5)).toMatch(/humidity holds 0.5: .*; 80 for 80 %, not 0.8$/));
