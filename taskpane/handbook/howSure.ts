import { catalogue } from "../../functions/catalogue";
import { cautions } from "../../functions/cautions";
import { leaveOneOut, type Left } from "../../functions/network/leaveOneOut";
import { sources, type Source, type SourceKey } from "../../functions/sources";
import { counted, yardsticks } from "../../functions/yardsticks";
import { grouped } from "../text/grouped";
import { functionLink } from "./links";
import { plain, points, table, together } from "./markdown";
import type { Page } from "./page";
import { under, withoutLinks, writtenPage, type Written } from "./written";

const all = Object.entries(sources) as readonly (readonly [SourceKey, Source])[];

/** What each status means, in the order in which a reader may trust it. */
const meanings: readonly (readonly [Source["status"], string, string])[] = [
  ["definition", "By definition", "arithmetic that needs no source, such as a high less a low"],
  [
    "published",
    "Published",
    "a reference of which at least the part that is used has been read: its table, its abstract, or its equation in a published program",
  ],
  ["measured", "Worked out for this add-in", "from open data, in a way that can be repeated"],
  ["recalled", "From memory, not looked up", "a reference that somebody knew and nobody read again"],
  ["practice", "Common practice, no source", "what keepers do"],
];

const ofStatus = (status: Source["status"]) => all.filter(([, source]) => source.status === status);

const statuses = table(
  ["What stands behind a figure", "That is", "Sources"],
  meanings.map(([status, name, means]) => [`**${name}**`, means, String(ofStatus(status).length)]),
  [2],
);

const practiceOnly = catalogue
  .filter(({ sources: keys }) => keys.every((key) => sources[key].status === "practice"))
  .map(functionLink)
  .join(", ");

const heldAgainst = (): string => {
  const { functions, values, simulated, sources } = counted(yardsticks);
  return `${functions} of ${catalogue.length} functions are compared with ${grouped(values)} values from outside of this project, of ${sources} independent sources: standards, published tables, open data, independent programs. ${grouped(simulated)} of the values are drawn at random, where a band is to hold what is known; they say "simulated".`;
};

const kelvin = (value: number): string => value.toFixed(1);
const percent = (share: number): string => `${Math.round(100 * share)} %`;
const cells = ({ off, inside, nearest }: Left): readonly string[] => [kelvin(off), kelvin(nearest), percent(inside)];

const leaveOneOutTable = table(
  [
    "Stations",
    "Number",
    "Highs: off by, K",
    "nearest station",
    "inside the band",
    "Lows: off by, K",
    "nearest station",
    "inside the band",
  ],
  leaveOneOut.map(({ stations, number, highs, lows }) => [
    plain(stations),
    String(number),
    ...cells(highs),
    ...cells(lows),
  ]),
  [1, 2, 3, 4, 5, 6, 7],
);

export const howSurePage = ({ words, notice, developers, readme }: Written): Page => {
  const proven = under("## What has been proven, and what hasn't", readme);
  return writtenPage("how-sure", words["how-sure"] ?? "", {
    statuses,
    practiceOnly,
    heldAgainst: heldAgainst(),
    lapseBand: plain(cautions.lapseBand),
    bareGround: plain(cautions.bareGround),
    siteEstimate: plain(sources.siteEstimate.text),
    network: withoutLinks(notice.slice(notice.indexOf("\n\n"), notice.indexOf("\n## ")).trim()),
    leaveOneOutPicture:
      "![Root mean square error of the estimate and of the nearest station, highs and lows, by region](drawn/leave-one-out)",
    leaveOneOutTable,
    noOutsideTruth: together(
      "## What no outside truth exists for",
      withoutLinks(under("## What no outside truth exists for", developers)),
    ),
    proven: withoutLinks(proven),
  });
};

export const sourcesPage = (): Page => ({
  path: "sources",
  title: "Sources",
  about: "Every source, what stands behind it, and the functions that rest on it.",
  markdown: together(
    "Every source, what stands behind it, and the functions that rest on it. A source that was not read again says so here and wherever it is shown.",
    ...meanings.flatMap(([status, name, means]) => [
      `## ${name}`,
      `${means.slice(0, 1).toUpperCase()}${means.slice(1)}.`,
      points(
        ofStatus(status).map(([key, { text }]) => {
          const resting = catalogue.filter(({ sources: keys }) => keys.includes(key)).map(functionLink);
          return `${plain(text)}${resting.length > 0 ? ` ${resting.join(", ")}.` : ""}`;
        }),
      ),
    ]),
  ),
});
