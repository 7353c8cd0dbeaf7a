import { useState } from "react";
import { counted } from "../actions/action";
import { clearAll } from "../actions/clearAll";
import { clearExample } from "../actions/clearExample";
import { insertSheet } from "../actions/insertSheet";
import { sheetGroups } from "../sheets/catalogue";
import type { Sheet } from "../sheets/sheet";
import { Act } from "./Act";
import { LinkSheets } from "./LinkSheets";
import { Miniature } from "./Miniature";
import { Cautions, SmallTitle, Title, Words } from "./Parts";
import { StartYear } from "./StartYear";

/** One sheet. Its cautions are one line until they are asked for, and stand in full once the sheet is inserted. */
const SheetItem = ({ sheet }: { readonly sheet: Sheet }) => {
  const [open, setOpen] = useState(false);
  return (
    <li className="item">
      <div className="head">
        <Miniature sheet={sheet} />
        <div className="beside">
          <SmallTitle>{sheet.name}</SmallTitle>
          <Words>{sheet.sentence}</Words>
        </div>
      </div>
      <Act
        action={insertSheet}
        choice={[sheet]}
        name={`Insert ${sheet.name}`}
        onDone={() => {
          setOpen(true);
        }}
      />
      <details
        open={open}
        onToggle={({ currentTarget }) => {
          setOpen(currentTarget.open);
        }}
      >
        <summary>{counted(sheet.cautions.length, "caution")}</summary>
        <Cautions of={sheet.cautions} />
      </details>
    </li>
  );
};

export default function Sheets() {
  return (
    <>
      <StartYear />
      <Words>{insertSheet.about}</Words>
      {sheetGroups.map((group) => (
        <section key={group.title}>
          <Title>{group.title}</Title>
          <ul className="sheets">
            {group.sheets.map((sheet) => (
              <SheetItem key={sheet.key} sheet={sheet} />
            ))}
          </ul>
        </section>
      ))}
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
