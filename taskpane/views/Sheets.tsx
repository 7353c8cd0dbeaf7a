import { clearAll } from "../actions/clearAll";
import { clearExample } from "../actions/clearExample";
import { insertSheet } from "../actions/insertSheet";
import { sheets } from "../sheets/catalogue";
import { Act } from "./Act";
import { LinkSheets } from "./LinkSheets";
import { Miniature } from "./Miniature";
import { Cautions, Title, Words } from "./Parts";

export default function Sheets() {
  return (
    <>
      <Words>{insertSheet.about}</Words>
      <ul className="sheets">
        {sheets.map((sheet) => (
          <li key={sheet.key} className="item">
            <div className="head">
              <Miniature sheet={sheet} />
              <div className="beside">
                <Title>{sheet.name}</Title>
                <Words>{sheet.sentence}</Words>
              </div>
            </div>
            <Cautions of={sheet.cautions} />
            <Act action={insertSheet} choice={[sheet]} name={`Insert ${sheet.name}`} />
          </li>
        ))}
      </ul>
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
