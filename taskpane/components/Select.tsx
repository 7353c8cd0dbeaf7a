import { Field, type FieldProps } from "./Field";

interface SelectProps<T> extends FieldProps {
  readonly value: T | undefined;
  readonly options: readonly (readonly [value: T, words: string])[];
  readonly onChoose: (value: T | undefined) => void;
  /** The words for nothing chosen, where that may be. */
  readonly first?: string;
}

/** A choice of one of a few values, each with its words. */
export const Select = <T extends string | number>({
  label,
  warning,
  wide,
  value,
  options,
  onChoose,
  first,
}: SelectProps<T>) => (
  <Field label={label} warning={warning} wide={wide}>
    {(tied) => (
      <select
        {...tied}
        className="entry"
        value={String(options.findIndex(([one]) => one === value))}
        onChange={({ currentTarget }) => onChoose(options[Number(currentTarget.value)]?.[0])}
      >
        {first !== undefined && <option value="-1">{first}</option>}
        {options.map(([one, words], i) => (
          <option key={one} value={i}>
            {words}
          </option>
        ))}
      </select>
    )}
  </Field>
);
