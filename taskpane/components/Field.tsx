import { useId, type ReactNode } from "react";

export interface FieldProps {
  readonly label: string;
  /** Why the keeper has to look here. */
  readonly warning?: string;
  /** Over the whole width of a grid of fields: its words are long. */
  readonly wide?: boolean;
}

/** What ties the element of a field to its words. */
interface Tied {
  readonly id: string;
  readonly "aria-describedby"?: string;
}

/** A label above, a warning below, and between them the element that `children` makes of what ties them together. */
export const Field = ({
  label,
  warning,
  wide,
  children,
}: FieldProps & { readonly children: (tied: Tied) => ReactNode }) => {
  const id = useId();
  const about = `${id}-about`;
  return (
    <div className={wide === true || warning !== undefined ? "field wide" : "field"}>
      <label htmlFor={id}>{label}</label>
      {children({ id, ...(warning === undefined ? {} : { "aria-describedby": about }) })}
      {warning !== undefined && (
        <p id={about} className="warning">
          <Mark>!</Mark>
          {warning}
        </p>
      )}
    </div>
  );
};

/** A sign before words that say the same: a colour alone says nothing, and the sign need not be read out. */
export const Mark = ({ children }: { readonly children: string }) => (
  <span className="mark" aria-hidden="true">
    {children}
  </span>
);
