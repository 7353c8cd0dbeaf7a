import { breeders, limits, lines } from "./breedingSeasonAnimals";
import { checks } from "./breedingSeasonExample";
import { clutches, pairings } from "./breedingSeasonPairings";
import { checkList } from "./shared/checkList";
import { page } from "./shared/page";
import { gap } from "./shared/region";
import { words } from "./shared/running";

const advice = words(
  "advice",
  [2, 7],
  "One clutch, then let her feed up. A gravid female stays warm, out of every winter plan. Past her last day, straining or weak, she may be egg-bound: a reptile vet the same day.",
);

const checked = checkList("checks", checks, { title: "Before the first pairing (practice)", wide: [1, 9] });

export const breedingSeason = page(
  {
    key: "breedingSeason",
    name: "Breeding season",
    sentence: "Pairings, clutches and what they cost, so that no female is worn out.",
    cautions: ["spentFemale", "noVetCheck", "noVet"],
    sources: ["practice", "ownLimit", "seigelFitch"],
    widths: [11.8, 9.8, 11.5, 9, 7.5, 8, 9, 8, 20, 17.4, 1, 11.5, 11.5, 11.5, 11.5, 60],
    cautionColumns: ["I", "J"],
    printTo: "O",
  },
  limits,
  advice,
  breeders,
  gap(1),
  checked,
  gap(2),
  clutches,
  gap(2),
  pairings,
  gap(2),
  lines,
);
