import { makeStyles, tokens } from "@fluentui/react-components";
import { clearExample } from "../actions/clearExample";
import { insertSheet } from "../actions/insertSheet";
import { sheets } from "../sheets/catalogue";
import { Act } from "./Act";
import { Miniature } from "./Miniature";
import { Cautions, Title, Words } from "./Parts";

const useStyles = makeStyles({
  list: { listStyleType: "none", margin: 0, padding: 0 },
  item: { padding: "12px 0", borderTop: `1px solid ${tokens.colorNeutralStroke2}` },
  head: { display: "flex", flexWrap: "wrap", gap: "12px", marginBottom: "4px" },
  words: { flex: "1 1 140px", minWidth: 0 },
});

export const Sheets = () => {
  const styles = useStyles();
  return (
    <>
      <Words>{insertSheet.about}</Words>
      <ul className={styles.list}>
        {sheets.map((sheet) => (
          <li key={sheet.key} className={styles.item}>
            <div className={styles.head}>
              <Miniature sheet={sheet} />
              <div className={styles.words}>
                <Title>{sheet.name}</Title>
                <Words>{sheet.sentence}</Words>
              </div>
            </div>
            <Cautions of={sheet.cautions} />
            <Act action={insertSheet} choice={[sheet]} name={`Insert ${sheet.name}`} />
          </li>
        ))}
      </ul>
      <section className={styles.item}>
        <Title>Start with your own figures</Title>
        <Words>{clearExample.about}</Words>
        <Act action={clearExample} choice={undefined} />
      </section>
    </>
  );
};
