import { searchOver } from "../../taskpane/search/searchOver";
import type { Entry } from "./entries";

/** The pages that can be found; the build puts them in. */
declare const ENTRIES: readonly Entry[];

declare global {
  interface Window {
    /** The search over the pages: a script of its own, which is fetched when somebody searches. */
    handbookSearch?: (typed: string) => readonly Entry[];
  }
}

const byId = new Map(ENTRIES.map((entry) => [entry.id, entry]));
const search = searchOver(ENTRIES);
window.handbookSearch = (typed) => search(typed).flatMap((id) => byId.get(id) ?? []);
