/** A figure that a service does not report is an empty-looking cell, never 0. */
export const orEmpty = (value: number | undefined): number | "" =>
  value === undefined || Number.isNaN(value) ? "" : value;
