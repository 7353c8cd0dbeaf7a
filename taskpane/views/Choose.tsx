import { Field, makeStyles, mergeClasses, Select } from "@fluentui/react-components";
import { useNarrow } from "./Parts";

const useStyles = makeStyles({
  wide: { gridColumnStart: 1, gridColumnEnd: -1 },
});

interface ChooseProps<T> {
  readonly label: string;
  readonly value: T | undefined;
  readonly options: readonly (readonly [value: T, words: string])[];
  readonly onChoose: (value: T | undefined) => void;
  /** The words for nothing chosen, where that may be. */
  readonly first?: string;
  /** Why the keeper has to look here. */
  readonly hint?: string;
  /** Over the whole width: its words are long. */
  readonly wide?: boolean;
}

/** A choice of one of a few values, each with its words. */
export const Choose = <T extends string | number>({
  label,
  value,
  options,
  onChoose,
  first,
  hint,
  wide,
}: ChooseProps<T>) => {
  const styles = useStyles();
  const narrow = useNarrow();
  return (
    <Field
      label={label}
      className={mergeClasses(narrow.field, (wide === true || hint !== undefined) && styles.wide)}
      validationState={hint ? "warning" : "none"}
      validationMessage={hint}
    >
      <Select
        className={narrow.within}
        select={{ className: narrow.within }}
        value={String(options.findIndex(([one]) => one === value))}
        onChange={(_, { value: picked }) => onChoose(options[Number(picked)]?.[0])}
      >
        {first !== undefined && <option value="-1">{first}</option>}
        {options.map(([one, words], i) => (
          <option key={one} value={i}>
            {words}
          </option>
        ))}
      </Select>
    </Field>
  );
};
