import type { Workbook } from "../workbook";
import type { Done, Words } from "./action";
import type { SavedFile } from "./savedFile";

/** Why no file can be handed over here, and what to do in its place; undefined where one can. */
export const noFile = (workbook: Workbook, instead: string): Words | undefined => {
  const why = workbook.takesNoFiles?.();
  return why === undefined ? undefined : { text: `${why} ${instead}`, possible: false, ask: false };
};

/** Hands a file of text over; where the program takes none, the text is shown to be copied. `about` is said with it. */
export const handOver = async (
  workbook: Workbook,
  file: SavedFile,
  save: (file: SavedFile) => void | Promise<void>,
  about: string,
): Promise<Done> => {
  const why = workbook.takesNoFiles?.();
  if (why !== undefined && typeof file.bytes === "string") {
    return {
      text: `${why} Copy the text below into an empty file of plain text, and save that as "${file.name}". ${about}`,
      copy: { label: `Text of "${file.name}"`, text: file.bytes },
    };
  }
  await save(file);
  return { text: `"${file.name}" is saved where your browser or program puts downloads. ${about}` };
};
