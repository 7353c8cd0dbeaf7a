import { Checkbox } from "../components/Checkbox";
import { FilePicker } from "../components/FilePicker";
import { Message } from "../components/Message";
import { Select } from "../components/Select";
import { useCallback, useEffect, useState } from "react";
import { KEPT } from "../actions/kept";
import { freeze } from "../actions/freeze";
import { openFile, type OpenedFile } from "../actions/openFile";
import { reenter } from "../actions/reenter";
import { saveFile, saveWorkbook } from "../actions/saveFile";
import { picturesOf, savePicture } from "../actions/savePicture";
import { sharedCopy } from "../actions/sharedCopy";
import { thaw } from "../actions/thaw";
import { workingCopy, workingFile } from "../actions/workingCopy";
import { Act } from "./Act";
import { usePane } from "./context";
import { CsvForm } from "./CsvForm";
import { papers, pictureKinds } from "./pictureOptions";
import { Folded, SmallTitle, Title, Words } from "./Parts";

/** The sheets of the workbook and their pictures, looked at anew when the pane is turned to. */
const useContents = () => {
  const { workbook, busy } = usePane();
  const [names, setNames] = useState<readonly string[]>([]);
  const [pictures, setPictures] = useState<Awaited<ReturnType<typeof picturesOf>>>([]);
  const look = useCallback(async () => {
    try {
      setNames(await workbook.sheetNames());
      setPictures(await picturesOf(workbook));
    } catch {
      // What cannot be listed now is listed at the next look; the actions say what is wrong.
    }
  }, [workbook]);
  useEffect(() => {
    if (busy) return;
    const lookAgain = (): void => void look();
    lookAgain();
    window.addEventListener("focus", lookAgain);
    return () => window.removeEventListener("focus", lookAgain);
  }, [look, busy]);
  return { names, pictures };
};

export default function Share() {
  const { workbook, save } = usePane();
  const { names, pictures } = useContents();
  const [all, setAll] = useState(true);
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const [picked, setPicked] = useState(0);
  const [kind, setKind] = useState<(typeof pictureKinds)[number][0]>("png");
  const [paper, setPaper] = useState<(typeof papers)[number][0]>("light");
  const [file, setFile] = useState<OpenedFile | undefined>();

  // What was said of freezing no longer holds once the formulas are back, and the other way round.
  const [frozen, setFrozen] = useState(0);
  const [thawed, setThawed] = useState(0);

  const chosen = all ? names : names.filter((name) => !left.has(name));
  const picture = pictures[picked] ?? pictures[0];
  return (
    <>
      {workbook.open && (
        <>
          <Title>Open and save</Title>
          <section className="part">
            <SmallTitle>Save the workbook</SmallTitle>
            <Words>{saveWorkbook.about}</Words>
            <Act action={saveWorkbook} choice={{ save }} />
            {workbook.kept &&
              (workbook.kept.trouble() === undefined ? (
                <Words quiet>{KEPT}</Words>
              ) : (
                <Message intent="warning">{workbook.kept.trouble()}</Message>
              ))}
          </section>
          <Folded title="Open a file of yours">
            <Words>{openFile.about}</Words>
            <FilePicker
              label="Your file"
              accept=".xlsx,.xlsm,.csv"
              onPick={async (picked) =>
                setFile({ name: picked.name, bytes: new Uint8Array(await picked.arrayBuffer()) })
              }
            />
            {file && <CsvForm file={file} onSay={(said) => setFile({ ...file, ...(said ? { said } : {}) })} />}
            {/* What was said of another file, or before the keeper has said how it is read, no longer holds. */}
            <Act key={`${file?.name} ${JSON.stringify(file?.said)}`} action={openFile} choice={file} />
          </Folded>
        </>
      )}
      <Title>Hand it on</Title>
      <fieldset className="choices">
        <legend>Which sheets</legend>
        <Checkbox label="All sheets, hidden ones too" checked={all} onChange={setAll} />
        {!all && (
          <div className="names">
            {names.map((name) => (
              <Checkbox
                key={name}
                label={name}
                checked={!left.has(name)}
                onChange={(checked) => {
                  const next = new Set(left);
                  if (checked) next.delete(name);
                  else next.add(name);
                  setLeft(next);
                }}
              />
            ))}
          </div>
        )}
      </fieldset>

      <Folded title="Save for others">
        <Words>{saveFile.about}</Words>
        <Act action={saveFile} choice={{ names: chosen, save }} />
      </Folded>
      <Folded title="Shared copy">
        <Words>{sharedCopy.about}</Words>
        <Act action={sharedCopy} choice={chosen} />
      </Folded>
      <Folded title="Working copy">
        <Words>{workingCopy.about}</Words>
        <Act action={workingCopy} choice={chosen} />
        <Words>{workingFile.about}</Words>
        <Act action={workingFile} choice={{ names: chosen, save }} />
      </Folded>
      <Folded title="Freeze and thaw">
        <Words>{freeze.about}</Words>
        <Act
          key={`freeze ${thawed}`}
          action={freeze}
          choice={all ? undefined : chosen}
          onDone={() => setFrozen(frozen + 1)}
        />
        <Words>{thaw.about}</Words>
        <Act
          key={`thaw ${frozen}`}
          action={thaw}
          choice={all ? undefined : chosen}
          onDone={() => setThawed(thawed + 1)}
        />
      </Folded>
      <Folded title="A picture or a page, for a post">
        <Words>{savePicture.about}</Words>
        {picture ? (
          <>
            <div className="fields">
              <Select
                label="Picture"
                value={pictures.indexOf(picture)}
                options={pictures.map((one, i) => [i, `${one.sheet}: ${one.picture}`] as const)}
                onChoose={(number = 0) => setPicked(number)}
                wide
              />
              <Select label="As" value={kind} options={pictureKinds} onChoose={(one = "png") => setKind(one)} />
              <Select label="Paper" value={paper} options={papers} onChoose={(one = "light") => setPaper(one)} />
            </div>
            <Act action={savePicture} choice={{ ...picture, kind, paper, save, document, today: new Date() }} />
          </>
        ) : (
          <Words quiet>None of our sheets is in this workbook. Insert one from Sheets.</Words>
        )}
      </Folded>

      <Title>Repair</Title>
      <Folded title="Formulas that show #NAME?">
        <Words>{reenter.about}</Words>
        <Act action={reenter} choice={undefined} />
      </Folded>
    </>
  );
}
