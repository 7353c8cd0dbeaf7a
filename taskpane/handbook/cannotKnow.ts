/** What each function cannot know, however right its figures are. Said on its page; every function has its line. */
export const cannotKnow: Readonly<Record<string, string>> = {
  // climate
  FLUCTUATION: "How long the day stayed near its high or its low, nor what it was like where the animal lay.",
  MEDIAN24: "The hours between: two days of the same high and low may differ by a degree and more in their true mean.",
  LAPSE:
    "The slope: sun and shade, a valley that pools cold air, forest, a lake. It knows two elevations and one rate.",
  LAPSEBAND: "On which side of the band your mountain lies. It knows what many mountains did, not yours.",
  LAPSEFIT: "What happens above or below your stations, and whether they stand on the same kind of ground.",
  STATIONGAP: "Whether the station stands on a summit, in a basin or in a town: only how high it stands.",
  STATIONRANK:
    "Which side of the range a station stands on, how well it is kept, and from which years its figures are.",
  ONDATE: "The weather of any one day: it is a smooth mean of many years.",
  DAILY: "Heat waves and frosts: every year comes out the same and smooth.",
  COOLSPELL: "When a single year's winter really begins, and the warm weeks within it.",
  SEASONSHIFT: "How an animal's own clock follows the move, and what the light at your latitude does.",
  DRYMONTH: "Fog, dew, snow melt and wet ground: it weighs rain against warmth, nothing else.",
  KOPPEN: "What the climate is like within the class, or in the animal's corner of the mountain.",
  HOURCURVE: "Clouds, wind, rain and the shape of the valley: it draws a clear day.",
  STATIONS:
    "Slope, aspect and cover at each station. The network has stations only where services share their figures.",
  STATIONRECORD: "Years that are not in it, and anything that was measured beside the station's screen.",
  STATIONPLACE: "Whether the station has been moved since, and what grows and stands around it today.",
  SITECLIMATE: "The ground: cliffs, forest, a cold hollow, the sea's fog. It was never measured at the place itself.",
  SITENOTE: "More than SITECLIMATE knows; it says so in words, so that a reader can weigh it.",
  UNDERGROUND: "Sun on the ground, snow, roots, stones and water: it knows uniform ground as warm on top as the air.",

  // air and daylight
  PRESSURE: "Today's weather, which moves the pressure by a few per cent.",
  DEWPOINT: "How warm the glass, the wall or the skin is on which water would condense.",
  VAPOURDEFICIT: "How wet the animal's skin is, how the air moves, and what it drinks.",
  WATERINAIR: "How much water the substrate holds, which is where most animals find it.",
  HUMIDITYAFTER: "Water added or taken on the way: a wet box, a bowl, an open door.",
  DAYLENGTH: "Mountains and trees before the sun, clouds, and the twilight before sunrise and after sunset.",

  // winter
  RAMP: "Whether the animal is fit to be cooled, and whether your refrigerator follows the set-points.",
  RAMPDATES: "Whether the gut is empty by then, and whether the animal is well: look at droppings, weight and breath.",
  RAMPDATESTO:
    "Whether the gut is empty by then, and whether the animal is well: look at droppings, weight and breath.",
  SETPOINT: "What the thermostat really does: measure where the animal lies.",
  STAGE: "What the animal is doing. It reads a calendar.",
  STAGECARE: "Your animal's state. It says what practice asks for in a stage, and practice has no source.",
  DUE: "Anything that you have not typed in, and how the animal looks this morning.",
  RAMPCHECK: "The animal. It holds dates and temperatures against practice and against your own limits.",
  WINTERREADY:
    "What nobody has looked at: a blank is not looked at, and parasites and a bad heart do not show from outside.",
  ENDEARLY: "Why the winter has to end. If the animal is ill, the vet decides how it is warmed, not this table.",
  MASSLOSS: "Of what the loss is: water, fat, droppings or a wet animal on the scales.",
  LOSSTREND: "Whether the trend goes on: a loss may quicken with a warm week or a dry box.",
  OXYGENUSE: "Your species and your animal: it is one curve for quiet snakes, with a wide band.",
  BOXAIR: "How tight the box is, what the bedding uses, and whether the animal is awake.",
  OPENEVERY: "How tight the box is, and whether somebody opens it on a holiday.",
  WINTERSIGNS: "Breathing, posture and skin. It reads a log; look at the animal as well.",
  METABOLICLOSS: "What the animal drank and passed. It reckons what a quiet body burns.",
  Q10RATE: "Where the straight rule ends: near freezing, and in a fever of activity, bodies do not follow it.",

  // feeding
  PREYRATIO: "How wide the prey is, which chokes sooner than its mass does.",
  PREYMASS: "What ratio is right for your animal: you give it.",
  PREYITEMS: "How large one item is beside the animal's head.",
  NEXTMEAL: "Whether the animal is in shed, unwell or not hungry that day.",
  MEALDATES: "Which of the meals will be taken.",
  MEALCOUNT: "Refusals, items thrown away, and an animal that grows into a larger size.",
  MEALCHECK: "What it was not told: a blank limit is named in its answer, not guessed.",
  REFUSALS: "Why: shed, season, breeding, warmth or illness. The vet knows more.",

  // condition
  GROWTHRATE: "Whether the two weighings were alike: before a meal, on the same scales.",
  MASSTREND: "Whether it is muscle, fat, eggs or food that is weighed.",
  SCALEDMASS: "Which index is healthy: it compares animals with one another, not with an ideal.",
  AGE: "A birth date that was guessed.",

  // breeding
  HATCHDATES: "Your incubator, and your species where nobody has measured it.",
  INCUBATIONDAYS: "Whether eggs hatch at that temperature, and what the young are like.",
  HATCHFORECAST: "Whether an egg is fertile or alive, and what the air between two readings was.",
  DEGREEDAYS: "The true run of the day: it puts a sine through its high and its low.",
  CLUTCHRATIO: "How the female recovers: weigh her, and have her looked at.",
  PAIRINGCHECK: "Her health, and whether the limits that you typed are the right ones: they are yours.",
  BIRTHDATES: "When she conceived: a female may keep sperm for months.",

  // readings
  DAYTABLE: "Where the probe lay, whether it is right, and what happened in a gap.",
  TIMEOUTSIDE: "What happened between two readings and in gaps: it draws straight lines, and leaves long gaps out.",
  READINGGAPS: "What the temperature did meanwhile.",
  TRACKING: "Whether the plan was right; only how near the box came to it.",
  WEEKSBELOW: "What a day without readings was like: it counts it as not read, never as cold.",

  // tables
  LATEST: "Whether an old entry still holds today.",
  ROLLCALL: "Two names of one animal: it takes each spelling for an animal of its own.",
  FIGURES: "What the words meant that it leaves out.",

  // sharing
  PROXYNOTE: "Anything about the station but its elevation and distance.",
  SOURCE: "Whether a source that it calls recalled says quite what we remember.",
  CAUTION: "The cautions of your own animal, house and law.",
  RELEASE: "Whether a newer version is out.",
};
