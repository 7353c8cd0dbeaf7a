/** What is done each week of a stage: common practice, for the keeper to change. */
export const stageWords = [
  ["Feeding", "Fed as usual. Well, in good weight and past its shed before the plan."],
  ["Clearing", "No food. Stay warm until the gut is empty. Soak, weigh, fresh water."],
  ["Cooling", "No food. Turn down to the set-point. Shorten the light. Weigh, fresh water."],
  ["Cold", "Dark, quiet. Thermometer daily. Weigh, fresh water, air the box."],
  ["Warming", "No food yet. Turn up to the set-point. More light. Weigh, water, soak."],
  ["Settling", "Warm, with a basking place. No food until it moves well. Water, weigh."],
] as const;

/** What is seen to before the first cooling day, and how far the example's keeper has come. */
export const checks = [
  ["yes", "Reptile vet has seen the animal"],
  ["yes", "Droppings checked for parasites"],
  ["yes", "In good weight, mass written down"],
  ["no", "Gut empty: droppings seen"],
  ["no", "Soaked, and has drunk"],
  ["yes", "Box escape-proof, with air holes"],
  ["yes", "Thermometer checked in melting ice"],
  ["no", "Alarm set for too warm, too cold"],
  ["no", "Cold place held steady for a week"],
  ["yes", "Water bowl that cannot tip"],
  ["no", "Somebody looks in when I am away"],
] as const;
