import { list } from "./animalsList";
import { fed, plans, settings } from "./animalsFigures";
import { atEach, note, numbers } from "./animalsPage";
import { reminders } from "./animalsToday";
import { page } from "./shared/page";
import { gap } from "./shared/region";

/** The key is of old; the tab says what the sheet is opened for. */
export const animals = page(
  {
    key: "animals",
    name: "Today",
    sentence: "A row for each animal: what to do today, what never to do, what is overdue; to the right the facts.",
    cautions: ["noFoodInTheCold", "feedTheAnimal", "noVet"],
    sources: ["practice", "definition"],
    widths: [
      10.2, 11.5, 38, 26.5, 11.5, 19, 12, 16, 18, 8, 11.5, 11.5, 8, 11.5, 9, 9, 11.5, 7, 8, 7, 7, 8, 7, 11.5, 11.5,
      11.5, 8, 18,
    ],
    cautionColumns: ["D", "F"],
    leadTo: "C",
    printTo: "H",
  },
  reminders,
  list,
  gap(2),
  { A: [settings], D: [plans] },
  gap(2),
  numbers,
  atEach,
  note,
  gap(2),
  fed,
);
