import { useEffect, useState } from "react";
import { discardKept, KEPT, keptInWords, restoreKept } from "../actions/kept";
import { Message } from "../components/Message";
import type { KeptWorkbook } from "../workbook";
import { Act } from "./Act";
import { usePane } from "./context";
import { SmallTitle, Words } from "./Parts";

/** What earlier visits have left, offered until something is done with it. */
export const Kept = () => {
  const { workbook } = usePane();
  const [all, setAll] = useState<readonly KeptWorkbook[]>([]);
  const [done, setDone] = useState("");
  useEffect(() => {
    // A storage that does not open has nothing to offer; that nothing is kept is said where files are saved.
    workbook.kept?.list().then(setAll, () => undefined);
  }, [workbook]);
  const settled = ({ id }: KeptWorkbook, words: string): void => {
    setAll(all.filter((one) => one.id !== id));
    setDone(words);
  };
  if (all.length === 0 && done === "") return null;
  return (
    <section className="kept" aria-label="Kept from an earlier visit">
      <div role="status">{done !== "" && <Message intent="success">{done}</Message>}</div>
      {all.length > 0 && <SmallTitle>Kept from an earlier visit</SmallTitle>}
      {all.map((one) => (
        <div key={one.id}>
          <Words>{keptInWords(one)}</Words>
          <Act
            action={restoreKept}
            choice={one}
            name={`${restoreKept.label}: ${one.title}`}
            onDone={() => settled(one, `"${one.title}" is open again. Undo brings back what was here.`)}
          />
          <Act
            action={discardKept}
            choice={one}
            name={`${discardKept.label}: ${one.title}`}
            onDone={() => settled(one, `"${one.title}" is thrown away.`)}
          />
        </div>
      ))}
      {all.length > 0 && <Words quiet>{KEPT}</Words>}
    </section>
  );
};
