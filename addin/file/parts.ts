import { BufferReader, RemoteZipReader } from "@cj-tech-master/excelts/archive";
import { grouped } from "../../taskpane/text/grouped";
import { WorkbookError } from "../../taskpane/workbook";

/** The files within an .xlsx file, by their path. */
export type Parts = Readonly<Record<string, Uint8Array>>;

const MEGABYTE = 1_000_000;
/** Unpacked. A keeper's years of readings are a tenth of it; a page that unpacks more stands still. */
const MOST_BYTES = 250 * MEGABYTE;
/** Cells with content or looks. The preview's own grid takes about ten seconds for so many. */
const MOST_CELLS = 500_000;

/** How a file begins that was written before .xlsx, or is under a password. */
const OLD = [0xd0, 0xcf, 0x11, 0xe0];

const SHEET = /^xl\/worksheets\/[^/]+\.xml$/;

/** How many cells a sheet's text has: as many as it has elements "c". */
const cellsIn = (text: Uint8Array): number => {
  let count = 0;
  for (let i = text.indexOf(0x3c); i >= 0; i = text.indexOf(0x3c, i + 1)) {
    const after = text[i + 2];
    if (text[i + 1] === 0x63 && (after === 0x20 || after === 0x3e || after === 0x2f)) count++;
  }
  return count;
};

/** Unpacks a file, but none that would make the page stand still; a WorkbookError says why. Throws where it is no .xlsx. */
export const partsOf = async (name: string, bytes: Uint8Array): Promise<Parts> => {
  if (OLD.every((byte, i) => bytes[i] === byte))
    throw new WorkbookError(
      `"${name}" is under a password, or was written before .xlsx. Open it in its own program, save it anew as .xlsx without a password, and try again. Nothing was changed.`,
    );
  const zip = await RemoteZipReader.fromReader(new BufferReader(bytes));
  const size = zip.getEntries().reduce((sum, { uncompressedSize }) => sum + uncompressedSize, 0);
  if (size > MOST_BYTES)
    throw new WorkbookError(
      `"${name}" unpacks to ${Math.round(size / MEGABYTE)} MB; the preview opens up to ${MOST_BYTES / MEGABYTE} MB. Nothing was changed.`,
    );
  const parts = Object.fromEntries(await zip.extractAll());
  const cells = Object.entries(parts).reduce((sum, [path, text]) => sum + (SHEET.test(path) ? cellsIn(text) : 0), 0);
  if (cells > MOST_CELLS)
    throw new WorkbookError(
      `"${name}" has ${grouped(cells)} cells; the preview opens up to ${grouped(MOST_CELLS)}. Open a part of it, or its readings as CSV under Readings. Nothing was changed.`,
    );
  return parts;
};
