import { useState } from "react";
import { failureInWords } from "../actions/action";
import {
  linkLines,
  linkSheets,
  type LinkLine,
  type SourceChoice,
  type Sources,
  type Standing,
} from "../actions/linkSheets";
import { Button } from "../components/Button";
import { Message } from "../components/Message";
import { Select } from "../components/Select";
import { Act } from "./Act";
import { WorkbookError } from "../workbook";
import { usePane } from "./context";
import { SmallTitle, Title, Words } from "./Parts";

const standings: Readonly<Record<Standing, string>> = {
  linked: "linked",
  equal: "typed, equal",
  blank: "blank here",
  elsewhere: "follows another",
  different: "typed, different",
};
/** What is ticked to begin with: nothing that would take a figure away. */
const isTicked = ({ standing }: LinkLine): boolean =>
  standing === "equal" || standing === "blank" || standing === "elsewhere";

type Looked =
  | {
      readonly lines: readonly LinkLine[];
      readonly moved: readonly string[];
      readonly choices: readonly SourceChoice[];
    }
  | { readonly failed: string }
  | undefined;

/** The cells that repeat another sheet's, as a table, and what is ticked of it linked. */
export const LinkSheets = () => {
  const { workbook, busy } = usePane();
  const [looked, setLooked] = useState<Looked>();
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set());

  const [sources, setSources] = useState<Sources>(new Map());

  const show = (found: Awaited<ReturnType<typeof linkLines>>): void => {
    setLooked(found);
    setTicked(new Set(found.lines.filter(isTicked).map(({ place }) => place)));
  };
  const look = async (wanted: Sources = sources): Promise<void> => {
    try {
      show(await linkLines(workbook, wanted));
    } catch (failure) {
      setLooked({ failed: failureInWords(failure) });
    }
  };
  /** After cells were linked: what was said of that stays where the sheets cannot be read again; "Look again" tries anew. */
  const lookAfter = async (): Promise<void> => {
    try {
      show(await linkLines(workbook, sources));
    } catch (failure) {
      if (!(failure instanceof WorkbookError)) throw failure;
    }
  };
  const tick = (place: string, on: boolean): void => {
    const next = new Set(ticked);
    if (on) next.add(place);
    else next.delete(place);
    setTicked(next);
  };

  const follow = (choice: string, source: string): void => {
    const next = new Map(sources).set(choice, source);
    setSources(next);
    void look(next);
  };

  const lines = looked && "lines" in looked ? looked.lines : [];
  const choices = looked && "choices" in looked ? looked.choices : [];
  const tabs = [...new Set(lines.map(({ sheet }) => sheet))];
  return (
    <section className="item">
      <Title>Link sheets</Title>
      <Words>{linkSheets.about}</Words>
      <div className="row">
        <Button unavailable={busy} onClick={() => void look()}>
          {looked ? "Look again" : "Look at the sheets"}
        </Button>
      </div>
      <div role="status">
        {looked && "failed" in looked && <Message intent="error">{looked.failed}</Message>}
        {looked && "lines" in looked && (
          <Words>
            {lines.length === 0
              ? "No cell here repeats another sheet's. Insert a Cooling plan or Today beside the sheets that follow them."
              : `${(["linked", "equal", "blank", "elsewhere", "different"] as const)
                  .filter((one) => one !== "elsewhere" || lines.some(({ standing }) => standing === one))
                  .map((one) => `${lines.filter(({ standing }) => standing === one).length} ${standings[one]}`)
                  .join("; ")}.`}
            {looked.moved.length > 0 &&
              ` Not looked at, because rows, columns or headings were moved: ${looked.moved.map((name) => `"${name}"`).join(", ")}.`}
          </Words>
        )}
      </div>
      {tabs.map((tab) => (
        <div key={tab}>
          <SmallTitle>{tab}</SmallTitle>
          {choices
            .filter(({ sheet }) => sheet === tab)
            .map(({ key, kind, names, source }) => (
              <Select
                key={key}
                label={`Which ${kind} it follows`}
                value={source}
                options={names.map((name) => [name, name])}
                onChoose={(name) => name !== undefined && follow(key, name)}
              />
            ))}
          <div className="scroll" tabIndex={0} role="region" aria-label={`Cells of ${tab}`}>
            <table className="links">
              <thead>
                <tr>
                  {["Link", "Cell", "Here", "There", "From"].map((heading) => (
                    <th scope="col" key={heading}>
                      {heading}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {lines
                  .filter(({ sheet }) => sheet === tab)
                  .map(({ place, words, here, there, source, standing }) => (
                    <tr key={place} className={standing}>
                      <td>
                        {standing === "linked" ? (
                          standings.linked
                        ) : (
                          <label className="checkbox">
                            <input
                              type="checkbox"
                              checked={ticked.has(place)}
                              onChange={({ currentTarget }) => tick(place, currentTarget.checked)}
                              aria-label={`${words}, ${place}: ${standings[standing]}`}
                            />
                            <span>{standings[standing]}</span>
                          </label>
                        )}
                      </td>
                      <td>
                        {words} ({place.slice(place.lastIndexOf("!") + 1)})
                      </td>
                      <td>{here}</td>
                      <td>{there}</td>
                      <td>{source}</td>
                    </tr>
                  ))}
              </tbody>
            </table>
          </div>
        </div>
      ))}
      {lines.some(({ standing }) => standing !== "linked") && (
        <Act action={linkSheets} choice={{ ticked: [...ticked], sources }} onDone={() => void lookAfter()} />
      )}
    </section>
  );
};
