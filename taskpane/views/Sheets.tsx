import { Input } from "../components/Input";
import { useEffect, useRef, useState } from "react";
import { counted } from "../actions/action";
import { addRows } from "../actions/addRows";
import { clearAll } from "../actions/clearAll";
import { clearExample } from "../actions/clearExample";
import { insertSheet } from "../actions/insertSheet";
import { sheetGroups } from "../sheets/catalogue";
import type { Sheet } from "../sheets/sheet";
import { Select } from "../components/Select";
import { inSystem } from "../sheets/shared/systems";
import { chooseUnits } from "../units";
import { sheetPath } from "../handbook/paths";
import { Act } from "./Act";
import { HandbookLink } from "./HandbookLink";
import { LinkSheets } from "./LinkSheets";
import { Miniature } from "./Miniature";
import { Cautions, SmallTitle, Title, Words } from "./Parts";
import { StartYear } from "./StartYear";
import { useUnits } from "./useUnits";

/** One sheet. Its cautions are one line until they are asked for, and stand in full once the sheet is inserted. */
const SheetItem = ({ sheet, sought }: { readonly sheet: Sheet; readonly sought: boolean }) => {
  const [open, setOpen] = useState(false);
  const units = useUnits();
  const item = useRef<HTMLLIElement>(null);
  // Found by a search: it comes into view, and what is read next begins there.
  useEffect(() => {
    if (!sought) return;
    item.current?.scrollIntoView();
    item.current?.focus();
  }, [sought]);
  return (
    <li className="item" ref={item} tabIndex={sought ? -1 : undefined}>
      <div className="head">
        <Miniature sheet={sheet} />
        <div className="beside">
          <SmallTitle>{sheet.name}</SmallTitle>
          <Words>{sheet.sentence}</Words>
          <Act
            action={insertSheet}
            choice={[inSystem(sheet, units)]}
            name={`Insert ${sheet.name}`}
            onDone={() => {
              setOpen(true);
            }}
          />
        </div>
      </div>
      <details
        open={open}
        onToggle={({ currentTarget }) => {
          setOpen(currentTarget.open);
        }}
      >
        <summary>{counted(sheet.cautions.length, "caution")}</summary>
        <Cautions of={sheet.cautions} />
      </details>
      <HandbookLink path={sheetPath(sheet)}>{sheet.name} in the handbook</HandbookLink>
    </li>
  );
};

/** A log that is full, or soon will be. */
const MoreRows = () => {
  const [rows, setRows] = useState("60");
  return (
    <section className="item">
      <Title>A log is full</Title>
      <Words>{addRows.about}</Words>
      <div className="fields">
        <Input label="How many rows" inputMode="numeric" value={rows} onChange={setRows} />
      </div>
      <Act action={addRows} choice={Number(rows.trim() === "" ? NaN : rows)} />
    </section>
  );
};

/** Chosen once, for every sheet that is inserted from then on. */
const Units = () => (
  <>
    <div className="fields">
      <Select
        label="Units of new sheets"
        value={useUnits()}
        options={[
          ["metric", "°C, g, m, mm"],
          ["imperial", "°F, oz, ft, inches"],
        ]}
        onChoose={(system = "metric") => chooseUnits(system)}
      />
    </div>
    <Words quiet>Sheets that are in the workbook keep theirs; what is linked across is converted.</Words>
  </>
);

export default function Sheets({ open }: { readonly open?: string }) {
  return (
    <>
      <Units />
      <StartYear />
      <Words>{insertSheet.about}</Words>
      {sheetGroups.map((group) => (
        <section key={group.title}>
          <Title>{group.title}</Title>
          <ul className="sheets">
            {group.sheets.map((sheet) => (
              <SheetItem key={sheet.key} sheet={sheet} sought={sheet.key === open} />
            ))}
          </ul>
        </section>
      ))}
      <MoreRows />
      <section className="item">
        <Title>Start with your own figures</Title>
        <Words>{clearExample.about}</Words>
        <Act action={clearExample} choice={undefined} />
        <Words>{clearAll.about}</Words>
        <Act action={clearAll} choice={undefined} />
      </section>
      <LinkSheets />
    </>
  );
}
