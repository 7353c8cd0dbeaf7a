interface CheckboxProps {
  readonly label: string;
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
}

export const Checkbox = ({ label, checked, onChange }: CheckboxProps) => (
  <label className="checkbox">
    <input type="checkbox" checked={checked} onChange={({ currentTarget }) => onChange(currentTarget.checked)} />
    <span>{label}</span>
  </label>
);
