/** A whole number in words, by threes: 12 500. A comma or a point would be a decimal mark to half of the readers. */
export const grouped = (value: number): string => String(value).replace(/(\d)(?=(\d{3})+$)/g, "$1 ");
