import type { ComponentPropsWithoutRef } from "react";
import { Field, type FieldProps } from "./Field";

interface InputProps
  extends FieldProps, Omit<ComponentPropsWithoutRef<"input">, "id" | "className" | "onChange" | "value"> {
  readonly value: string;
  readonly onChange: (value: string) => void;
}

/** One line to write in. `type`, `min`, `max` and the like are the element's own. */
export const Input = ({ label, warning, wide, onChange, ...rest }: InputProps) => (
  <Field label={label} warning={warning} wide={wide}>
    {(tied) => (
      <input {...rest} {...tied} className="entry" onChange={({ currentTarget }) => onChange(currentTarget.value)} />
    )}
  </Field>
);
