import type { AnyDefinition } from "../../functions/define";
import { columnLetters } from "../sheets/shared/address";
import { address, type UseCell } from "../uses/grid";
import type { Use } from "../uses/use";
import { usesOf } from "../uses/usesOf";
import { SmallTitle, Words } from "./Parts";

/** Rows of a sample that are shown; a log goes on below them. */
const SHOWN = 5;

const shown = (cell: UseCell): string =>
  cell === null
    ? ""
    : typeof cell === "object"
      ? cell.day
      : typeof cell === "boolean"
        ? String(cell).toUpperCase()
        : String(cell);

/** A sample as a sheet shows it, with its letters and numbers; the cells of the answer are marked. */
const Sample = ({ use: { title, cells, formulas, answers } }: { readonly use: Use }) => {
  const columns = Math.max(answers.column + answers.columns, ...cells.map((row) => row.length));
  const all = Math.max(answers.row + 1, cells.length);
  const rows = Math.min(all, SHOWN);
  const isAnswer = (row: number, column: number): boolean =>
    row >= answers.row &&
    row < answers.row + answers.rows &&
    column >= answers.column &&
    column < answers.column + answers.columns;
  return (
    <div className="scroll sample" tabIndex={0} role="region" aria-label={`${title}: a sample`}>
      <table>
        <thead>
          <tr>
            <td />
            {Array.from({ length: columns }, (_, i) => (
              <th scope="col" key={i}>
                {columnLetters(i + 1)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {Array.from({ length: rows }, (_, i) => (
            <tr key={i}>
              <th scope="row">{i + 1}</th>
              {Array.from({ length: columns }, (_, j) => (
                <td key={j} className={isAnswer(i, j) ? "answer" : undefined}>
                  {formulas.some(({ row, column }) => row === i && column === j) ? "= …" : shown(cells[i]?.[j] ?? null)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
};

/** A function on columns of the keeper's own: each of its uses with a sample, its formula and how it is written. */
export const OwnColumns = ({ definition }: { readonly definition: AnyDefinition }) =>
  usesOf(definition).map((use) => {
    const [{ row, column, formula } = { row: 0, column: 0, formula: "" }] = use.formulas;
    return (
      <section key={use.title}>
        <SmallTitle>{use.title}</SmallTitle>
        <Sample use={use} />
        <code className="formula">
          {address(column, row)}: {formula}
        </code>
        <Words>{use.says}</Words>
      </section>
    );
  });
