import { Label, makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import { useId, useState, type DragEvent } from "react";

const useStyles = makeStyles({
  drop: {
    border: `1px dashed ${tokens.colorNeutralStroke1}`,
    padding: "8px",
    marginBottom: "8px",
    minWidth: 0,
  },
  over: { backgroundColor: tokens.colorNeutralBackground1Hover },
  input: { font: "inherit", color: "inherit", display: "block", width: "100%", boxSizing: "border-box" },
});

interface FilePickerProps {
  readonly label: string;
  readonly accept: string;
  readonly onPick: (file: File) => void | Promise<void>;
}

/** The browser's own file button, and a place to drop a file on. */
export const FilePicker = ({ label, accept, onPick }: FilePickerProps) => {
  const styles = useStyles();
  const id = useId();
  const [over, setOver] = useState(false);
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    const [file] = event.dataTransfer.files;
    if (file) void onPick(file);
  };
  return (
    <div
      className={mergeClasses(styles.drop, over && styles.over)}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <Label htmlFor={id}>{label}: choose, or drop it here</Label>
      <input
        id={id}
        className={styles.input}
        type="file"
        accept={accept}
        onChange={({ currentTarget }) => {
          const file = currentTarget.files?.[0];
          if (file) void onPick(file);
        }}
      />
    </div>
  );
};
