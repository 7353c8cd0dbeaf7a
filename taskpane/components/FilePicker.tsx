import { useId, useState, type DragEvent } from "react";

interface FilePickerProps {
  readonly label: string;
  readonly accept: string;
  readonly onPick: (file: File) => void | Promise<void>;
}

/** The browser's own file button, and a place to drop a file on. */
export const FilePicker = ({ label, accept, onPick }: FilePickerProps) => {
  const id = useId();
  const [over, setOver] = useState(false);
  const pick = (files: FileList | null): void => {
    const file = files?.[0];
    if (file) void onPick(file);
  };
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    pick(event.dataTransfer.files);
  };
  return (
    <div
      className={over ? "fileDrop over" : "fileDrop"}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <label htmlFor={id}>{label}: choose, or drop it here</label>
      <input id={id} type="file" accept={accept} onChange={({ currentTarget }) => pick(currentTarget.files)} />
    </div>
  );
};
