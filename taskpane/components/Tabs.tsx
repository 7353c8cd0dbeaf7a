import { useRef, type KeyboardEvent } from "react";

interface TabsProps<Key extends string> {
  readonly tabs: readonly { readonly key: Key; readonly label: string }[];
  readonly chosen: Key;
  readonly onChoose: (key: Key) => void;
  /** Ids are made of it: `${id}-tab-…` and `${id}-panel`. */
  readonly id: string;
}

/**
 * The row of sections, after the ARIA pattern for tabs: one stop of the Tab key, arrows within.
 */
export const Tabs = <Key extends string>({ tabs, chosen, onChoose, id }: TabsProps<Key>) => {
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
    <div ref={row} className="tabs" role="tablist" aria-label="Sections" onKeyDown={move}>
      {tabs.map(({ key, label }) => (
        <button
          key={key}
          type="button"
          role="tab"
          id={`${id}-tab-${key}`}
          aria-selected={key === chosen}
          aria-controls={`${id}-panel`}
          tabIndex={key === chosen ? 0 : -1}
          className="tab"
          onClick={() => onChoose(key)}
        >
          {label}
        </button>
      ))}
    </div>
  );
};
