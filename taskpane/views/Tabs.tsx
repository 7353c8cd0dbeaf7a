import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import { useRef, type KeyboardEvent } from "react";

const useStyles = makeStyles({
  tabs: {
    display: "flex",
    flexWrap: "wrap",
    paddingInline: "4px",
    borderBottom: `1px solid ${tokens.colorNeutralStroke2}`,
    flexShrink: 0,
  },
  tab: {
    border: "none",
    backgroundColor: "transparent",
    color: tokens.colorNeutralForeground2,
    fontFamily: "inherit",
    fontSize: "0.875rem",
    padding: "10px 7px 8px",
    cursor: "pointer",
    borderBottom: "3px solid transparent",
    ":hover": { color: tokens.colorNeutralForeground1, borderBottomColor: tokens.colorNeutralStroke1 },
    ":focus-visible": { outline: `2px solid ${tokens.colorStrokeFocus2}`, outlineOffset: "-2px" },
  },
  chosen: {
    color: tokens.colorNeutralForeground1,
    fontWeight: 600,
    borderBottomColor: tokens.colorCompoundBrandStroke,
    ":hover": { borderBottomColor: tokens.colorCompoundBrandStroke },
  },
});

interface TabsProps<Key extends string> {
  readonly tabs: readonly { readonly key: Key; readonly label: string }[];
  readonly chosen: Key;
  readonly onChoose: (key: Key) => void;
  /** Ids are made of it: `${id}-tab-…` and `${id}-panel`. */
  readonly id: string;
}

/**
 * The row of sections, after the ARIA pattern for tabs: one stop of the Tab key, arrows within. Written here because
 * the library's own brings a focus manager that weighs more than all the words of the pane.
 */
export const Tabs = <Key extends string>({ tabs, chosen, onChoose, id }: TabsProps<Key>) => {
  const styles = useStyles();
  const row = useRef<HTMLDivElement>(null);
  const move = (event: KeyboardEvent) => {
    const at = tabs.findIndex(({ key }) => key === chosen);
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: tabs.length - 1 }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    const next = tabs[(to + tabs.length) % tabs.length];
    if (!next) return;
    onChoose(next.key);
    row.current?.querySelector<HTMLElement>(`[id="${id}-tab-${next.key}"]`)?.focus();
  };
  return (
    <div ref={row} className={styles.tabs} role="tablist" aria-label="Sections" onKeyDown={move}>
      {tabs.map(({ key, label }) => (
        <button
          key={key}
          type="button"
          role="tab"
          id={`${id}-tab-${key}`}
          aria-selected={key === chosen}
          aria-controls={`${id}-panel`}
          tabIndex={key === chosen ? 0 : -1}
          className={mergeClasses(styles.tab, key === chosen && styles.chosen)}
          onClick={() => onChoose(key)}
        >
          {label}
        </button>
      ))}
    </div>
  );
};
