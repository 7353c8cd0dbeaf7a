import { lazy, Suspense, useCallback, useEffect, useId, useState, useSyncExternalStore } from "react";
import type { SavedFile } from "../actions/savedFile";
import type { Evaluate } from "../columns/expression";
import type { Shipped } from "../shipped";
import type { Workbook } from "../workbook";
import { PaneProvider } from "./context";
import { Kept } from "./Kept";
import { Safe } from "./Safe";
import { Tabs } from "../components/Tabs";
import "./pane.css";

export const sections = [
  { key: "sheets", label: "Sheets" },
  { key: "places", label: "Places" },
  { key: "functions", label: "Functions" },
  { key: "readings", label: "Readings" },
  { key: "share", label: "Share" },
  { key: "care", label: "Care" },
] as const;
export type Section = (typeof sections)[number]["key"];

export type Theme = "light" | "dark" | "contrast";

/** What the page around the pane may change while it stands. */
export interface Outside {
  readonly theme: Theme;
  readonly section: Section;
  /** What to open within the section: a function's name, a sheet's key. */
  readonly item?: string;
}

/** Holds what the page around the pane has said last. */
export class OutsideStore {
  private readonly listeners = new Set<() => void>();
  constructor(private now: Outside) {}
  readonly get = (): Outside => this.now;
  readonly set = (change: Partial<Outside>): void => {
    this.now = { ...this.now, ...change };
    for (const listener of this.listeners) listener();
  };
  readonly subscribe = (listener: () => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };
}

// A section is loaded when it is wanted.
const Sheets = lazy(() => import("./Sheets"));
const Places = lazy(() => import("./Places"));
const Functions = lazy(() => import("./Functions"));
const Readings = lazy(() => import("./Readings"));
const Share = lazy(() => import("./Share"));
const Care = lazy(() => import("./Care"));

interface PaneProps {
  readonly workbook: Workbook;
  readonly shipped: Shipped;
  readonly evaluate: Evaluate;
  readonly handbook: string;
  readonly outside: OutsideStore;
  readonly save: (file: SavedFile) => void | Promise<void>;
}

export const Pane = ({ workbook, shipped, evaluate, handbook, outside, save }: PaneProps) => {
  const id = useId();
  const { theme, section, item } = useSyncExternalStore(outside.subscribe, outside.get);
  const [busy, setBusy] = useState(false);
  const open = useCallback((section: Section, item?: string) => outside.set({ section, item }), [outside]);
  // A new section starts at its top.
  useEffect(() => {
    document.getElementById(`${id}-panel`)?.scrollTo(0, 0);
  }, [id, section]);

  return (
    <div className="pane" data-theme={theme}>
      <PaneProvider value={{ workbook, shipped, evaluate, handbook, open, theme, save, busy, setBusy }}>
        <Tabs
          id={id}
          tabs={sections}
          chosen={section}
          onChoose={(key) => outside.set({ section: key, item: undefined })}
        />
        <div
          key={section}
          id={`${id}-panel`}
          className="panel"
          role="tabpanel"
          aria-labelledby={`${id}-tab-${section}`}
          tabIndex={0}
        >
          <Safe>
            <Kept />
            <Suspense fallback={<p className="quiet">Loading …</p>}>
              {section === "sheets" && <Sheets open={item} />}
              {section === "places" && <Places />}
              {section === "functions" && <Functions open={item} />}
              {section === "readings" && <Readings />}
              {section === "share" && <Share />}
              {section === "care" && <Care />}
            </Suspense>
          </Safe>
        </div>
      </PaneProvider>
    </div>
  );
};
