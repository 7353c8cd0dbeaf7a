import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import ts from "typescript";
import { boxAir } from "../functions/winter/boxAir";
import { endEarly } from "../functions/winter/endEarly";
import { openEvery } from "../functions/winter/openEvery";
import { hatchDates } from "../functions/breeding/hatchDates";
import { hatchForecast } from "../functions/breeding/hatchForecast";
import { clutchRatio } from "../functions/breeding/clutchRatio";
import { EGGS_DEADLY, THRESHOLD } from "../functions/breeding/shared/development";
import { catalogue } from "../functions/catalogue";
import { cautions, type CautionKey } from "../functions/cautions";
import { scaledMass } from "../functions/condition/scaledMass";
import { dewPoint } from "../functions/air/dewPoint";
import { vapourDeficit } from "../functions/air/vapourDeficit";
import { dryMonth } from "../functions/climate/dryMonth";
import { koppen } from "../functions/climate/koppen";
import { lapse } from "../functions/climate/lapse";
import { stationScore } from "../functions/climate/shared/stationRule";
import { dayLength } from "../functions/daylight/dayLength";
import { serial } from "../functions/dates";
import { mealCount } from "../functions/feeding/mealCount";
import { leaveOneOut } from "../functions/network/leaveOneOut";
import { FIRST_MEAL_PART } from "../functions/rules/limits";
import { pairingRules } from "../functions/rules/pairing";
import { sources } from "../functions/sources";
import { oxygenUse } from "../functions/winter/oxygenUse";
import { q10Rate } from "../functions/winter/q10Rate";
import { lossTrend } from "../functions/winter/lossTrend";
import { underground } from "../functions/climate/underground";
import { call, callCell, down } from "./call";
import { networkAsShipped } from "./network";
import { fits } from "./tables/incubation.json";
import { percentiles, rows as midRange, sanFrancisco } from "./tables/midRange.json";
import { greenspan, wexler } from "./tables/saltSolutions.json";
import { stations as soil } from "./tables/soilTemperatures.json";

/**
 * A figure in words is a promise: whoever changes what it was taken from must meet it here. Every caution that carries a
 * figure is walked, every sentence in which somebody has typed one (on sheets, in the pane, in rules, in the handbook's
 * own words), and every default that a function tells. Where a figure comes from a constant it is put in by the code and needs nothing.
 */
const UNITS =
  "°C|%|K|degrees?|days?|weeks?|months?|hours?|minutes?|g|m|km|mm|cm|litres?|metres?|years?|colubrids|ratsnakes|species|snakes?|stations|groups|animals";
const WORDS =
  "two|three|four|five|six|seven|eight|nine|ten|twelve|thirty|half a|half the|half of|half either|twice|one in";
const NUMBER = String.raw`\d+(?:\.\d+)?`;
/** Any figure; and in running words one that has a unit, or is a share or a multiple. */
const anyFigure = new RegExp(String.raw`${NUMBER}|\b(?:${WORDS})\b`, "gi");
const figureWithUnit = new RegExp(
  String.raw`(?:\b(?:${WORDS})|${NUMBER}(?:(?: to | and |-)${NUMBER})?) (?:${UNITS})(?![\p{L}\d])|\b(?:one|nine)[a-z ]* in (?:five|nine|ten)\b|\bhalf (?:a|the|of)\b|\btwice\b`,
  "giu",
);
const one = (value: unknown, decimals: number): string => (value as number).toFixed(decimals);
const yearsIn = (text: string): string[] => text.match(/\b(?:19|20)\d\d\b/g) ?? [];

const at26 = fits.map(({ daysAt26 }) => daysAt26);
const [earliest, latest] = (call(hatchDates, 46_000)[0] as number[]).map((day) => day - 46_000);
const german = midRange.filter(({ country }) => country === "Germany");
const hourScore = /(\d\.\d) K root mean square, (\d\.\d) K too warm/.exec(sources.hourScore.text) ?? [];
const carbonDioxide = call(boxAir, 300, 5, 5.3)[0]?.[4];
const q10s = ["chappellEllis", "mccueLillywhite", "beaupreZaidan"].flatMap((key) =>
  (/Q10[^.\d]*((?:\d\.\d)(?: to \d\.\d)?)/.exec(sources[key as keyof typeof sources].text)?.[1] ?? "")
    .split(" to ")
    .map(Number),
);
const ground = soil.flatMap(({ high, low, at100 }) => {
  const rows = call(underground, down(high), down(low), 100) as number[][];
  return rows.map(([, , mean], month) => (at100[month] as number) - (mean as number));
});
const meanOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const off = call(oxygenUse, 150, 8)[0] as [number, number, number];
const frost = ((): string => {
  const dew = callCell(dewPoint, -10, 80) as number;
  // Over water after WMO-No. 8; over ice after Goff & Gratch, as the Smithsonian tables have it (read in published code).
  const vapour = 6.112 * Math.exp((17.62 * dew) / (243.12 + dew));
  const overIce = (celsius: number): number => {
    const a = 273.16 / (celsius + 273.15);
    return 10 ** (-9.09718 * (a - 1) - 3.56654 * Math.log10(a) + 0.876793 * (1 - 1 / a) + Math.log10(6.1071));
  };
  let [low, high] = [-40, 0];
  for (let i = 0; i < 60; i++)
    [low, high] = overIce((low + high) / 2) < vapour ? [(low + high) / 2, high] : [low, (low + high) / 2];
  return one(low - dew, 1);
})();
const farFromGreenwich = Math.max(
  ...Array.from({ length: 365 }, (_, i) => {
    const [today, next] = [i, i + 1].map((day) => callCell(dayLength, 60, serial(2026, 1, 1) + day) as number);
    return (60 * Math.abs((next as number) - (today as number))) / 2;
  }),
);
/** Held in a test of its own, which takes long: there the words stand beside what they were measured by. */
const heldIn = (file: string, ...phrases: readonly string[]): readonly string[] => {
  const test = readFileSync(join(__dirname, file), "utf8");
  for (const phrase of phrases) if (!test.includes(phrase)) throw new Error(`${file} no longer holds "${phrase}"`);
  return phrases;
};

/** What each caution says in figures, worked out from what it is said of. */
const quoted: Partial<Record<CautionKey, () => readonly string[]>> = {
  midPoint: () => [
    "24-hour mean",
    `of the months reported by ${2071 - 460} stations, nine in ten lie ${one(-percentiles.p05, 1)} K below to ${one(percentiles.p95, 1)} K above`,
    `${one(Math.max(...german.flatMap(({ p05, p95 }) => [-p05, p95])), 1)} K either way`,
    `${one(Math.max(...sanFrancisco.rows.map(({ lessMedian }) => lessMedian)), 1)} K lower`,
  ],
  lapseBand: () => [
    ...heldIn(
      "functions/climate/lapseBand.test.ts",
      "one month in nine",
      "one in five in the valleys of western North America",
    ),
    `no better than ${-(callCell(lapse, 0, 0, 1000) as number)} K per km`,
  ],
  ruleOfThumb: () => {
    expect(stationScore(100, 0)).toBeCloseTo(stationScore(0, 10), 12);
    return ["100 m of gap count as 10 km"];
  },
  classEdge: () => {
    const high = networkAsShipped().stations.filter(
      ({ elevation, rain }) => elevation >= 800 && rain.every((one) => Number.isFinite(one)),
    );
    const classOf = ({ high: highs, low, rain, latitude }: (typeof high)[number], colder: number): unknown =>
      callCell(koppen, [highs.map((one, i) => (one + (low[i] as number)) / 2 - colder)], [rain], latitude);
    const others = high.filter((station) => classOf(station, 1) !== classOf(station, 0));
    expect(Math.round(high.length / others.length)).toBe(6);
    return [
      "another thirty years of records",
      // The share above is that of the caution on mid-points.
      `up to ${Math.round(percentiles.p95)} K warmer than means`,
      `Of ${high.length} stations from 800 m up one in six is then of another class`,
    ];
  },
  modelHours: () => ["(12 is the highest sun", `typically ${hourScore[1]} K off`, `${hourScore[2]} K too warm`],
  bareGround: () => [`At ${soil.length} open stations the ground was ${one(meanOf(ground), 1)} K warmer over the year`],
  overWater: () => ["Below 0 °C ice forms", `by ${frost} K in air of -10 °C and 80 %`],
  warmSkin: () => {
    const [same, warm] = [25, 32].map((skin) => callCell(vapourDeficit, 25, 50, null, skin) as number);
    expect((warm as number) / (same as number)).toBeCloseTo(2, 1);
    return ["in air of 25 °C and 50 % twice as much at 32 °C as at 25"];
  },
  farFromGreenwich: () => [`up to ${Math.ceil(farFromGreenwich)} minutes off at 60°`],
  quietAnimal: () => {
    expect([off[0] / off[1], off[2] / off[1]]).toEqual([expect.closeTo(0.5, 12), expect.closeTo(1.5, 12)]);
    return ["differ by half either way"];
  },
  boxFloor: () => {
    const [from] = /(?<=carbon dioxide of )[\d.]+/.exec(sources.oda.text) ?? [];
    expect(sources.oda.text).toMatch(/Boa constrictor and Crotalus durissus/);
    return [
      `At ${parseFloat(boxAir.parameters.floor.without ?? "")} % of oxygen, carbon dioxide stands near ${one(carbonDioxide, 1)} %`,
      `from ${from} % up it lowered gas exchange in two snakes (Oda et al. ${yearsIn(sources.oda.text)[0]})`,
    ];
  },
  q10Differs: () => [`Q10 differs: ${Math.min(...q10s)} to ${Math.max(...q10s)} in the species measured`],
  narrowLengths: () => {
    const [without] = catalogue.flatMap(({ name, parameters }) =>
      name === "SCALEDMASS"
        ? [Object.values(parameters).find((parameter) => parameter.without?.includes("ten animals"))?.without]
        : [],
    );
    return [`Below ten animals the exponent is ${parseFloat(without ?? "")}`];
  },
  hatchingSuccess: () => {
    const phrases = heldIn(
      "functions/breeding/incubationDays.test.ts",
      "50 % at 22 °C, 78-79 % at 24-30 °C, 41 % at 32 °C",
      "% at 19 °C (two studies)",
    );
    expect(phrases).toHaveLength(2);
    return [cautions.hatchingSuccess];
  },
  eggSpecies: () => [
    `The threshold of ${THRESHOLD} °C fits ${["no", "one", "two", "three", "four"][fits.filter(({ asianRatsnake }) => asianRatsnake).length]} Asian colubrids`,
  ],
  twoBases: () => [
    `${one(callCell(clutchRatio, 60, 180), 2)} of female and clutch together is ${one(callCell(clutchRatio, 60, 180, "spent"), 2)} of the spent female`,
  ],
  practiceDays: () => {
    const inside = at26.filter((days) => days >= (earliest as number) && days <= (latest as number));
    expect([at26.length, inside.length]).toEqual([7, 3]);
    return [
      `${earliest} to ${latest} days at 26 °C is practice: of seven colubrids measured, three lie inside; in all they took ${one(Math.min(...at26), 0)} to ${one(Math.max(...at26), 0)} days`,
    ];
  },
  hotEggs: () => [`Above ${EGGS_DEADLY} °C`, `(Raynal et al. ${yearsIn(sources.raynal.text)[0]})`],
  dailySwing: () => {
    heldIn("functions/breeding/hatchForecast.test.ts", "groups of eggs at means of", "of the one snake among them");
    return [cautions.dailySwing];
  },
};

/** The words that are left where what is held has been taken out. */
const without = (text: string, phrases: readonly string[]): string =>
  phrases.reduce((rest, phrase) => rest.split(phrase).join(" … "), text);

test.each(Object.entries(cautions))("the figures of the caution %s are those that it quotes", (key, text) => {
  const phrases = quoted[key as CautionKey]?.() ?? [];
  for (const phrase of phrases) expect(text).toContain(phrase);
  expect(without(text, phrases).match(anyFigure) ?? []).toEqual([]);
});

const sentOff = (share: number): string => {
  expect(share).toBeCloseTo(0.9, 1);
  return "nine months in ten";
};
/** How far oxygen and carbon dioxide are at so many times the soonest hours, if each uses as much as may be. */
const airAt = (times: number): string => {
  const oxygen = 20.9 - times * (20.9 - 19);
  return `oxygen may stand near ${one(oxygen, 0)} %, carbon dioxide near ${one(0.04 + 0.8 * (20.9 - oxygen), 0)} %`;
};
const oldest = pairingRules.flatMap(({ of, under }) => (of === "age" ? [under] : []))[0];

/** Sentences with a figure that somebody has typed, and what makes each of them. */
const typed: readonly (() => string)[] = [
  // rules
  () => airAt(3),
  () => `after ${/(\d+) weeks or more/.exec(sources.bonaGalloLicht.text)?.[1]} weeks or more at {4}`,
  () => `not after ${/up to (\d+) weeks/.exec(sources.bonaGalloLicht.text)?.[1]} weeks at {17}`,
  () => `at {4} for ${/at 4 °C for (\d+) days/.exec(sources.costanzo.text)?.[1]} days`,
  // sheets
  () => `${oldest} months for males`,
  () => {
    const [soonest] = call(boxAir, 300, 5, 5.3)[0] as [number];
    expect(callCell(openEvery, 300, 5, 5.3)).toBeCloseTo(soonest / 24 / 2, 12);
    return `half of the soonest hours, ${String(callCell(openEvery, 30, 5, 500))} days at most`;
  },
  () => `${THRESHOLD} °C was fitted to four Asian colubrids`,
  () => `${earliest} to ${latest} days at 26 °C`,
  () => {
    // Three weeks of 24 °C, then a week of 28: it goes on at 28.
    const week = [...Array<number>(21).fill(24), ...Array<number>(7).fill(28)];
    const [developed, hatching] = call(
      hatchForecast,
      46_000,
      down(week.map((_, i) => 46_000 + i)),
      down(week),
      60,
    )[0] as number[];
    expect(Math.abs((hatching as number) - 46_028 - ((1 - (developed as number)) * 60 * 12) / 14)).toBeLessThan(0.51);
    return "the last seven days";
  },
  () => {
    const open = readFileSync(join(__dirname, "../functions/network/open.ts"), "utf8");
    return `fewer than three stations within ${/FARTHEST = (\d+);/.exec(open)?.[1]} km`;
  },
  () => sentOff((leaveOneOut[0]?.highs.inside ?? 0) / 2 + (leaveOneOut[0]?.lows.inside ?? 0) / 2),
  () => {
    expect(callCell(mealCount, "2027-01-01", "2037-02-01", 7)).toMatch(/ten years after from/);
    return "Ten years at most";
  },
  () => {
    // 0.5 g a day off 100 g are 15 % in 30 days.
    const days = [0, 7, 14, 21, 28];
    const [, monthly] = call(
      lossTrend,
      down(days.map((day) => 46_000 + day)),
      down(days.map((day) => 100 - day / 2)),
      46_028,
    )[0] as number[];
    expect(monthly).toBeCloseTo(0.15, 9);
    return "Per 30 days";
  },
  () => `${Math.round(((2 * Math.PI * 6371) / 360) * (20 / 60))} km`,
  ...[0.05, 0.1].map((share) => () => `${100 * share} % is ${share}`),
  () => {
    // In any room, 5 to 30 °C.
    const salt = [...greenspan, ...wexler].filter(({ temperature }) => temperature >= 5 && temperature <= 30);
    const [least, most] = [Math.min, Math.max].map((end) => end(...salt.map(({ humidity }) => humidity)));
    return `over damp table salt it should read ${Math.round(least as number)} to ${Math.round(most as number)} % after some hours`;
  },
  () => `A share of 0.05 is ${100 * 0.05} %`,
  ...[10, 50, 100].map((depth) => () => {
    const sheet = readFileSync(join(__dirname, "../taskpane/sheets/nativeClimateDepths.ts"), "utf8");
    expect(sheet).toContain(`low${depth}: { ...night, title: "Low, ${depth} cm", spilled: at(${depth}, 2)`);
    return `${depth} cm`;
  }),
  // the handbook, and both
  () => `${-(callCell(lapse, 0, 0, 1000) as number)} K per km`,
  () => {
    expect(callCell(q10Rate, 1, 10, 20, 3)).toBeCloseTo(3, 12);
    return "ten degrees warmer";
  },
  () => {
    expect(parseFloat(endEarly.parameters.kelvinPerDay.without ?? "")).toBe(0.5);
    return "half a degree a day";
  },
  () => {
    expect(FIRST_MEAL_PART).toBe(1 / 2);
    return "half the usual";
  },
  () => {
    const herd = (animals: number) => [900, 950, 1000].slice(0, animals);
    const scaled = (animals: number) => call(scaledMass, down(herd(animals)), down(herd(animals)))[0]?.[0];
    expect([typeof scaled(3), String(scaled(2))]).toEqual(["number", expect.stringMatching(/three or more/)]);
    return "three animals of one kind, or more";
  },
  () => {
    expect([19.9, 20].map((rain) => callCell(dryMonth, 10, rain))).toEqual([true, false]);
    return "twice the temperature";
  },
  () => `near ${one(100 * (leaveOneOut[0]?.highs.inside ?? 0), 0).replace(/\d$/, "0")} % is what`,
];
/** Figures that say nothing of the world: how something is called, how it is counted, what is asked for. */
const PLAIN = [
  "1 day",
  "0 °C is a real temperature",
  "two days of the same high and low",
  "buy for two months at a time",
  "Fifty-two weeks",
  "twelve months in figures",
  "no temperature between -60 and 60 °C",
  // The band's own definition: 5 % on either side.
  "nine cases in ten",
  "Student's t at 95 %",
  "what you do not want twice",
  "an hour comes twice",
  "Means over thirty years, as weather services publish them",
  "likeness of two stations",
  "Gain in 7 days",
  "1.2 to 2 metres above the ground (WMO-No. 8)",
];

const root = join(__dirname, "..");
const filesIn = (folder: string, ending: RegExp): readonly string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
    .filter((name) => ending.test(name))
    .map((name) => join(root, folder, name));
/** Examples are invented, and say so; of the self-checks each line is a test. */
const INVENTED = /Example\.ts$|scenario\.ts$|selfChecks\.ts$/;
/** The words of a file of code, without what the code puts into them. */
const wordsIn = (file: string): readonly string[] => {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node) || ts.isJsxText(node))
      found.push(node.text);
    else if (ts.isTemplateExpression(node)) {
      found.push(node.head.text + node.templateSpans.map(({ literal }) => `#${literal.text}`).join(""));
    }
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(file, readFileSync(file, "utf8"), ts.ScriptTarget.Latest));
  return found;
};

test("every sentence in which a figure was typed says what it was taken from: rules, sheets, pane, handbook", () => {
  const phrases = [...typed.map((phrase) => phrase()), ...PLAIN];
  const code = [
    "functions/rules",
    "taskpane/sheets",
    "taskpane/views",
    "taskpane/actions",
    "taskpane/columns",
    "taskpane/handbook",
  ];
  const all = [
    ...code
      .flatMap((folder) => filesIn(folder, /\.tsx?$/))
      .filter((file) => !INVENTED.test(file))
      .flatMap((file) => wordsIn(file).map((words) => [file, words] as const)),
    ...filesIn("taskpane/handbook/words", /\.md$/).flatMap((file) =>
      readFileSync(file, "utf8")
        .split("\n")
        .map((words) => [file, words] as const),
    ),
  ];
  const unheld = all.flatMap(([file, words]) =>
    (without(words, phrases).match(figureWithUnit) ?? []).map(
      (figure) => `${relative(root, file)}: "${figure}" in "${words}"`,
    ),
  );
  expect(unheld).toEqual([]);
  // And nothing is held that nobody says.
  for (const phrase of phrases)
    expect([phrase, all.some(([, words]) => words.includes(phrase))]).toEqual([phrase, true]);
});
