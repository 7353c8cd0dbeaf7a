import { dateOrders, type Manner } from "../../taskpane/text/form";

/** How the keeper writes dates and figures, for the keywords of a file, where every program keeps it. */
export const mannerInWords = ({ dateOrder, decimal }: Manner): string =>
  `dates ${dateOrder}, decimal ${decimal === "," ? "comma" : "point"}`;

/** The same read back; undefined where a file's keywords are other ones. */
export const mannerFrom = (keywords: string | undefined): Manner | undefined => {
  const [, order, decimal] = /\bdates (\w+), decimal (comma|point)\b/.exec(keywords ?? "") ?? [];
  const dateOrder = dateOrders.find((one) => one === order);
  return dateOrder && { dateOrder, decimal: decimal === "comma" ? "," : "." };
};
