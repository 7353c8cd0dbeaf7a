import type { ReactNode } from "react";
import { cautions, type CautionKey } from "../../functions/cautions";

export const Title = ({ children, id }: { readonly children: ReactNode; readonly id?: string }) => (
  <h2 id={id}>{children}</h2>
);

export const SmallTitle = ({ children, id }: { readonly children: ReactNode; readonly id?: string }) => (
  <h3 id={id}>{children}</h3>
);

export const Words = ({ children, quiet }: { readonly children: ReactNode; readonly quiet?: boolean }) => (
  <p className={quiet ? "quiet" : undefined}>{children}</p>
);

/** A part of a section that is one line until it is asked for. */
export const Folded = ({ title, children }: { readonly title: string; readonly children: ReactNode }) => (
  <details className="part">
    <summary>{title}</summary>
    {children}
  </details>
);

export const Points = ({ children }: { readonly children: ReactNode }) => <ul>{children}</ul>;

/** Cautions, each with the word: a colour alone says nothing. */
export const Cautions = ({ of }: { readonly of: readonly CautionKey[] }) => (
  <>
    {of.map((key) => (
      <p key={key} className="caution">
        <strong>Caution. </strong>
        {cautions[key]}
      </p>
    ))}
  </>
);
