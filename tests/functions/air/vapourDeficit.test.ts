import psychrolib from "psychrolib";
import { vapourDeficit } from "../../../functions/air/vapourDeficit";
import { cautions } from "../../../functions/cautions";
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

// Skin at another temperature than the air: saturation there less the vapour of the air.
yardstick(vapourDeficit, { against: "PsychroLib, skin at another temperature", within: 0.0045, unit: "share" }, () =>
  [20, 25, 28].flatMap((t) =>
    [30, 33].flatMap((skin) =>
      [40, 50, 80].map(
        (rh) =>
          [
            callCell(vapourDeficit, t, rh, null, skin) as number,
            (psychrolib.GetSatVapPres(skin) - psychrolib.GetVapPresFromRelHum(t, rh / 100)) / 1000,
          ] as const,
      ),
    ),
  ),
);

test("what the caution says of warm skin is what is answered; without it, it is at the air's temperature", () => {
  expect(cautions.warmSkin).toContain("in air of 25 °C and 50 % twice as much at 32 °C as at 25");
  expect((callCell(vapourDeficit, 25, 50, null, 32) as number) / at(25, 50)).toBeCloseTo(2, 1);
  expect(callCell(vapourDeficit, 25, 50, null, 25)).toBe(at(25, 50));
  expect(callCell(vapourDeficit, 77, 50, "imperial", 89.6)).toBeCloseTo(
    callCell(vapourDeficit, 25, 50, null, 32) as number,
    9,
  );
  expect(callCell(vapourDeficit, 25, 100, null, 15)).toBeLessThan(0); // water settles on a cool skin
});

test("saturated air draws nothing", () => expect(at(20, 100)).toBeCloseTo(0, 12));
test("0.5 for 50 % gets a message that says so", () =>
  expect(callCell(vapourDeficit, 20, 0.5)).toMatch(/humidity holds 0.5: .*; 80 for 80 %, not 0.8$/));
