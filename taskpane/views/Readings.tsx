import { Checkbox } from "../components/Checkbox";
import { FilePicker } from "../components/FilePicker";
import { Input } from "../components/Input";
import { Select } from "../components/Select";
import { Textarea } from "../components/Textarea";
import { useEffect, useMemo, useState, type ReactNode } from "react";
import { isoOf } from "../../functions/dates";
import { symbol, type System } from "../../functions/units";
import { importReadings, type ReadingsChoice } from "../actions/importReadings";
import { guessLayout } from "../actions/readings/guessLayout";
import { temperatureUnits, type Guess, type Layout, type TemperatureUnit } from "../actions/readings/layout";
import { inUnits, previewReadings, type Block, type Landed } from "../actions/readings/readReadings";
import { dateOrders, decimals, decimalWords, orderWords, separators, separatorWords } from "../text/form";
import { firstRows } from "../text/pieces";
import { readMoment } from "../text/readMoment";
import { textOf } from "../text/textOf";
import { Act } from "./Act";
import { FirstRows } from "./FirstRows";
import { Cautions, Points, SmallTitle, Title, Words } from "./Parts";
import { usePane } from "./context";
import { useUnits } from "./useUnits";

const unitWords = (system: System): Readonly<Record<TemperatureUnit, string>> =>
  system === "metric"
    ? { celsius: "°C", fahrenheit: "°F, changed to °C" }
    : { celsius: "°C, changed to °F", fahrenheit: "°F" };
/** A moment to the minute, which is enough to tell the order of a date; midnight shows its hour too. */
const momentWords = (serial: number): string => {
  const [date = "", clock = "00:00:00"] = isoOf(serial).split("T");
  return `${date} ${clock.slice(0, 5)}`;
};

const shown = (landed: Landed | undefined, column: number): ReactNode =>
  landed === null || landed === undefined
    ? ""
    : column === 0 && typeof landed === "number"
      ? momentWords(landed)
      : String(landed);

const Preview = ({
  block,
  titles,
  layout,
  units,
}: {
  readonly block: Omit<Block, "share">;
  readonly titles: readonly string[];
  readonly layout: Layout;
  readonly units: System;
}) => (
  <>
    {block.rows.length > 0 ? (
      <FirstRows
        headings={["Time", symbol("celsius", units), ...layout.others.map((column) => titles[column] ?? "")]}
        rows={block.rows.map((row) => inUnits(row, units).map(shown))}
      />
    ) : (
      <Words>No row could be read this way. Change what is said above.</Words>
    )}
    {block.refused.length > 0 && (
      <Points>
        {block.refused.map(({ row, reason }) => (
          <li key={row}>
            Row {row}: {reason}
          </li>
        ))}
      </Points>
    )}
  </>
);

interface Given {
  readonly name: string;
  readonly text: string;
}

export default function Readings() {
  const { evaluate } = usePane();
  const [given, setGiven] = useState<Given | undefined>();
  const [said, setSaid] = useState<Partial<Layout>>({});
  const [guess, setGuess] = useState<Guess | undefined>();
  // What the guess took as said: until it has caught up, nothing is written by an older one.
  const [heard, setHeard] = useState(said);
  const [block, setBlock] = useState<Omit<Block, "share"> | undefined>();

  const give = (next: Given) => {
    setSaid({});
    setGuess(undefined);
    setBlock(undefined);
    setGiven(next.text.trim() === "" ? undefined : next);
  };
  useEffect(() => {
    if (!given) return undefined;
    let late = false;
    // The page draws first: a large file takes a moment.
    const timer = setTimeout(() => {
      const found = guessLayout(given.text, said);
      setGuess(found);
      setHeard(said);
      void previewReadings(given.text, found.layout).then((first) => {
        if (!late) setBlock(first);
      });
    });
    return () => {
      late = true;
      clearTimeout(timer);
    };
  }, [given, said]);

  const asked = guess?.ask.includes("dateOrder") ?? false;
  // One date of the file, read in each order that fits it: what is asked can be answered by looking.
  const sample = useMemo(() => {
    if (!given || !guess) return undefined;
    const { separator, headings, timeColumn } = guess.layout;
    return firstRows(given.text, separator, headings + 1)[headings]?.[timeColumn]?.trim();
  }, [given, guess]);
  const orders = dateOrders
    .map((order) => {
      const moment = sample === undefined ? undefined : readMoment(sample, order);
      return [
        order,
        moment === undefined ? orderWords[order] : `${orderWords[order]}: ${isoOf(Math.floor(moment))}`,
      ] as const;
    })
    .filter(([order]) => !asked || sample === undefined || readMoment(sample, order) !== undefined);

  const say = (change: Partial<Layout>) => setSaid({ ...said, ...change });
  const choice: ReadingsChoice | undefined =
    given && guess
      ? {
          ...given,
          evaluate,
          layout: guess.layout,
          titles: guess.titles,
          ...(heard !== said ? { open: "The file is still being looked at. Press again in a moment." } : {}),
          ...(asked
            ? { open: "Say first in which order the dates stand: day and month cannot be told apart here." }
            : {}),
        }
      : undefined;
  const units = useUnits();
  const columns = guess?.titles.map((title, i) => [i, title] as const) ?? [];
  const layout = guess?.layout;
  return (
    <>
      <Title>Bring in what a logger saw</Title>
      <Words>A CSV or TSV file, or text copied from one. It is read here and sent nowhere.</Words>
      <FilePicker
        label="File of readings"
        accept=".csv,.tsv,.txt,.tab,text/csv,text/tab-separated-values,text/plain"
        onPick={async (file) => give({ name: file.name, text: textOf(new Uint8Array(await file.arrayBuffer())) })}
      />
      <Textarea
        label="Or paste readings here"
        rows={3}
        spellCheck={false}
        onChange={(text) => give({ name: "pasted text", text })}
      />
      {given && !layout && <Words quiet>Looking at {given.name} …</Words>}
      {layout && (
        <>
          <SmallTitle>How {given?.name} is read</SmallTitle>
          <Words quiet>This has been guessed. Change what is wrong.</Words>
          <div className="fields">
            <Select
              label="Time"
              value={layout.timeColumn}
              options={columns}
              onChoose={(timeColumn) => say({ timeColumn })}
            />
            <Select
              label="Time of day apart"
              value={layout.clockColumn}
              options={columns}
              first="no: with the date"
              onChoose={(clockColumn) => say({ clockColumn })}
            />
            <Select
              label="Temperature"
              value={layout.temperatureColumn}
              options={columns}
              onChoose={(temperatureColumn) => say({ temperatureColumn })}
            />
            <Select
              label="Unit in the file"
              value={layout.unit}
              options={temperatureUnits.map((unit) => [unit, unitWords(units)[unit]] as const)}
              onChoose={(unit) => say({ unit })}
            />
            <Select
              label="Order of the date"
              wide
              value={asked ? undefined : layout.dateOrder}
              options={orders}
              first={asked ? "please choose" : undefined}
              warning={asked ? `"${sample}" can be read in more than one way.` : undefined}
              onChoose={(dateOrder) => say({ dateOrder })}
            />
            <Select
              label="Decimal mark"
              value={layout.decimal}
              options={decimals.map((decimal) => [decimal, decimalWords[decimal]] as const)}
              onChoose={(decimal) => say({ decimal })}
            />
            <Select
              label="Between cells"
              value={layout.separator}
              options={separators.map((separator) => [separator, separatorWords[separator]] as const)}
              // Another cut makes other columns: only what does not hang on them is kept.
              onChoose={(separator) =>
                setSaid({
                  ...(said.unit ? { unit: said.unit } : {}),
                  ...(said.dateOrder ? { dateOrder: said.dateOrder } : {}),
                  ...(separator ? { separator } : {}),
                })
              }
            />
            <Input
              label="Heading lines"
              type="number"
              min={0}
              max={1000}
              value={String(layout.headings)}
              onChange={(value) => {
                const headings = Number(value);
                if (Number.isInteger(headings) && headings >= 0 && value !== "") say({ headings });
              }}
            />
          </div>
          {columns.length > 2 && (
            <fieldset className="choices">
              <legend>Bring along as well</legend>
              {columns
                .filter(
                  ([column]) => ![layout.timeColumn, layout.clockColumn, layout.temperatureColumn].includes(column),
                )
                .map(([column, title]) => (
                  <Checkbox
                    key={column}
                    label={title}
                    checked={layout.others.includes(column)}
                    onChange={(checked) =>
                      say({
                        others: columns
                          .map(([one]) => one)
                          .filter((one) => (one === column ? checked : layout.others.includes(one))),
                      })
                    }
                  />
                ))}
            </fieldset>
          )}
          {block && <Preview block={block} titles={guess.titles} layout={layout} units={units} />}
          <Cautions of={["probePlace", "skippedReadings"]} />
          <Words>{importReadings.about}</Words>
          {/* What was said of an order that nobody had chosen goes once it is. */}
          <Act
            key={asked ? "asked" : "said"}
            action={importReadings}
            choice={choice && { ...choice, system: units }}
            primary
          />
        </>
      )}
    </>
  );
}
