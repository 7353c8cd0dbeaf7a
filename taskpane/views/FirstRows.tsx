import type { ReactNode } from "react";
import { SmallTitle } from "./Parts";

interface FirstRowsProps {
  readonly headings?: readonly string[];
  readonly rows: readonly (readonly ReactNode[])[];
}

/** The first rows of a file, as they will land. */
export const FirstRows = ({ headings, rows }: FirstRowsProps) => (
  <>
    <SmallTitle>The first rows, as they will land</SmallTitle>
    <div className="scroll" tabIndex={0} role="region" aria-label="The first rows">
      <table>
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
