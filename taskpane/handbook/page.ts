/**
 * A page of the handbook, in Markdown: one text for the web page, the terminal and the search. Links and pictures are
 * written from the handbook's top and name pages without an ending: [LAPSE](functions/LAPSE). A quotation is a caution.
 */
export interface Page {
  /** "functions/LAPSE"; the first page is "index". */
  readonly path: string;
  readonly title: string;
  /** One line, for lists of pages and for the search. */
  readonly about: string;
  /** Words that it is looked for by and that do not stand on it. */
  readonly alsoFoundBy?: string;
  /** What stands below the title. */
  readonly markdown: string;
}
