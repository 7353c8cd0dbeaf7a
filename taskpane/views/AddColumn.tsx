import { useEffect, useRef, useState } from "react";
import { addColumn, columnFor, rowsInWords, type ColumnChoice } from "../actions/addColumn";
import { failureInWords } from "../actions/action";
import { areaName } from "../actions/place";
import { guesses, type Guess } from "../columns/guess";
import { planIn } from "../columns/planIn";
import { shownAnswer } from "../columns/planned";
import { tableAt, type OwnTable } from "../columns/table";
import type { Want, Wish } from "../columns/wish";
import { wishes } from "../columns/wishes";
import { Button } from "../components/Button";
import { Input } from "../components/Input";
import { Message } from "../components/Message";
import { Select } from "../components/Select";
import { columnLetters } from "../sheets/shared/address";
import type { CellPlace, SheetContents } from "../workbook";
import { Act } from "./Act";
import { usePane } from "./context";
import { FirstRows } from "./FirstRows";
import { Cautions, SmallTitle, Words } from "./Parts";

/** Answers that are shown before a column is written. */
const SHOWN = 5;

interface Seen {
  readonly at: CellPlace;
  readonly sheets: readonly SheetContents[];
  readonly table: OwnTable;
}

const isColumn = ({ from }: Want): boolean => from === "column";

const guessed = (wish: Wish, { table, sheets }: Seen) => {
  const found: ReadonlyMap<string, Guess> = guesses(
    table.columns,
    new Map(wish.wants.filter(isColumn).map(({ name, concept }) => [name, concept])),
  );
  const plan = planIn(sheets);
  const once = wish.wants.flatMap(({ name, parameter }) =>
    parameter.kind === "plan" && plan !== undefined ? [[name, plan] as const] : [],
  );
  return { found, columns: new Map([...found].map(([name, { column }]) => [name, column])), once: new Map(once) };
};

const warningOf = (want: Want, guess: Guess | undefined, chosen: number | undefined): string | undefined => {
  if (chosen === undefined) return want.optional ? undefined : "Not found by heading: choose it.";
  return guess?.column === chosen && guess.by === "values"
    ? "Guessed by its cells alone: look whether it is right."
    : undefined;
};

/** Asks what is wanted, guesses the columns, shows the first answers, and writes the column. */
const Form = ({ seen, wish }: { readonly seen: Seen; readonly wish: Wish }) => {
  const { evaluate } = usePane();
  const [first] = useState(() => guessed(wish, seen));
  const [columns, setColumns] = useState<ReadonlyMap<string, number>>(first.columns);
  const [once, setOnce] = useState<ReadonlyMap<string, string>>(first.once);
  const choice: ColumnChoice = { wish, at: seen.at, columns, once };
  const column = columnFor(choice, seen.sheets);
  return (
    <>
      <div className="fields">
        {wish.wants.map((want) =>
          isColumn(want) ? (
            <Select
              key={want.name}
              label={want.optional ? `${want.label} (or none)` : want.label}
              value={columns.get(want.name)}
              first={want.optional ? "none" : "choose a column"}
              warning={warningOf(want, first.found.get(want.name), columns.get(want.name))}
              options={seen.table.columns.map(
                ({ column, heading }) =>
                  [column, `${columnLetters(column + 1)}: ${heading || "(no heading)"}`] as const,
              )}
              onChoose={(chosen) => {
                const next = new Map(columns);
                if (chosen === undefined) next.delete(want.name);
                else next.set(want.name, chosen);
                setColumns(next);
              }}
            />
          ) : (
            <Input
              key={want.name}
              label={`${want.label}${want.optional ? " (or none)" : ""}: ${want.from === "cells" ? "cells" : "a figure or a cell"}`}
              value={once.get(want.name) ?? ""}
              placeholder={want.from === "cells" ? "'Cooling plan'!B10:B15" : undefined}
              onChange={(typed) => setOnce(new Map(once).set(want.name, typed))}
            />
          ),
        )}
      </div>
      {typeof column === "string" ? (
        <Words>{column}</Words>
      ) : (
        <>
          <FirstRows
            headings={["Row", column.heading]}
            rows={column.formulas
              .slice(0, SHOWN)
              .map((_, i) => [seen.table.row + i + 1, shownAnswer(column.answer(i, evaluate), wish.unit)])}
          />
          <code className="formula">{column.formulas[0]}</code>
          {column.empty.length > 0 && (
            <Words>
              Stay empty, because a cell is blank or nothing stands before: row {rowsInWords(column.empty)}.
            </Words>
          )}
          {column.notes.map((note) => (
            <Message key={note} intent="warning">
              {note}
            </Message>
          ))}
          <Cautions of={wish.definition.cautions} />
        </>
      )}
      <Act action={addColumn} choice={choice} primary unavailable={typeof column === "string"} />
    </>
  );
};

/** A column of answers for a table of the keeper's own. */
export const AddColumn = ({ wish, onBack }: { readonly wish: Wish | undefined; readonly onBack: () => void }) => {
  const { workbook, busy } = usePane();
  const title = useRef<HTMLHeadingElement>(null);
  const [seen, setSeen] = useState<Seen | undefined>();
  const [trouble, setTrouble] = useState<string | undefined>();
  const [chosen, setChosen] = useState(wish);
  const offered = wish && !wishes.includes(wish) ? [wish, ...wishes] : wishes;
  const look = async (): Promise<void> => {
    try {
      const at = await workbook.selection();
      const sheets = await workbook.read();
      const contents = sheets.find(({ name }) => name === at.sheet);
      const table = contents ? tableAt(contents, at) : "Select a cell of your table.";
      setTrouble(typeof table === "string" ? table : undefined);
      setSeen(typeof table === "string" ? undefined : { at, sheets, table });
    } catch (failure) {
      setTrouble(failureInWords(failure));
    }
  };
  useEffect(() => {
    title.current?.focus();
    void look();
    // Once, on opening; afterwards the button looks again.
  }, []);
  return (
    <article>
      <Button onClick={onBack}>All functions</Button>
      <h2 ref={title} tabIndex={-1}>
        Add a column to your own table
      </h2>
      <Words>{addColumn.about}</Words>
      <div className="row">
        <Button unavailable={busy} onClick={() => void look()}>
          Look at the selected table
        </Button>
      </div>
      <div role="status">
        {trouble !== undefined && <Message intent="warning">{trouble}</Message>}
        {seen && (
          <Words>
            {`"${seen.at.sheet}", ${areaName({
              row: seen.table.headings,
              column: seen.table.columns[0]?.column ?? 0,
              rows: seen.table.rows + 1,
              columns: seen.table.columns.length,
            })}: headings in row ${seen.table.headings + 1}, ${seen.table.rows} rows.`}
          </Words>
        )}
      </div>
      {seen && (
        <>
          <SmallTitle>What do you want to know?</SmallTitle>
          <Select
            label="In each row"
            value={chosen?.key}
            first="choose"
            wide
            options={offered.map(({ key, words }) => [key, words] as const)}
            onChoose={(key) => setChosen(offered.find((one) => one.key === key))}
          />
          {chosen && (
            <Form key={`${chosen.key} ${seen.at.sheet} ${seen.at.row} ${seen.at.column}`} seen={seen} wish={chosen} />
          )}
        </>
      )}
    </article>
  );
};
