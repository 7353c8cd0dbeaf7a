import { createStore, delMany, get, getMany, keys, setMany } from "idb-keyval";
import { WorkbookError, type KeptWorkbook } from "../../taskpane/workbook";
import type { KeptBook, Told } from "./keep";

/** Where workbooks are kept, each in a place of its own. A place that is taken is nobody else's until its page is gone. */
export interface Shelf {
  /** Takes a place, a new one where none is named; throws where another page has it. */
  take(id?: string): Promise<string>;
  leave(id: string): void;
  put(id: string, told: Told, book: KeptBook): Promise<void>;
  get(id: string): Promise<KeptBook | undefined>;
  remove(id: string): Promise<void>;
  /** What lies in places that nobody has taken. */
  list(): Promise<readonly KeptWorkbook[]>;
}

const LOCK = "vivarium-almanac workbook ";

/** The browser's own storage. Its locks end with the page that holds them, also where that crashes. */
export const browserShelf = (): Shelf => {
  const store = createStore("vivarium-almanac", "workbooks");
  // A page that came over an open network has no locks.
  const locks = navigator.locks as LockManager | undefined;
  const held = new Map<string, () => void>();
  const hold = (id: string): Promise<string> =>
    new Promise((resolve, reject) => {
      if (!locks) {
        resolve(id);
        return;
      }
      locks
        .request(LOCK + id, { ifAvailable: true }, (lock) => {
          if (!lock) throw new WorkbookError("It is open in another window of this browser. Nothing was changed.");
          resolve(id);
          return new Promise<void>((leave) => held.set(id, leave));
        })
        .catch(reject);
    });
  return {
    take: (id = crypto.getRandomValues(new Uint32Array(4)).join("-")) => hold(id),
    leave: (id) => {
      held.get(id)?.();
      held.delete(id);
    },
    put: (id, told, book) =>
      setMany(
        [
          [`about ${id}`, told],
          [`book ${id}`, book],
        ],
        store,
      ),
    get: (id) => get<KeptBook>(`book ${id}`, store),
    remove: (id) => delMany([`about ${id}`, `book ${id}`], store),
    async list() {
      const taken = new Set(((await locks?.query())?.held ?? []).map(({ name }) => name));
      const free = (await keys<string>(store)).filter(
        (key) => key.startsWith("about ") && !taken.has(LOCK + key.slice("about ".length)),
      );
      const told = await getMany<Told>(free, store);
      return free.flatMap((key, i) => (told[i] ? [{ id: key.slice("about ".length), ...told[i] }] : []));
    },
  };
};
