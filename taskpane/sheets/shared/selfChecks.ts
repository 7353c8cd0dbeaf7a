import { VERSION } from "../../../functions/release";
import { town } from "./scenario";

/**
 * Every function once, against a figure that this project did not work out, or that follows from a definition.
 * A test holds each `expected` against the table or the arithmetic that `from` names.
 */
export interface SelfCheck {
  /** The function, without its prefix. */
  readonly name: string;
  /** What is asked, in words. */
  readonly asks: string;
  /** A formula that answers one cell. */
  readonly formula: string;
  readonly expected: number | string | boolean;
  /** How far a figure may be off; 0 where it must be exact. */
  readonly within: number;
  /** Where the expected figure comes from, and why it may be off by so much. */
  readonly from: string;
}

/** Numbers as an array of one column. */
const down = (values: readonly (number | string)[]): string =>
  `{${values.map((value) => (typeof value === "string" ? `"${value}"` : String(value))).join(";")}}`;

const DEFINITION = "by definition";
const PRACTICE = "common practice, no source";
const rounding = "for rounding alone";

// Means of the hours, Lebanon NH, °C: U.S. Climate Normals 1991-2020.
const lebanonMeans = down([-6.78, -5.33, -0.06, 6.83, 13.72, 18.39, 21.28, 20.33, 15.94, 9.22, 2.89, -2.89]);
const seattleMeans = down([
  5.3907491819, 6.1133928571, 7.7423387097, 9.8116666667, 12.8913978495, 15.5648611111, 18.2680107527, 18.4045698925,
  15.6731944444, 11.2385752688, 7.3230555556, 4.7403225806,
]);
const berlin = {
  temperatures: down([0.84, 1.89, 4.99, 10.28, 14.06, 17.77, 19.64, 18.84, 14.81, 10.0, 5.67, 2.7]),
  rains: down([50.8, 32.6, 35.1, 25.4, 55.2, 60.1, 86.2, 61.9, 44.2, 44.6, 43.6, 43.5]),
};
const plan = down(["2026-09-21", "2026-10-05", "2026-11-16", "2027-02-08", "2027-03-22", "2027-03-29"]);
const lossDays = down([0, 7, 14, 28, 42, 56, 75, 90].map((day) => 46_000 + day));
const lossMasses = down([152, 151.2, 150.9, 149.8, 149.1, 148, 146.8, 145.9]);
const women = {
  masses: down([115, 117, 120, 123, 126, 129, 132, 135, 139, 142, 146, 150, 154, 159, 164]),
  lengths: down([58, 59, 60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 70, 71, 72]),
};
const fourTimes = down(["2026-11-02T08:00", "2026-11-02T10:00", "2026-11-02T12:00", "2026-11-02T20:00"]);

export const selfChecks: readonly SelfCheck[] = [
  {
    name: "FLUCTUATION",
    asks: "18.5 by day, 7 by night",
    formula: "=VIV.FLUCTUATION(18.5,7)",
    expected: 11.5,
    within: 1e-9,
    from: DEFINITION,
  },
  {
    name: "MEDIAN24",
    asks: "18.5 by day, 7 by night",
    formula: "=VIV.MEDIAN24(18.5,7)",
    expected: 12.75,
    within: 1e-9,
    from: DEFINITION,
  },
  {
    name: "LAPSE",
    asks: "15 °C at sea level, at 1000 m",
    formula: "=VIV.LAPSE(15,0,1000)",
    expected: 8.5,
    within: 1e-9,
    from: "standard atmosphere, ICAO Doc 7488/3",
  },
  {
    name: "LAPSEBAND",
    asks: "Segovia's July high at Navacerrada",
    formula: '=INDEX(VIV.LAPSEBAND(30.27,1005,1888,"high",7,40.95),1,2)',
    expected: 23.49,
    within: 1,
    from: "seen there, CLIMAT reports 2004-2020 (Datenbasis: Deutscher Wetterdienst, Einzelwerte gemittelt); 1 K is the band's least margin",
  },
  {
    name: "LAPSEFIT",
    asks: "The standard atmosphere's fall, K per km",
    formula: "=INDEX(VIV.LAPSEFIT({15;11.75;8.5},{0;500;1000}),1,2)",
    expected: 6.5,
    within: 1e-9,
    from: "standard atmosphere, ICAO Doc 7488/3",
  },
  {
    name: "STATIONGAP",
    asks: "300 m, band 1200 to 1800 m",
    formula: "=VIV.STATIONGAP(300,1200,1800)",
    expected: -900,
    within: 0,
    from: DEFINITION,
  },
  {
    name: "STATIONRANK",
    asks: "Segovia to Navacerrada, km",
    formula: '=INDEX(VIV.STATIONRANK({"Segovia",1005,40.95,-4.13},1300,1600,40.79,-4.01),1,3)',
    expected: 20.4,
    within: 0.1,
    from: "great circle worked out elsewhere (Python), given to a tenth",
  },
  {
    name: "ONDATE",
    asks: "High of 14 July from Lebanon's months",
    formula: `=VIV.ONDATE(${down(town.high)},DATE(2026,7,14))`,
    expected: 28.28,
    within: 0.4,
    from: "NOAA daily normals 1991-2020, harmonic fits: no curve comes nearer on every day",
  },
  {
    name: "DAILY",
    asks: "15 August from Seattle's months",
    formula: `=INDEX(VIV.DAILY(${seattleMeans},2026),227,2)`,
    expected: 18.5735584779,
    within: 1e-8,
    from: "SciPy 1.10.1, spline through the running sum",
  },
  {
    name: "COOLSPELL",
    asks: "Days below 5 °C from Lebanon's months",
    formula: `=INDEX(VIV.COOLSPELL(${lebanonMeans},5,2026),1,3)`,
    expected: 155,
    within: 4,
    from: "counted in NOAA daily normals 1991-2020; the curve is 0.1 K off, which moves each end by a day or two",
  },
  {
    name: "SEASONSHIFT",
    asks: "January of a year moved by 6",
    formula: "=INDEX(VIV.SEASONSHIFT({1;2;3;4;5;6;7;8;9;10;11;12}),1)",
    expected: 7,
    within: 0,
    from: DEFINITION,
  },
  {
    name: "DRYMONTH",
    asks: "July at Navacerrada: 17.75 °C, 13.9 mm",
    formula: "=VIV.DRYMONTH(17.75,13.9)",
    expected: true,
    within: 0,
    from: "Walter & Lieth (from memory), counted with NumPy",
  },
  {
    name: "KOPPEN",
    asks: "Berlin",
    formula: `=VIV.KOPPEN(${berlin.temperatures},${berlin.rains},52.45)`,
    expected: "Cfb",
    within: 0,
    from: "class published with the map of Rubel et al. 2016",
  },
  {
    name: "HOURCURVE",
    asks: "30 and 10 °C, 12 hours of day, at 14:00",
    formula: "=INDEX(VIV.HOURCURVE(30,10,12,{14}),1,1)",
    expected: 29.9921725121,
    within: 0.05,
    from: "TrenchR 1.1.1, which puts the low at sunrise, 10 minutes later",
  },
  {
    name: "PRESSURE",
    asks: "At 1000 m, hPa",
    formula: "=VIV.PRESSURE(1000)",
    expected: 898.7457050221,
    within: 0.02,
    from: "standard atmosphere, integrated with SciPy; a map's metre differs by 0.017 hPa from the standard's",
  },
  {
    name: "DEWPOINT",
    asks: "25 °C, 80 %",
    formula: "=VIV.DEWPOINT(25,80)",
    expected: 21.3094,
    within: 0.045,
    from: "PsychroLib, with the vapour pressure of ASHRAE: 0.3 % apart",
  },
  {
    name: "VAPOURDEFICIT",
    asks: "20 °C, 50 %, kPa",
    formula: "=VIV.VAPOURDEFICIT(20,50)",
    expected: 1.1696,
    within: 0.0036,
    from: "half of IAPWS-IF97's saturation pressure, 0.3 % apart",
  },
  {
    name: "WATERINAIR",
    asks: "20 °C, 50 %, g per m³",
    formula: "=VIV.WATERINAIR(20,50)",
    expected: 8.645,
    within: 0.027,
    from: "IAPWS-IF97 and the gas law, 0.3 % apart",
  },
  {
    name: "HUMIDITYAFTER",
    asks: "10 °C with 80 %, warmed to 26 °C",
    formula: "=VIV.HUMIDITYAFTER(10,80,26)",
    expected: 29.2104156482,
    within: 0.1,
    from: "IAPWS-IF97, 0.3 % apart",
  },
  {
    name: "DAYLENGTH",
    asks: "52° north on 15 July 2025, h",
    formula: "=VIV.DAYLENGTH(52,DATE(2025,7,15))",
    expected: 16.2484005364,
    within: 0.0167,
    from: "Astropy 5.2.1; within a minute",
  },
  {
    name: "RAMP",
    asks: "Half way from 24 to 8 °C",
    formula: "=INDEX(VIV.RAMP(DATE(2026,10,5),24,8,42),4,2)",
    expected: 16,
    within: 1e-9,
    from: DEFINITION,
  },
  {
    name: "RAMPDATES",
    asks: "Days from last to first meal",
    formula: "=INDEX(VIV.RAMPDATES(DATE(2026,9,21),14,42,84,42,7),6,2)-DATE(2026,9,21)",
    expected: 189,
    within: 0,
    from: DEFINITION,
  },
  {
    name: "RAMPDATESTO",
    asks: "The same, planned backwards",
    formula: "=DATE(2027,3,29)-INDEX(VIV.RAMPDATESTO(DATE(2027,3,29),14,42,84,42,7),1,2)",
    expected: 189,
    within: 0,
    from: DEFINITION,
  },
  {
    name: "SETPOINT",
    asks: "Half way down, 26 October",
    formula: `=VIV.SETPOINT(DATE(2026,10,26),${plan},24,8)`,
    expected: 16,
    within: 1e-9,
    from: DEFINITION,
  },
  {
    name: "STAGE",
    asks: "New Year's Day",
    formula: `=VIV.STAGE(DATE(2027,1,1),${plan})`,
    expected: "Cold",
    within: 0,
    from: DEFINITION,
  },
  {
    name: "RAMPCHECK",
    asks: "A meal while cooling",
    formula: `=INDEX(VIV.RAMPCHECK(${plan},24,8,DATE(2026,10,12)),1,1)`,
    expected: "stop",
    within: 0,
    from: PRACTICE,
  },
  {
    name: "MASSLOSS",
    asks: "From 320 to 312 g",
    formula: "=VIV.MASSLOSS(320,312)",
    expected: 0.025,
    within: 1e-12,
    from: DEFINITION,
  },
  {
    name: "LOSSTREND",
    asks: "Eight weighings, share per 30 days",
    formula: `=INDEX(VIV.LOSSTREND(${lossDays},${lossMasses},46120),1,2)`,
    expected: 0.0130713296,
    within: 1e-9,
    from: `SciPy 1.10.1 theilslopes, ${rounding}`,
  },
  {
    name: "OXYGENUSE",
    asks: "10 g at 25 °C, likely, ml per h",
    formula: "=INDEX(VIV.OXYGENUSE(10,25),1,2)",
    expected: 0.7310437227,
    within: 1e-6,
    from: `Andrews & Pough 1985 evaluated in R 4.2.2, ${rounding}`,
  },
  {
    name: "BOXAIR",
    asks: "CO2 at a floor of 19 %, likely",
    formula: "=INDEX(VIV.BOXAIR(300,5,5.3),1,5)",
    expected: 1.56,
    within: 1e-9,
    from: "by definition: 0.04 + 0.8·(20.9 − 19)",
  },
  {
    name: "METABOLICLOSS",
    asks: "300 g at 5 °C, 30 days, likely share",
    formula: "=INDEX(VIV.METABOLICLOSS(300,5,30),1,2)",
    expected: 0.0017670381,
    within: 1e-9,
    from: `SciPy 1.17.1, ${rounding}`,
  },
  {
    name: "Q10RATE",
    asks: "12 at 25 °C, at 5 °C",
    formula: "=VIV.Q10RATE(12,25,5)",
    expected: 2.083333,
    within: 1e-6,
    from: "by definition: 12/2.4²",
  },
  {
    name: "PREYRATIO",
    asks: "18 g of prey, 240 g of snake",
    formula: "=VIV.PREYRATIO(18,240)",
    expected: 0.075,
    within: 1e-12,
    from: DEFINITION,
  },
  {
    name: "PREYMASS",
    asks: "A tenth of 240 g",
    formula: "=VIV.PREYMASS(240,0.1)",
    expected: 24,
    within: 1e-9,
    from: DEFINITION,
  },
  {
    name: "PREYITEMS",
    asks: "8 g items for a tenth of 240 g",
    formula: "=VIV.PREYITEMS(240,8,0.1)",
    expected: 3,
    within: 0,
    from: DEFINITION,
  },
  {
    name: "NEXTMEAL",
    asks: "Days to the next, every 7",
    formula: "=VIV.NEXTMEAL(DATE(2026,6,1),7)-DATE(2026,6,1)",
    expected: 7,
    within: 0,
    from: DEFINITION,
  },
  {
    name: "MEALDATES",
    asks: "Meals from 1 to 25 June, every 7",
    formula: "=ROWS(VIV.MEALDATES(DATE(2026,6,1),DATE(2026,6,25),7))",
    expected: 4,
    within: 0,
    from: DEFINITION,
  },
  {
    name: "MEALCOUNT",
    asks: "Meals from 1 to 25 June, every 7",
    formula: "=VIV.MEALCOUNT(DATE(2026,6,1),DATE(2026,6,25),7)",
    expected: 4,
    within: 0,
    from: DEFINITION,
  },
  {
    name: "REFUSALS",
    asks: "Taken, refused, refused",
    formula: '=VIV.REFUSALS({"taken";"refused";"refused"})',
    expected: 2,
    within: 0,
    from: DEFINITION,
  },
  {
    name: "GROWTHRATE",
    asks: "20 to 30 g in 70 days, % a day",
    formula: "=VIV.GROWTHRATE(20,DATE(2026,4,1),30,DATE(2026,6,10))",
    expected: 0.579236,
    within: 1e-6,
    from: "by definition: 100·ln(1.5)/70",
  },
  {
    name: "MASSTREND",
    asks: "Eight weighings, g a week",
    formula: `=VIV.MASSTREND(${lossDays},${lossMasses})`,
    expected: -0.4635964914,
    within: 1e-9,
    from: `SciPy 1.10.1 theilslopes, ${rounding}`,
  },
  {
    name: "SCALEDMASS",
    asks: "The first of fifteen",
    formula: `=INDEX(VIV.SCALEDMASS(${women.masses},${women.lengths}),1)`,
    expected: 138.5304452901,
    within: 1e-6,
    from: `R 4.2.2 with smatr 3.4-8, data set women, ${rounding}`,
  },
  {
    name: "AGE",
    asks: "Months, 14 Aug 2025 to 13 Feb 2027",
    formula: "=VIV.AGE(DATE(2025,8,14),DATE(2027,2,13))",
    expected: 17,
    within: 0,
    from: DEFINITION,
  },
  {
    name: "HATCHDATES",
    asks: "Days to the latest",
    formula: "=INDEX(VIV.HATCHDATES(DATE(2026,6,20)),1,2)-DATE(2026,6,20)",
    expected: 65,
    within: 0,
    from: PRACTICE,
  },
  {
    name: "INCUBATIONDAYS",
    asks: "Ratsnake: 86 days at 24 °C, at 27 °C",
    formula: "=INDEX(VIV.INCUBATIONDAYS(27,86,24),1,1)",
    expected: 66.3,
    within: 2,
    from: "Du & Ji 2008 (Elaphe taeniura), mean in the abstract; the threshold stands for several species",
  },
  {
    name: "HATCHFORECAST",
    asks: "Share developed, 6 of 60 days at 26 °C",
    formula:
      "=INDEX(VIV.HATCHFORECAST(DATE(2026,6,20),{46193;46194;46195;46196;46197;46198},{26;26;26;26;26;26},60),1,1)",
    expected: 0.1,
    within: 1e-9,
    from: DEFINITION,
  },
  {
    name: "DEGREEDAYS",
    asks: "20 and 5 °C, above 10 °C",
    formula: "=VIV.DEGREEDAYS(20,5,10)",
    expected: 3.7712244103,
    within: 1e-9,
    from: "SciPy 1.10.1, the sine integrated numerically",
  },
  {
    name: "CLUTCHRATIO",
    asks: "60 g of eggs, 180 g of spent female",
    formula: "=VIV.CLUTCHRATIO(60,180)",
    expected: 0.25,
    within: 1e-12,
    from: DEFINITION,
  },
  {
    name: "PAIRINGCHECK",
    asks: "Younger than the keeper's least age",
    formula: "=INDEX(VIV.PAIRINGCHECK(14,260,24,220),1,1)",
    expected: "stop",
    within: 0,
    from: PRACTICE,
  },
  {
    name: "DAYTABLE",
    asks: "Fluctuation of a day with 22 and 18 °C",
    formula: '=INDEX(VIV.DAYTABLE({"2026-11-02T08:00";"2026-11-02T20:00"},{22;18}),1,4)',
    expected: 4,
    within: 1e-9,
    from: DEFINITION,
  },
  {
    name: "TIMEOUTSIDE",
    asks: "Hours above 8 °C",
    formula: `=INDEX(VIV.TIMEOUTSIDE(${fourTimes},{6;10;6;4},5,8),1,2)`,
    expected: 2,
    within: 1e-6,
    from: DEFINITION,
  },
  {
    name: "READINGGAPS",
    asks: "Hours of the first gap",
    formula: `=INDEX(VIV.READINGGAPS(${fourTimes}),1,3)`,
    expected: 8,
    within: 1e-6,
    from: DEFINITION,
  },
  {
    name: "TRACKING",
    asks: "16.5 °C on a day set to 16 °C",
    formula: `=INDEX(VIV.TRACKING({"2026-10-26T12:00"},{16.5},${plan},24,8),1,4)`,
    expected: 0.5,
    within: 1e-9,
    from: DEFINITION,
  },
  {
    name: "PROXYNOTE",
    asks: "How the sentence begins",
    formula: '=LEFT(VIV.PROXYNOTE("Pass",700,1200,1800),11)',
    expected: "Pass, 700 m",
    within: 0,
    from: DEFINITION,
  },
  {
    name: "SOURCE",
    asks: "Of STATIONGAP",
    formula: '=INDEX(VIV.SOURCE("STATIONGAP"),1,1)',
    expected: "By definition.",
    within: 0,
    from: DEFINITION,
  },
  {
    name: "CAUTION",
    asks: "Of ONDATE, how it begins",
    formula: '=LEFT(INDEX(VIV.CAUTION("ONDATE"),1,1),14)',
    expected: "A smooth curve",
    within: 0,
    from: DEFINITION,
  },
  {
    name: "RELEASE",
    asks: "The version of this sheet",
    formula: "=VIV.RELEASE()",
    expected: VERSION,
    within: 0,
    from: "package.json",
  },
];
