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
