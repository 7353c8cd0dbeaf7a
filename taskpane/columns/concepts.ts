import type { Parameter } from "../../functions/define";
import type { Kind } from "./table";

/** What a column may hold, and the words and units by which keepers head it. */
export interface Concept {
  readonly kind: Exclude<Kind, "blank">;
  /** Common words of English, German, French, Spanish, Italian and Dutch; accents and capitals are read over. */
  readonly words: string;
  readonly units?: readonly string[];
  /** The concept whose words in a heading speak against this one: "feeder weight" is no body mass. */
  readonly not?: ConceptKey;
}

const CELSIUS = ["c", "f"];
const GRAMS = ["g", "oz"];

export const concepts = {
  date: { kind: "date", words: "date day when datum tag jour fecha dia data giorno dag" },
  born: {
    kind: "date",
    words:
      "born birth birthday hatched dob geboren geburt schlupf ne nee naissance eclosion nacido nacimiento nato nata nascita geboorte",
  },
  laid: {
    kind: "date",
    words: "laid laying gelegt ablage eiablage pondu pondus ponte puesta deposta deposizione gelegd leg",
  },
  paired: {
    kind: "date",
    words: "paired pairing mated mating gepaart verpaarung paarung accouplement apareamiento accoppiamento paring",
  },
  fed: {
    kind: "date",
    words: "fed meal feeding fuetterung gefuettert futter mahlzeit repas nourri comida pasto voeding gevoerd",
  },
  animal: {
    kind: "text",
    words:
      "animal name id snake who tier schlange nom individu serpent nombre serpiente animale nome serpente naam dier slang",
  },
  mass: {
    kind: "figure",
    units: GRAMS,
    not: "prey",
    words:
      "mass weight body gewicht masse koerpergewicht koerpermasse poids peso massa lichaamsgewicht grams gramm grammes",
  },
  prey: {
    kind: "figure",
    units: GRAMS,
    words:
      "prey meal feeder food mouse mice rat feed futter futtertier beute maus ratte mahlzeit proie repas nourriture souris presa comida raton alimento preda pasto topo cibo prooi voer muis maaltijd",
  },
  clutch: {
    kind: "figure",
    units: GRAMS,
    words: "clutch eggs gelege eier ponte oeufs puesta huevos covata uova legsel eieren",
  },
  female: {
    kind: "figure",
    units: GRAMS,
    words: "female mother weibchen mutter femelle mere hembra madre femmina vrouwtje moeder",
  },
  outcome: {
    kind: "text",
    words:
      "outcome result taken eaten ate accepted refused ergebnis gefressen angenommen resultat mange pris resultado comido aceptado esito mangiato uitkomst gegeten",
  },
  high: {
    kind: "figure",
    units: CELSIUS,
    words:
      "high max maximum highest hoch hoechst hoechstwert haut maxi haute alta alto maxima maximo massima massimo hoog hoogste",
  },
  low: {
    kind: "figure",
    units: CELSIUS,
    words: "low min minimum lowest tief tiefst tiefstwert bas basse mini baja bajo minima minimo bassa laag laagste",
  },
  temperature: { kind: "figure", units: CELSIUS, words: "temperature temp temperatur temperatura temperatuur" },
  humidity: {
    kind: "figure",
    units: ["%"],
    words:
      "humidity rh humid feuchte luftfeuchte luftfeuchtigkeit humidite humedad umidita vochtigheid luchtvochtigheid",
  },
  rain: {
    kind: "figure",
    units: ["mm"],
    words: "rain precipitation rainfall regen niederschlag pluie lluvia pioggia neerslag",
  },
  elevation: {
    kind: "figure",
    units: ["m", "ft"],
    words: "elevation altitude height hoehe altitud altura quota altitudine hoogte",
  },
  latitude: { kind: "figure", units: ["°"], words: "latitude lat breite breitengrad latitud latitudine breedtegraad" },
  longitude: {
    kind: "figure",
    units: ["°"],
    words: "longitude lon long laenge laengengrad longitud longitudine lengtegraad",
  },
  station: { kind: "text", words: "station estacion stazione" },
  figure: { kind: "figure", words: "" },
  text: { kind: "text", words: "" },
} as const satisfies Readonly<Record<string, Omit<Concept, "not"> & { readonly not?: string }>>;
export type ConceptKey = keyof typeof concepts;

/** Arguments whose name says more than their unit. */
const byName: Readonly<Record<string, ConceptKey>> = {
  animals: "animal",
  sensors: "animal",
  born: "born",
  clutch: "clutch",
  clutches: "animal",
  female: "female",
  high: "high",
  laid: "laid",
  last: "fed",
  lastMeal: "fed",
  low: "low",
  mealMass: "prey",
  outcomes: "outcome",
  paired: "paired",
  prey: "prey",
  item: "prey",
  itemMass: "prey",
  station: "station",
  latitude: "latitude",
  longitude: "longitude",
};

/** What a column for an argument holds. */
export const conceptOf = (name: string, { unit, kind }: Parameter): ConceptKey => {
  const named = byName[name];
  if (named && (kind !== "quantity" || concepts[named].kind === "figure")) return named;
  switch (unit) {
    case "date":
    case "date and time":
      return "date";
    case "gram":
      return "mass";
    case "celsius":
      return "temperature";
    case "percent":
      return "humidity";
    case "millimetre":
      return "rain";
    case "metre":
      return "elevation";
    case "text":
      return "text";
    default:
      return "figure";
  }
};
