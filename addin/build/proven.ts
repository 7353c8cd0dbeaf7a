import { readFileSync, writeFileSync } from "node:fs";
import { cpus } from "node:os";
import { join } from "node:path";
import { catalogue } from "../../functions/catalogue";
import { cautions } from "../../functions/cautions";
import type { Left, LeftOut } from "../../functions/network/leaveOneOut";
import { VERSION } from "../../functions/release";
import { counted, isSimulated, type Yardstick } from "../../functions/yardsticks";
import { formatted } from "./formatted";

/**
 * How a figure gets into the README. A command that proves or measures something enters its last whole and good run in
 * tests/proven.json; tests/proven.md holds the words, with {{names}} where figures belong; and the README's last sections are
 * the one filled with the other. What has a file of its own (the register of yardsticks, the stations left out) is read there,
 * as it stands at that moment: the command may just have written it.
 */
const ROOT = join(__dirname, "..", "..");
const RECORD = join(ROOT, "tests", "proven.json");
const WORDS = join(ROOT, "tests", "proven.md");
const README = join(ROOT, "README.md");

export type Measured = Readonly<Record<string, number | string>>;
export interface Run {
  readonly date: string;
  readonly version: string;
  readonly cores: number;
  /** How much was asked for, where whoever runs the command chooses that. */
  readonly size?: number;
  /** Entered by hand from what the command printed: the next run replaces it. */
  readonly byHand?: true;
  readonly figures: Measured;
}
export type Runs = Readonly<Record<string, Run>>;

/** The runs with another one entered; undefined where a larger one stands there and nobody asked for the smaller. */
export const withRun = (runs: Runs, command: string, run: Run, isAsked: boolean): Runs | undefined => {
  const isSmaller = (run.size ?? Infinity) < (runs[command]?.size ?? 0);
  if (isSmaller && !isAsked) return undefined;
  const all = Object.entries({ ...runs, [command]: run }).sort(([one], [other]) => (one < other ? -1 : 1));
  return Object.fromEntries(all);
};

const read = (file: string): unknown => JSON.parse(readFileSync(file, "utf8"));
const runsRecorded = (): Runs => read(RECORD) as Runs;
const registered = () => read(join(ROOT, "functions", "yardsticks.json")) as readonly Yardstick[];
const stationsLeftOut = () => read(join(ROOT, "functions", "network", "leaveOneOut.json")) as readonly LeftOut[];

/**
 * Enters a run that was whole and good; a command that was not given all of its work, or found something wrong, does not ask.
 * A run of a smaller `size` than the one that stands there is entered with --record alone.
 */
export const record = async (command: string, figures: Measured, size?: number): Promise<void> => {
  const date = new Date().toISOString().slice(0, 10);
  const run = { date, version: VERSION, cores: cpus().length, ...(size === undefined ? {} : { size }), figures };
  const runs = withRun(runsRecorded(), command, run, process.argv.includes("--record"));
  if (runs === undefined) {
    console.log(`Not entered in tests/proven.json, which holds a larger run: --record puts this one in its place.`);
    return;
  }
  writeFileSync(RECORD, await formatted(runs));
  tellInReadme();
  console.log(`Entered in tests/proven.json as "${command}", and in README.md.`);
};

const day = new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "long", year: "numeric", timeZone: "UTC" });

/** When it ran; and on which version, where that is not this one. */
const whenOf = ({ date, version, byHand }: Run): string =>
  [
    day.format(new Date(date)),
    ...(version === VERSION ? [] : [`version ${version}`]),
    ...(byHand ? ["copied by hand"] : []),
  ].join(", ");

type Figure = number | string;
export type Figures = Readonly<Record<string, Figure>>;

const named = (prefix: string, figures: Measured): Figures =>
  Object.fromEntries(Object.entries(figures).map(([name, figure]) => [`${prefix}.${name}`, figure]));

const worsts = (some: readonly Yardstick[]): readonly number[] => some.map(({ worst }) => worst);
const ends = (prefix: string, figures: readonly number[]): Figures => {
  if (figures.length === 0) throw new Error(`functions/yardsticks.json holds nothing for ${prefix}`);
  return named(prefix, { least: Math.min(...figures), most: Math.max(...figures) });
};

/** A band of nine in ten that holds fewer is weak; and so is an estimate that is no nearer than the nearest station. */
const WEAK = 0.85;
const weakIn = (kind: "highs" | "lows", region: string, { inside, off, nearest }: Left): readonly string[] => [
  ...(inside < WEAK ? [`${region}, ${kind} ${percent(inside)} inside`] : []),
  ...(off >= nearest ? [`${region}, ${kind} no better than the nearest station`] : []),
];

const leftOut = (leaveOneOut: readonly LeftOut[]): Figures => {
  const of = (stations: string) => {
    const found = leaveOneOut.find((one) => one.stations === stations);
    if (!found) throw new Error(`functions/network/leaveOneOut.json has no line "${stations}"`);
    return found;
  };
  const all = of("from 500 m");
  // What is no region says from which elevation it is.
  const regions = leaveOneOut.filter(({ stations }) => !/from \d+ m$/.test(stations));
  const weak = regions.flatMap(({ stations, highs, lows }) => [
    ...weakIn("highs", stations, highs),
    ...weakIn("lows", stations, lows),
  ]);
  return {
    ...named("leftOut.highs", { ...all.highs }),
    ...named("leftOut.lows", { ...all.lows }),
    "leftOut.valleys": of("valleys of US mountains, from 1000 m").lows.inside,
    "leftOut.weak": weak.join("; ") || "no region",
  };
};

const outside = (yardsticks: readonly Yardstick[]): Figures => {
  const against = (of: string, source: RegExp): readonly Yardstick[] => {
    const found = yardsticks.filter((one) => one.of === of && source.test(`${one.against}, ${one.figure ?? ""}`));
    if (found.length === 0) throw new Error(`functions/yardsticks.json holds no ${of} against ${source.source}`);
    return found;
  };
  const [, stations = "", warmer = ""] =
    /At (\d+) open stations the ground was ([\d.]+) K/.exec(cautions.bareGround) ?? [];
  const only = (of: string, source: RegExp): Yardstick => {
    const [first, ...others] = against(of, source) as readonly [Yardstick, ...Yardstick[]];
    if (others.length > 0) throw new Error(`functions/yardsticks.json holds several of ${of} against ${source.source}`);
    return first;
  };
  const speciesIn = (range: RegExp): Measured => {
    const { worst, values } = only("HATCHDATES", range);
    return { holds: Math.round(worst * values), of: values };
  };
  const ofPairs = (kind: string, figure: string): number =>
    only("LAPSEBAND", new RegExp(`left out.* ${kind}, .*${figure}`)).worst;
  const lapseBand = (kind: string): Measured => ({
    inside: ofPairs(kind, "inside"),
    likely: ofPairs(kind, "likely"),
    usual: ofPairs(kind, "6.5 K/km"),
  });
  return {
    ...named("outside", { ...counted(yardsticks), pairs: counted(against("LAPSEBAND", /pairs of stations/)).values }),
    ...named("lapseBand.highs", lapseBand("high")),
    ...named("lapseBand.lows", lapseBand("low")),
    ...ends("underground.solution", worsts(against("UNDERGROUND", /finite differences/))),
    ...ends("underground.soil", worsts(against("UNDERGROUND", /Climate Reference Network/))),
    ...named("underground", { stations, warmer }),
    ...ends("curve", [...worsts(against("DAILY", /RMSE/)), ...worsts(against("ONDATE", /RMSE/))]),
    "dayLength.minutes": 60 * Math.max(...worsts(against("DAYLENGTH", /./))),
    ...ends("simulated", worsts(yardsticks.filter(isSimulated))),
    ...named("practice", speciesIn(/inside practice/)),
    ...named("measured", speciesIn(/soonest to latest measured/)),
  };
};

/** Every figure that the words may name, by its name. */
export const figuresOf = (runs: Runs): Figures => ({
  ...Object.fromEntries(
    Object.entries(runs).flatMap(([command, run]) =>
      Object.entries(named(command, { ...run.figures, cores: run.cores, when: whenOf(run) })),
    ),
  ),
  functions: catalogue.length,
  ...leftOut(stationsLeftOut()),
  ...outside(registered()),
});

const percent = (share: number): string => `${Math.round(100 * share)} %`;
/** As a spreadsheet of this project groups thousands. */
const grouped = (figure: number): string => String(figure).replace(/(?<!\.\d*)\d(?=(\d{3})+(?!\d))/g, "$& ");
const manners: Readonly<Record<string, (figure: number) => string>> = {
  "": grouped,
  "%": percent,
  "all but": (figure) => (figure === 0 ? "all" : `all but ${grouped(figure)}`),
  "or none": (figure) => (figure === 0 ? "none" : grouped(figure)),
  // Processes at work before the run, on average of a minute: half of one is what a system does by itself.
  idle: (figure) => (figure < 0.5 ? "idle" : "busy"),
  "0": (figure) => grouped(Math.round(figure)),
  "0.0 %": (figure) => `${(100 * figure).toFixed(1)} %`,
  "0.0": (figure) => figure.toFixed(1),
  "0.00": (figure) => figure.toFixed(2),
};

/** The words with their figures: {{stories.model}}, or {{leftOut.highs.inside | %}} in one of the manners above. */
export const filled = (words: string, figures: Figures): string =>
  words.replace(/\{\{([\w.]+)(?: \| ([^}]+))?\}\}/g, (_, name: string, manner = "") => {
    const figure = figures[name];
    const write = manners[manner as string];
    if (figure === undefined) throw new Error(`tests/proven.md asks for ${name}, which no run and no register holds`);
    if (!write) throw new Error(`tests/proven.md writes ${name} as "${String(manner)}", which is unknown`);
    return typeof figure === "string" ? figure : write(figure);
  });

const FROM = "<!-- From here to the licence: npm run generate, out of tests/proven.md and tests/proven.json -->\n\n";
const TO = "## Licence\n";

/** The README with what has been proven as it stands in the records. */
export const withProven = (readme: string): string => {
  const [before, after, ...others] = readme.split(FROM);
  const end = after?.indexOf(TO) ?? -1;
  if (before === undefined || after === undefined || others.length > 0 || end < 0)
    throw new Error(`README.md has to hold once: ${FROM.trim()}; and after it ${TO.trim()}`);
  const words = filled(readFileSync(WORDS, "utf8"), figuresOf(runsRecorded()));
  return `${before}${FROM}${words}\n${after.slice(end)}`;
};

/** Writes the README anew, once a record or a register has changed. */
export const tellInReadme = (): void => writeFileSync(README, withProven(readFileSync(README, "utf8")));
