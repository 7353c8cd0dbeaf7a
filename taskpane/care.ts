import { topics } from "../functions/catalogue";
import { cautions, type CautionKey } from "../functions/cautions";

/** What the tool is not, for the pane and the handbook. */
export const notThis: readonly string[] = [
  "No vet. It never sees the animal.",
  "No recipe. It works out what you decide, from figures that you choose.",
  "No thermostat and no alarm. It switches nothing and watches nothing.",
  "No measurement: the examples are invented, and a weather station is not a crevice.",
];

/** The signs at which a vet is called. */
export const signs: readonly string[] = [
  "Breathing with the mouth open, wheezing, bubbles or slime at the nose or mouth.",
  "Losing weight faster than you agreed with your vet, at any time of the year.",
  "Not waking when it should, or lying limp.",
  "Bringing up food, or refusing for long outside the winter and the shed.",
  "A female that strains and does not lay, or anything that hangs out of the vent.",
  "Wounds, burns, swellings, mites, or eyes and mouth that look wrong.",
];

/** What keepers' practice says, as plain words. None of it is from a source, and the page says so. */
export const practice: readonly { readonly title: string; readonly points: readonly string[] }[] = [
  {
    title: "When to call a reptile vet",
    points: [
      ...signs,
      "Before a first winter: health, weight and droppings looked at, so that only a sound animal is cooled.",
      "Not sure? Call. Find the vet, and the number for nights and weekends, before you need them.",
    ],
  },
  {
    title: "Your own health",
    points: [
      "Reptiles may carry Salmonella and look perfectly well. Wash your hands with soap after every contact with animal, box, water bowl or prey.",
      "Keep animals, bowls and tools away from kitchen and food. Thaw prey apart from your own food, never in the microwave.",
      "Small children, pregnant women, old and ill people fall ill more easily: let them keep a distance, and ask a doctor.",
      "Bitten, or ill after contact? Ask a doctor, and say that you keep reptiles.",
    ],
  },
  {
    title: "Law and licences",
    points: [
      "Local law stands above anything said here. Ask your authority what may be kept, bred, moved, sold and posted.",
      "Some species need papers or a licence. Get them before the animal, and keep them with its records.",
      "Never release an animal or its young, not even where the species lives wild.",
      "Take nothing from the wild. Do not publish the exact place of wild animals.",
    ],
  },
  {
    title: "Refrigerators, boxes and electricity",
    points: [
      "A shut refrigerator is a shut box: open it often, and look at the animal when you do.",
      "Measure where the animal lies, with a second thermometer of another make, and an alarm for too warm and too cold.",
      "Think through a power cut, a stuck thermostat and a week away from home. Somebody should know what to do.",
      "No chemicals and no food for people in the same refrigerator. Do not drill into its walls: coolant runs inside.",
      "Every heater on a thermostat, guarded against touch. Nothing that gets hot near bedding.",
      "Mains and water apart, a residual-current breaker before both, a smoke alarm above. Wiring is a licensed electrician's work.",
    ],
  },
];

/** Each caution under the topic in which it is met first; what no function carries stands at the top. */
export const cautionsByTopic = (): readonly { readonly title: string; readonly keys: readonly CautionKey[] }[] => {
  const seen = new Set<CautionKey>();
  const byTopic = topics.map(({ title, functions }) => ({
    title,
    keys: functions.flatMap(({ cautions: keys }) => keys).filter((key) => !seen.has(key) && seen.add(key)),
  }));
  const always = (Object.keys(cautions) as CautionKey[]).filter((key) => !seen.has(key));
  return [{ title: "Always", keys: always }, ...byTopic].filter(({ keys }) => keys.length > 0);
};
