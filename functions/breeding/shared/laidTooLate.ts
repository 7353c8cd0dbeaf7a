import { isoOf, LAST_DAY } from "../../dates";

/** The words where eggs would hatch after the last day that a spreadsheet knows. */
export const laidTooLate = (laid: number): string =>
  `laid holds ${isoOf(laid)}: give a day whose eggs hatch by ${isoOf(LAST_DAY)}`;
