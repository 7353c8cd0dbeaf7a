import { cautions, type CautionKey } from "./cautions";
import { citation, type SourceKey } from "./sources";

/** The words of sources and cautions, as a definition is given them that `needs: "texts"`. */
export interface Texts {
  readonly citation: (key: SourceKey) => string;
  readonly caution: (key: CautionKey) => string;
}

export const texts: Texts = { citation, caution: (key) => cautions[key] };
