import { createContext, useContext } from "react";
import type { Evaluate } from "../columns/expression";
import type { SavedFile } from "../actions/savedFile";
import type { Section, Theme } from "./Pane";
import type { Shipped } from "../shipped";
import type { Workbook } from "../workbook";

export interface PaneState {
  readonly workbook: Workbook;
  readonly shipped: Shipped;
  /** Answers a function as the sheet does. */
  readonly evaluate: Evaluate;
  /** Turns to another section, and to an item of it. */
  readonly open: (section: Section, item?: string) => void;
  /** Where the handbook stands, with a slash at its end. */
  readonly handbook: string;
  readonly theme: Theme;
  /** Hands a file to the keeper. */
  readonly save: (file: SavedFile) => void | Promise<void>;
  /** True while something is being done; nothing else can be started then. */
  readonly busy: boolean;
  readonly setBusy: (busy: boolean) => void;
}

const PaneContext = createContext<PaneState | undefined>(undefined);
export const PaneProvider = PaneContext.Provider;

export const usePane = (): PaneState => {
  const state = useContext(PaneContext);
  if (!state) throw new Error("a view of the pane stands outside the pane");
  return state;
};

/** Saves as a browser does. */
export const saveByLink = ({ name, type, bytes }: SavedFile): void => {
  const url = URL.createObjectURL(new Blob([bytes as BlobPart], { type }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  // The download has its own hold on the bytes by then.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
};
