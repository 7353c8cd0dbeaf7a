interface ProgressProps {
  /** What is under way, for a screen reader. */
  readonly label: string;
  /** From 0 to 1; left out where it is not known. */
  readonly share?: number;
}

export const Progress = ({ label, share }: ProgressProps) => (
  <progress className="progress" aria-label={label} max={1} value={share} />
);
