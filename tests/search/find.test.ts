import { catalogue } from "../../functions/catalogue";
import { sheets } from "../../taskpane/sheets/catalogue";
import { everydayWords } from "../../taskpane/search/everydayWords";
import { find } from "../../taskpane/search/find";

const found = (typed: string): readonly string[] => find(typed).map(({ id }) => id);

/**
 * What keepers type, and the function, sheet (by its key) or caution that is meant: one of them among the first three.
 * Common practice, no source; the first block was typed in vain by people who tried an earlier version.
 */
const asked: Readonly<Record<string, string>> = {
  hibernate: "RAMPDATES coolingPlan",
  fridge: "RAMPDATES SETPOINT coolingPlan",
  refrigerator: "SETPOINT RAMPDATES",
  "how much food": "PREYMASS",
  "how often to feed": "NEXTMEAL MEALDATES",
  photoperiod: "DAYLENGTH",
  ventilation: "BOXAIR OPENEVERY",
  gravid: "BIRTHDATES CLUTCHRATIO breedingSeason PAIRINGCHECK",
  basking: "HOURCURVE",
  "night drop": "FLUCTUATION",
  "dry season": "DRYMONTH",
  "wake up": "RAMPDATESTO",
  filter: "STATIONRANK",
  growth: "MASSTREND GROWTHRATE",
  eggs: "HATCHDATES incubation",
  mouse: "PREYRATIO PREYMASS",
  csv: "DAYTABLE readings",
  "won't eat": "REFUSALS",
  "losing weight": "MASSLOSS LOSSTREND",

  brumation: "RAMPDATES coolingPlan",
  hibernation: "RAMPDATES coolingPlan winterLog",
  "when does winter start": "RAMPDATES",
  "winter plan": "coolingPlan RAMPDATES",
  "is it safe to hibernate": "RAMPCHECK WINTERREADY coolingPlan",
  "ready for winter": "WINTERREADY",
  "vet check before winter": "WINTERREADY coolingPlan",
  "end hibernation early": "ENDEARLY",
  "wake early": "ENDEARLY",
  "sick in winter": "ENDEARLY WINTERSIGNS",
  "warning signs": "WINTERSIGNS",
  "temperature steps": "RAMP",
  "cool down": "RAMP coolingPlan",
  thermostat: "SETPOINT HOURCURVE",
  "what temperature today": "SETPOINT",
  "winter stage": "STAGE STAGECARE",
  soaking: "STAGECARE",
  "water in winter": "STAGECARE",
  oxygen: "BOXAIR OXYGENUSE",
  "carbon dioxide": "BOXAIR",
  co2: "BOXAIR",
  "air holes": "BOXAIR OPENEVERY",
  "open the box": "OPENEVERY BOXAIR",
  suffocate: "BOXAIR",
  metabolism: "OXYGENUSE METABOLICLOSS Q10RATE",
  "expected weight loss": "METABOLICLOSS",
  "weight loss in winter": "LOSSTREND MASSLOSS winterLog METABOLICLOSS",
  "weight loss": "MASSLOSS LOSSTREND",
  thin: "MASSLOSS SCALEDMASS",
  fat: "SCALEDMASS METABOLICLOSS",
  obese: "SCALEDMASS",
  "body condition": "SCALEDMASS",
  overweight: "SCALEDMASS",
  underweight: "SCALEDMASS MASSLOSS",
  "what to do today": "DUE animals",
  today: "animals DUE",
  overdue: "DUE animals",
  "to do list": "animals DUE",
  reminder: "DUE",

  "how many mice": "PREYITEMS preyStock MEALCOUNT",
  pinkies: "PREYITEMS preyStock",
  rat: "PREYRATIO PREYMASS PREYITEMS",
  "prey size": "PREYRATIO PREYMASS",
  "meal too big": "MEALCHECK PREYRATIO",
  "meal size": "PREYMASS PREYRATIO MEALCHECK",
  overfeeding: "MEALCHECK",
  "next feeding": "NEXTMEAL",
  "feeding schedule": "MEALDATES NEXTMEAL",
  "feeding log": "feedingLog",
  "feeding diary": "feedingLog",
  "frozen mice": "preyStock MEALCOUNT",
  freezer: "preyStock MEALCOUNT",
  "shopping list": "preyStock MEALCOUNT",
  "not eating": "REFUSALS",
  refused: "REFUSALS",
  refusing: "REFUSALS",
  vomited: "REFUSALS",
  regurgitated: "REFUSALS MEALCHECK",
  "skipped meals": "REFUSALS",

  weigh: "weights MASSTREND",
  "weight chart": "weights",
  scales: "weights",
  "weight gain": "MASSTREND GROWTHRATE",
  "how fast does it grow": "GROWTHRATE",
  "how old": "AGE",
  birthday: "AGE",
  "last weight": "LATEST",
  "last entry": "LATEST",
  "list of animals": "ROLLCALL animals",
  "summary of all animals": "ROLLCALL animals",
  "words in a column of numbers": "FIGURES",

  "when do eggs hatch": "HATCHDATES HATCHFORECAST incubation",
  incubator: "INCUBATIONDAYS incubation HATCHFORECAST",
  "incubation temperature": "INCUBATIONDAYS incubation",
  hatching: "HATCHDATES HATCHFORECAST incubation",
  "degree days": "DEGREEDAYS",
  "clutch weight": "CLUTCHRATIO",
  breeding: "breedingSeason PAIRINGCHECK",
  mating: "breedingSeason PAIRINGCHECK",
  "old enough to breed": "PAIRINGCHECK",
  pregnant: "BIRTHDATES PAIRINGCHECK",
  "due date": "BIRTHDATES HATCHDATES",
  "live bearing": "BIRTHDATES",
  babies: "hatchlings BIRTHDATES",
  "first shed": "hatchlings",
  neonates: "hatchlings",

  "nearest weather station": "STATIONS STATIONRANK stationShortlist",
  "weather station": "STATIONS STATIONRANK stationShortlist STATIONRECORD",
  "climate data": "STATIONRECORD SITECLIMATE nativeClimate",
  "climate in the wild": "SITECLIMATE nativeClimate",
  habitat: "nativeClimate SITECLIMATE",
  altitude: "LAPSE",
  "height correction": "LAPSE LAPSEBAND STATIONGAP",
  mountain: "LAPSE",
  "how sure": "LAPSEBAND SITENOTE",
  "southern hemisphere": "SEASONSHIFT",
  "average temperature": "MEDIAN24",
  "day and night": "FLUCTUATION HOURCURVE DAYLENGTH",
  rain: "DRYMONTH",
  monsoon: "DRYMONTH",
  koeppen: "KOPPEN",
  "climate zone": "KOPPEN",
  "soil temperature": "UNDERGROUND",
  burrow: "UNDERGROUND",
  "length of winter": "COOLSPELL",
  "year plan": "yearPlan",
  calendar: "yearPlan MEALDATES",
  "heat lamp": "HOURCURVE DAYLENGTH",
  "hours of light": "DAYLENGTH",
  sunrise: "DAYLENGTH",
  humidity: "HUMIDITYAFTER WATERINAIR DEWPOINT VAPOURDEFICIT",
  misting: "HUMIDITYAFTER",
  condensation: "DEWPOINT HUMIDITYAFTER",
  mould: "DEWPOINT",
  "stuck shed": "VAPOURDEFICIT",
  "dry air": "VAPOURDEFICIT",
  "air pressure": "PRESSURE",

  "data logger": "DAYTABLE readings READINGGAPS",
  thermometer: "DAYTABLE readings",
  "missing readings": "READINGGAPS",
  "battery empty": "READINGGAPS",
  "too hot": "TIMEOUTSIDE",
  "too cold": "TIMEOUTSIDE RAMPCHECK",
  "is the fridge on plan": "TRACKING",
  citation: "SOURCE",
  "where does it come from": "SOURCE aboutThisWorkbook",
  danger: "CAUTION RAMPCHECK",
  version: "RELEASE",
  "self check": "selfCheck",
  credits: "aboutThisWorkbook",

  // A caution by its words.
  "cold air pools": "fewStations estimatedSite",
  "reptile vet": "noVet",
  crevice: "proxy",

  // Typos and forms of a word.
  hibernating: "RAMPDATES coolingPlan",
  hybernation: "RAMPDATES coolingPlan winterLog",
  hibernaton: "RAMPDATES coolingPlan winterLog",
  brumating: "RAMPDATES coolingPlan RAMPCHECK RAMP",
  feedings: "MEALDATES NEXTMEAL MEALCOUNT feedingLog",
  ventilating: "BOXAIR OPENEVERY",
  ventillation: "BOXAIR OPENEVERY",
  temprature: "SETPOINT ONDATE LAPSE DAILY INCUBATIONDAYS UNDERGROUND HOURCURVE",
  incubater: "INCUBATIONDAYS incubation HATCHFORECAST",
  humidty: "HUMIDITYAFTER WATERINAIR DEWPOINT VAPOURDEFICIT",
  refusal: "REFUSALS",
  wieght: "weights MASSTREND MASSLOSS LOSSTREND",
  thermostats: "SETPOINT HOURCURVE TRACKING",
  pairings: "breedingSeason PAIRINGCHECK",
  lightning: "DAYLENGTH",
  oxigen: "BOXAIR OXYGENUSE",
};

test("there are enough of them", () => expect(Object.keys(asked).length).toBeGreaterThanOrEqual(168));

test.each(Object.entries(asked))("%s", (typed, meant) => {
  expect(found(typed).slice(0, 3)).toEqual(
    expect.arrayContaining([expect.stringMatching(`^(${meant.replaceAll(" ", "|")})$`)]),
  );
});

test("everyday words are those of functions and sheets that exist", () => {
  const ids = [...catalogue.map(({ name }) => name as string), ...sheets.map(({ key }) => key)];
  expect(Object.keys(everydayWords).filter((name) => !ids.includes(name))).toEqual([]);
});

test("the name itself comes first, however it is typed", () => {
  for (const { name } of catalogue) {
    expect(found(name)[0]).toBe(name);
    expect(found(`=VIV.${name}`)[0]).toBe(name);
    expect(found(name.toLowerCase())[0]).toBe(name);
  }
  for (const { name, key } of sheets) expect(found(name)[0]).toBe(key);
  expect(found("köppen")[0]).toBe("KOPPEN");
});

test("nothing for nothing typed, nor for what is nowhere", () => {
  expect(found("  ")).toEqual([]);
  expect(found("the of")).toEqual([]);
  expect(found("zzzzzz")).toEqual([]);
});
