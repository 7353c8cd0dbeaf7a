import { isoOf, LAST_DAY } from "../dates";
import { choice, columns, count, date, defineFunction, optional } from "../define";
import { notUsable } from "../problem";

const MODES = ["eggs", "live"] as const;
/** Days before laying in which a female sheds: practice. */
const SHED_FROM = 14;
const SHED_TO = 7;

/**
 * The days are the keeper's own, from matings of the same animals or their kind: they differ by species, warmth and
 * winter. The pre-lay shed is looked for from fourteen days before the first day to seven before the last.
 */
export const birthDates = defineFunction({
  name: "BIRTHDATES",
  summary: "The days between which laying or birth is to be expected after a pairing, and the shed before laying.",
  parameters: {
    paired: date("Day of the pairing"),
    earliest: count("day", "Your own fewest days from pairing to laying or birth", [1, 400]),
    latest: count("day", "Your own most days", [1, 400]),
    mode: optional(choice('"eggs" for layers, "live" for live-bearers', MODES), '"eggs"'),
  },
  result: columns(
    { name: "Earliest", unit: "date", about: "First day to expect eggs or young" },
    { name: "Latest", unit: "date", about: "Last day to expect them" },
    { name: "Shed from", unit: "date", about: "First day to look for the shed before laying; blank for live-bearers" },
    { name: "Shed to", unit: "date", about: "Last day to look for it; blank for live-bearers" },
    { name: "Words", unit: "text", about: "What she needs until then" },
  ),
  sources: ["ownLimit", "practice"],
  cautions: ["spentFemale", "noVet"],
  examples: [
    {
      given: ["2027-05-01", 40, 55],
      gives: [
        [
          "2027-06-10",
          "2027-06-25",
          "2027-05-27",
          "2027-06-18",
          "Gravid until then: warm, undisturbed, a laying place ready, out of every winter plan.",
        ],
      ],
      within: 0,
    },
    {
      given: ["2027-05-01", 100, 130, "live"],
      gives: [["2027-08-09", "2027-09-08", "", "", "Gravid until then: warm, undisturbed, out of every winter plan."]],
      within: 0,
    },
  ],
  calculate({ paired, earliest, latest, mode = "eggs" }) {
    if (earliest > latest) {
      return notUsable(`earliest holds ${earliest} days: give latest, ${latest} days, or less`);
    }
    if (paired + latest > LAST_DAY) {
      return notUsable(`paired holds ${isoOf(paired)}: give a day whose young come by ${isoOf(LAST_DAY)}`);
    }
    const [first, last] = [paired + earliest, paired + latest];
    return mode === "live"
      ? [first, last, "", "", "Gravid until then: warm, undisturbed, out of every winter plan."]
      : [
          first,
          last,
          Math.max(paired, first - SHED_FROM),
          Math.max(paired, last - SHED_TO),
          "Gravid until then: warm, undisturbed, a laying place ready, out of every winter plan.",
        ];
  },
});
