/** Every caution, once: short, for the place where the work is done. */
export const cautions = {
  // common
  noVet: "No veterinary advice. Ask a reptile vet when an animal loses condition, breathes badly or does not wake.",

  // climate
  proxy: "A weather station shows the year's curve in the open air, not the crevice in which the animal sits.",
  midPoint:
    "The mid-point is no 24-hour mean: of the months reported by 1611 stations, nine in ten lie 0.3 K below to 1.0 K above; in Germany, where hours are averaged, 0.4 K either way. In one month of one foggy city the true median was 1.8 K lower.",
  lapseRate: "No one rate fits every slope and season: LAPSEBAND shows how far off it may be.",
  lapseBand:
    "About one month in nine falls outside the band, one in five in the valleys of western North America. For highs the likely value is no better than 6.5 K per km.",
  ruleOfThumb:
    "How gap and distance weigh is a rule of thumb: 100 m of gap count as 10 km. Look at slope, coast and valley too.",
  stationNetwork:
    "A record of your own, or of a logger on site, wins over the network: its reports are averaged and not checked by hand.",
  estimatedSite:
    "An estimate for open ground. It is off most where cold air pools (basins, valley floors), on coasts with fog, and far above all stations.",
  smoothCurve: "A smooth curve through monthly means: single days, and whole weeks, run well above and below it.",
  turnedYear: "Only the calendar turns: day length, rain and the wild animal's own clock stay as they are in its home.",
  fewStations:
    "A line through a few stations says little beyond their own elevations, and nothing about a valley that pools cold air.",
  classEdge:
    "A class is a coarse box: near its edge another thirty years of records change it. Mid-points of high and low run up to 1 K warmer than means: try each month a degree colder. Of 402 stations from 800 m up one in six is then of another class.",
  modelHours:
    "A model of a clear day in solar time (12 is the highest sun, not noon by the clock): typically 1.8 K off in an hour of a real one, 0.7 K too warm on average. Set a thermostat by it; do not quote it as data.",
  bareGround:
    "Bare, uniform ground as warm as the air above: sun, canopy, snow, slope and water are not in it. At 66 open stations the ground was 1.9 K warmer over the year. It shows about how much smaller swings are below, not a set-point, and nothing about frost.",

  // air and daylight
  standardDay: "The standard atmosphere, not today's weather, which moves the pressure by a few per cent.",
  overWater:
    "Over water. Below 0 °C ice forms first, at a frost point that is higher: by 1.4 K in air of -10 °C and 80 %.",
  warmSkin:
    "Skin that is warmer than the air loses more: in air of 25 °C and 50 % twice as much at 32 °C as at 25. Give the skin's temperature.",
  ventedAir: "For the same air in a vented box, with no water added or taken: wet substrate and animals add some.",
  farFromGreenwich:
    "Flat horizon, day counted at Greenwich: near an equinox up to 3 minutes off at 60° on the far side of the earth.",

  // winter
  coldKills: "Cooling can kill. Cool only a healthy, well-fed animal with an empty gut, and ask a reptile vet first.",
  noFoodInTheCold: "No food from the last meal to the first: food left in a cold gut can kill. Fresh water always.",
  noVetCheck: "A plan is held against practice; the animal is not looked at. This is no veterinary check.",
  noLossLimit:
    "No limit of winter mass loss is published for snakes as far as we know: agree one with your reptile vet.",
  quietAnimal:
    "For a quiet, fasting snake; species differ by half either way. One that moves, digests or carries young uses far more.",
  openTheBox:
    "Take it as a reason to open the box more often, never less: leaks, damp bedding and a restless animal change the figure.",
  boxFloor:
    "The floor is practice, no source. At 19 % of oxygen, carbon dioxide stands near 1.6 %; from 1.5 % up it lowered gas exchange in two snakes (Oda et al. 2021).",
  waterLoss:
    "A loss beyond the most that a quiet animal burns is water, droppings or a warmer box: look at humidity and drinking water first, then ask a reptile vet.",
  q10Differs: "Q10 differs: 2.4 to 4.8 in the species measured, higher in the cold. Use it for a few degrees only.",

  // feeding
  feedTheAnimal: "A date is a suggestion: an animal in shed, unwell or just back from the cold may need to wait.",
  refusing: "Refused meals call for a look at warmth, hiding place and weight; a regurgitation, for a reptile vet.",

  meal: "Large prey can choke a small-headed snake or be brought up: start small, most of all after the cold.",

  // condition
  narrowLengths:
    "Below ten animals the exponent is 3, as for bodies of one shape; animals of nearly one length give an unsure one. Measure snout to vent, compare the sexes apart and leave gravid females out. Not for one animal followed while it grows.",
  sameScales: "Weigh on the same scales, before a meal: food, droppings and eggs weigh more than a month's growth.",

  // breeding
  hatchingSuccess:
    "Eggs hatched, Elaphe taeniura: 50 % at 22 °C, 78-79 % at 24-30 °C, 41 % at 32 °C (Du & Ji 2008). Natrix natrix: 4 and 11 % at 19 °C (two studies), 31 % at 21 °C, 79 % at 23 °C (RepDevo).",
  eggSpecies:
    "Start from your own clutches: days differ by species and by mother. The threshold of 14 °C fits four Asian colubrids.",
  twoBases:
    "Papers use both bases: 0.25 of female and clutch together is 0.33 of the spent female. Say which one yours is.",
  spentFemale:
    "A female that is thin after laying needs feeding up and a reptile vet's eye before any thought of another clutch.",
  practiceDays:
    "55 to 65 days at 26 °C is practice: of seven colubrids measured, three lie inside; in all they took 37 to 72 days. Your own clutches say more.",
  hotEggs:
    "Above 34 °C eggs may die within hours (common practice, no source). Warm swings harm more than a steady warmth of the same mean (Raynal et al. 2022).",
  dailySwing:
    "For days and nights that differ take the mean: of 17 groups of eggs at means of 23 to 28 °C that swung by 12 K or less, the days were 9 % fewer to 11 % more than of eggs held steady; of the one snake among them, Natrix natrix at 19 to 31 °C, 3 % more (RepDevo).",
  lateEggs: "Never open an egg because a date has passed: cooler eggs take longer, and clutches differ.",

  // readings
  probePlace: "A probe tells of the spot where it lies: the warm end, the cool end and the animal differ.",
  skippedReadings:
    "A row that cannot be read is skipped, and nothing is assumed of a gap: look at both before trusting a calm day.",

  // tables
  oldEntry: "An old entry is not today's: look at its day before a meal or a winter rests on it.",
  leftOut: "A word that is left out may be the news: look at what stands there before trusting the figures around it.",
} as const;

export type CautionKey = keyof typeof cautions;
