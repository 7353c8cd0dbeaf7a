import { WorkbookError, type Keeping, type KeptWorkbook } from "../../taskpane/workbook";
import type { Book } from "../file/book";
import type { Engine } from "./engine";
import { UNTITLED } from "./engine";
import { isInStep } from "./oneStep";
import type { Shelf } from "./shelf";
import type { Unsaved } from "./unsaved";
import type { PreviewWorkbook } from "./workbook";

/** What is kept of a workbook: in one part what is told of it, in another the whole. */
export interface KeptBook extends Book {
  readonly title: string;
  /** The sheet that was shown. */
  readonly shown: string;
}

const REST = 1_500; // ms without a change, after which it is kept
const LONGEST = 4_000; // ms after the first change that is not kept, whatever comes
/** Keeping takes no more than one part in this many of the page's time. */
const SHARE = 10;
/** A page whose workbook is in the middle of a step is asked again so soon. */
const AGAIN = 200; // ms

/**
 * Keeps the workbook of a page, a few seconds behind its changes, as what a saved file would hold. Each page has a place of
 * its own on the shelf, and nobody else writes there while the page lives. What is never changed after `begin` is not kept.
 */
export const keepWorkbook = async (
  engine: Engine,
  workbook: PreviewWorkbook,
  unsaved: Unsaved,
  shelf: Shelf,
): Promise<Keeping & { readonly begin: () => void; readonly now: () => Promise<void> }> => {
  let place = await shelf.take();
  let timer: ReturnType<typeof setTimeout> | undefined;
  let since: number | undefined;
  let notBefore = 0;
  let hasKept = false;
  let trouble: string | undefined;
  let writing: Promise<void> = Promise.resolve();

  const write = async (): Promise<void> => {
    const book = engine.api.getActiveWorkbook();
    if (!book) return;
    const begun = Date.now();
    since = undefined;
    const names = book.getSheets().map((sheet) => sheet.getSheetName());
    const { sheets, manner } = workbook.contents(names);
    const kept: KeptBook = {
      title: workbook.title() ?? UNTITLED,
      shown: book.getActiveSheet().getSheetName(),
      // Charts are drawn anew from the template.
      sheets: sheets.map((sheet) => ({ ...sheet, charts: [] })),
      ...(manner ? { manner } : {}),
    };
    await shelf.put(
      place,
      { title: kept.title, sheets: sheets.length, changed: begun, saved: !unsaved.isChanged() },
      kept,
    );
    hasKept = true;
    notBefore = Date.now() + (Date.now() - begun) * SHARE;
  };
  /** Keeps what has changed; in the middle of a step only where whoever asks knows that nothing of it is done yet. */
  const keep = async (isWhole: boolean): Promise<void> => {
    if (since === undefined) return;
    try {
      await engine.settle();
      if (!isWhole && isInStep(engine)) {
        plan(AGAIN);
        return;
      }
      await write();
      trouble = undefined;
    } catch (cause) {
      // Tried again with the next change, or when the page is put away.
      since ??= Date.now();
      trouble =
        "This browser keeps nothing of your work (its storage is full, or closed to this page): save it as a file, and often.";
      console.warn("the workbook is not kept:", cause);
    }
  };
  const now = (isWhole = false): Promise<void> => {
    clearTimeout(timer);
    writing = writing.then(() => keep(isWhole));
    return writing;
  };
  const plan = (wait: number): void => {
    clearTimeout(timer);
    timer = setTimeout(() => void now(), wait);
  };
  const begin = (): void =>
    unsaved.listen(() => {
      if (!hasKept && !unsaved.isChanged()) return;
      const time = Date.now();
      since ??= time;
      plan(Math.max(Math.min(REST, since + LONGEST - time), notBefore - time, 0));
    });

  return {
    begin,
    now,
    list: async () => {
      const free = (await shelf.list()).toSorted((one, other) => other.changed - one.changed);
      // Of those that lie on the keeper's disk too, the latest is enough.
      const [, ...older] = free.filter(({ saved }) => saved);
      for (const { id } of older) await shelf.remove(id);
      return free.filter((one) => !older.includes(one));
    },
    async restore(id) {
      const kept = await shelf.get(id);
      if (!kept) throw new WorkbookError("It is not kept any more. Nothing was changed.");
      await now(true);
      // From now on this page writes there; what it had before stays on the shelf for the next.
      const before = place;
      place = await shelf.take(id);
      const opened = await workbook.place(kept.title, kept).catch((failure: unknown) => {
        shelf.leave(place);
        place = before;
        throw failure;
      });
      shelf.leave(before);
      if (opened.sheets.includes(kept.shown)) await workbook.show(kept.shown);
      return opened;
    },
    async discard(id) {
      const taken = await shelf.take(id);
      await shelf.remove(taken);
      shelf.leave(taken);
    },
    trouble: () => trouble,
  };
};

export type Told = Omit<KeptWorkbook, "id">;
