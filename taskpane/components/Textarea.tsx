import type { ComponentPropsWithoutRef } from "react";
import { Field, type FieldProps } from "./Field";

interface TextareaProps
  extends FieldProps, Omit<ComponentPropsWithoutRef<"textarea">, "id" | "className" | "onChange" | "value"> {
  /** Left out where the text may be long: the element then keeps it alone. */
  readonly value?: string;
  readonly onChange: (value: string) => void;
}

/** Lines to write in. */
export const Textarea = ({ label, warning, wide, onChange, ...rest }: TextareaProps) => (
  <Field label={label} warning={warning} wide={wide}>
    {(tied) => (
      <textarea {...rest} {...tied} className="entry" onChange={({ currentTarget }) => onChange(currentTarget.value)} />
    )}
  </Field>
);
