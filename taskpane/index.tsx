import { createRoot } from "react-dom/client";
import type { SavedFile } from "./actions/savedFile";
import type { Evaluate } from "./columns/expression";
import type { Shipped } from "./shipped";
import { saveByLink } from "./views/context";
import { OutsideStore, Pane, type Section, type Theme } from "./views/Pane";
import type { Workbook } from "./workbook";

export type { SavedFile, Section, Theme };

export interface PaneOptions {
  readonly theme: Theme;
  readonly shipped: Shipped;
  readonly evaluate: Evaluate;
  /** Where the handbook stands, from the page that shows the pane, with a slash at its end. */
  readonly handbook: string;
  /** The section shown first; "sheets" where none is named. */
  readonly section?: Section;
  /** Hands a file to the keeper; a browser's download where none is given. */
  readonly save?: (file: SavedFile) => void | Promise<void>;
}

export interface MountedPane {
  setTheme(theme: Theme): void;
  /** Opens a section, and within "functions" the entry of the function of that name ("LAPSE"). */
  openSection(section: Section, item?: string): void;
  unmount(): void;
}

/** Draws the pane into an element of the page, over any host's workbook. The element should have a height. */
export const mountPane = (element: HTMLElement, workbook: Workbook, options: PaneOptions): MountedPane => {
  const outside = new OutsideStore({ theme: options.theme, section: options.section ?? "sheets" });
  const root = createRoot(element);
  root.render(
    <Pane
      workbook={workbook}
      shipped={options.shipped}
      evaluate={options.evaluate}
      handbook={options.handbook}
      outside={outside}
      save={options.save ?? saveByLink}
    />,
  );
  return {
    setTheme: (theme) => outside.set({ theme }),
    openSection: (section, item) => outside.set({ section, item }),
    unmount: () => root.unmount(),
  };
};
