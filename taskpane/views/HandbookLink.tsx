import type { ReactNode } from "react";
import { fileOf } from "../handbook/paths";
import { usePane } from "./context";

/** A page of the handbook, in a window of its own: the workbook stays where it is. */
export const HandbookLink = ({ path, children }: { readonly path: string; readonly children: ReactNode }) => {
  const { handbook } = usePane();
  return (
    <p>
      <a href={`${handbook}${fileOf(path)}`} target="_blank" rel="noopener">
        {children}
      </a>
    </p>
  );
};
