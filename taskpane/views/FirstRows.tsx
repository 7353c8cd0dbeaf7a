import { makeStyles, tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { SmallTitle } from "./Parts";

const useStyles = makeStyles({
  scroll: { overflowX: "auto", marginBottom: "8px" },
  table: {
    borderCollapse: "collapse",
    fontSize: "0.8125rem",
    "& th, & td": {
      borderBottom: `1px solid ${tokens.colorNeutralStroke2}`,
      padding: "3px 8px 3px 0",
      textAlign: "start",
      whiteSpace: "nowrap",
    },
  },
});

interface FirstRowsProps {
  readonly headings?: readonly string[];
  readonly rows: readonly (readonly ReactNode[])[];
}

/** The first rows of a file, as they will land. */
export const FirstRows = ({ headings, rows }: FirstRowsProps) => {
  const styles = useStyles();
  return (
    <>
      <SmallTitle>The first rows, as they will land</SmallTitle>
      <div className={styles.scroll} tabIndex={0} role="region" aria-label="The first rows">
        <table className={styles.table}>
          {headings && (
            <thead>
              <tr>
                {headings.map((heading, i) => (
                  <th scope="col" key={i}>
                    {heading}
                  </th>
                ))}
              </tr>
            </thead>
          )}
          <tbody>
            {rows.map((row, i) => (
              <tr key={i}>
                {row.map((cell, column) => (
                  <td key={column}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
};
