import { Button } from "../components/Button";
import { Input } from "../components/Input";
import { useDeferredValue, useEffect, useId, useMemo, useRef, useState } from "react";
import type { AnyDefinition, Example, Value } from "../../functions/define";
import { giveWords, resultWords, shapeWords, sourceWords } from "../../functions/entryWords";
import { formulaOf } from "../../functions/formula";
import { signature } from "../../functions/words";
import { heldAgainst } from "../../functions/yardsticks";
import { counted } from "../actions/action";
import { insertFormula } from "../actions/insertFormula";
import { wishOf, type Wish } from "../columns/wish";
import { wishes } from "../columns/wishes";
import { functionPath } from "../handbook/paths";
import { Act } from "./Act";
import { AddColumn } from "./AddColumn";
import { usePane } from "./context";
import { lastUsed, noteUsed } from "./lastUsed";
import { OwnColumns } from "./OwnColumns";
import { HandbookLink } from "./HandbookLink";
import { Cautions, SmallTitle, Title, Words } from "./Parts";
import { find } from "../search/find";
import { functionItems, type FunctionItem, type Item } from "../search/items";

type Found = Pick<FunctionItem, "definition" | "topic">;

/** The column that a function can be: as keepers ask for it, or else as it is defined. */
const columnOf = (definition: AnyDefinition): Wish | undefined =>
  wishes.find(({ key }) => key === definition.name) ?? wishOf(definition);

/** Functions that are named under a caution. */
const CARRIERS = 6;
const SHOWN_ROWS = 7;

const valueWords = (value: Value): string =>
  typeof value === "boolean" ? (value ? "TRUE" : "FALSE") : value === "" ? "(looks empty)" : String(value);

/** The answer of an example: rows as lines, the long ones cut. */
const answerWords = ({ gives, rows }: Example): string => {
  if (!Array.isArray(gives)) return valueWords(gives as Value);
  const given = gives as readonly (readonly Value[])[];
  const lines = given.slice(0, SHOWN_ROWS).map((row) => row.map(valueWords).join("   "));
  const more = (rows ?? given.length) - lines.length;
  return [...lines, ...(more > 0 ? [`and ${counted(more, "more row")}`] : [])].join("\n");
};

const Entry = ({
  definition,
  topic,
  onBack,
  onColumn,
}: Found & { readonly onBack: () => void; readonly onColumn: (wish: Wish) => void }) => {
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => title.current?.focus(), []);
  const { examples } = definition;
  const wish = columnOf(definition);
  return (
    <article>
      <Button onClick={onBack}>All functions</Button>
      <h2 ref={title} tabIndex={-1} className="topic">
        {topic}
      </h2>
      <code className="formula">{signature(definition)}</code>
      <Words>{definition.summary}</Words>
      <Cautions of={definition.cautions} />
      <SmallTitle>What it takes</SmallTitle>
      <dl className="arguments">
        {Object.entries(definition.parameters).map(([name, parameter]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>
              {parameter.about}. <span className="quiet">{giveWords(parameter)}</span>
            </dd>
          </div>
        ))}
      </dl>
      <SmallTitle>What it answers</SmallTitle>
      <Words>
        {resultWords(definition).join("; ")}. {shapeWords(definition)}
      </Words>
      {wish && <Button onClick={() => onColumn(wish)}>Add it as a column to your table</Button>}
      <OwnColumns definition={definition} />
      {examples.map((example, i) => (
        <section key={i}>
          <SmallTitle>{examples.length === 1 ? "All in one cell" : `All in one cell, ${i + 1}`}</SmallTitle>
          <code className="formula">
            {formulaOf(definition, example)}
            {"\n"}→ {answerWords(example)}
          </code>
          <Act
            action={insertFormula}
            choice={{ definition, example }}
            name={examples.length === 1 ? undefined : `Insert at the selected cell: example ${i + 1}`}
          />
        </section>
      ))}
      <SmallTitle>Where it comes from</SmallTitle>
      {definition.sources.map((key) => {
        const { status, text } = sourceWords(key);
        return (
          <Words key={key}>
            {status !== "" && <strong>{status}. </strong>}
            {text}
          </Words>
        );
      })}
      <Words quiet>Its figures are held against: {heldAgainst(definition.name)}.</Words>
      <HandbookLink path={functionPath(definition)}>VIV.{definition.name} in the handbook</HandbookLink>
    </article>
  );
};

/** A sheet or a caution among what was found. */
const Other = ({
  item,
  onFunction,
}: {
  readonly item: Exclude<Item, FunctionItem>;
  readonly onFunction: (name: string) => void;
}) => {
  const { open } = usePane();
  if (item.kind === "sheet") {
    return (
      <button type="button" className="function" onClick={() => open("sheets", item.sheet.key)}>
        <span className="name">{item.sheet.name}, a sheet</span> {item.sheet.sentence}
      </button>
    );
  }
  return (
    <>
      <Cautions of={[item.id]} />
      <div className="row">
        {item.functions.slice(0, CARRIERS).map((name) => (
          <Button key={name} onClick={() => onFunction(name)}>
            {name}
          </Button>
        ))}
      </div>
    </>
  );
};

const counts = (found: readonly Item[]): string => {
  const of = (kind: Item["kind"]): number => found.filter((item) => item.kind === kind).length;
  const parts = [counted(of("function"), "function"), counted(of("sheet"), "sheet"), counted(of("caution"), "caution")];
  return parts.filter((part) => !part.startsWith("0 ")).join(", ");
};

export default function Functions({ open }: { readonly open?: string }) {
  const [typed, setTyped] = useState("");
  const [chosen, setChosen] = useState<string | undefined>(open);
  const [column, setColumn] = useState<Wish | "any" | undefined>();
  const [last, setLast] = useState<string | undefined>();
  const wanted = useDeferredValue(typed);
  const isAsked = wanted.trim() !== "";
  const found = useMemo<readonly Item[]>(() => (isAsked ? find(wanted) : functionItems), [wanted, isAsked]);
  const id = useId();
  useEffect(() => setChosen(open), [open]);
  // Back from an entry, the focus returns to where it was.
  useEffect(() => {
    if (chosen === undefined && last !== undefined) document.getElementById(`${id}-${last}`)?.focus();
  }, [chosen, last, id]);

  if (column) return <AddColumn wish={column === "any" ? undefined : column} onBack={() => setColumn(undefined)} />;
  const entry = functionItems.find(({ definition }) => definition.name === chosen);
  if (entry) {
    return (
      <Entry
        {...entry}
        onColumn={setColumn}
        onBack={() => {
          setLast(entry.definition.name);
          setChosen(undefined);
        }}
      />
    );
  }
  const read = (name: string): void => {
    noteUsed(name);
    setChosen(name);
  };
  const used = isAsked ? [] : lastUsed();
  return (
    <>
      <div className="act">
        <div className="row">
          <Button onClick={() => setColumn("any")}>Add a column to your own table</Button>
        </div>
      </div>
      <Input
        label="Find a function, a sheet or a caution: name, word or purpose"
        type="search"
        value={typed}
        onChange={setTyped}
        autoComplete="off"
      />
      <p className="count" role="status">
        {found.length === 0
          ? `Nothing found for "${wanted}". Try another word, such as "winter", "meal" or "egg".`
          : isAsked
            ? `Found: ${counts(found)}`
            : `${functionItems.length} functions`}
      </p>
      {used.length > 0 && (
        <p className="row">
          Read last:
          {used.map((name) => (
            <Button key={name} onClick={() => read(name)}>
              {name}
            </Button>
          ))}
        </p>
      )}
      <ul className="functions">
        {found.map((item, i) => (
          <li key={item.id}>
            {item.kind === "function" ? (
              <>
                {!isAsked && functionItems[i - 1]?.topic !== item.topic && <Title>{item.topic}</Title>}
                <button
                  type="button"
                  id={`${id}-${item.id}`}
                  className="function"
                  onClick={() => read(item.definition.name)}
                >
                  <span className="name">VIV.{item.definition.name}</span> {item.definition.summary}
                </button>
              </>
            ) : (
              <Other item={item} onFunction={read} />
            )}
          </li>
        ))}
      </ul>
    </>
  );
}
