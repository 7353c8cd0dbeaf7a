const utf8 = (bytes: Uint8Array): string | undefined => {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    // Not UTF-8: it is read by another code page.
    return undefined;
  }
};

const byMark = ([first, second]: Uint8Array): string | undefined =>
  first === 0xff && second === 0xfe ? "utf-16le" : first === 0xfe && second === 0xff ? "utf-16be" : undefined;

/** Whether the bytes say by themselves which letters they mean. */
export const isUtf8 = (bytes: Uint8Array): boolean => byMark(bytes) !== undefined || utf8(bytes) !== undefined;

/**
 * The text of a file. Byte order marks are believed; without one it is UTF-8 if it can be, else the Western alphabet in
 * which older loggers write their degree signs.
 */
export const textOf = (bytes: Uint8Array): string => {
  const marked = byMark(bytes);
  return marked
    ? new TextDecoder(marked).decode(bytes)
    : (utf8(bytes) ?? new TextDecoder("windows-1252").decode(bytes));
};
