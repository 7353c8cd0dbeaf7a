/** A file on its way to the keeper's disk. */
export interface SavedFile {
  readonly name: string;
  readonly type: string;
  readonly bytes: Uint8Array | string;
}
