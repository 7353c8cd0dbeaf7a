/** The part of PsychroLib that the tests call. Shares are 0 to 1, temperatures °C, pressures Pa, once SI is set. */
declare module "psychrolib" {
  const psychrolib: {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    GetSatVapPres(temperature: number): number;
    GetVapPresFromRelHum(temperature: number, humidity: number): number;
    GetTDewPointFromRelHum(temperature: number, humidity: number): number;
    GetTDewPointFromVapPres(temperature: number, vapourPressure: number): number;
    GetHumRatioFromRelHum(temperature: number, humidity: number, pressure: number): number;
    GetRelHumFromHumRatio(temperature: number, ratio: number, pressure: number): number;
    GetMoistAirDensity(temperature: number, ratio: number, pressure: number): number;
    GetDryAirDensity(temperature: number, pressure: number): number;
    GetStandardAtmPressure(elevation: number): number;
  };
  export default psychrolib;
}
