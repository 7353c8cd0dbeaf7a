/**
 * The text of a file. Byte order marks are believed; without one it is UTF-8 if it can be, else the Western alphabet in
 * which older loggers write their degree signs.
 */
export const textOf = (bytes: Uint8Array): string => {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder("utf-16be").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
};
