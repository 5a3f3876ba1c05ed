import type { SessionRow, UploadAnswer } from '../protocol/index.ts';

/** Where a shop keeps its sessions; the narrow port behind which a folder or an archive may stand. */
export interface Shop {
  /** A place for the record of a session that begins in this bay: an id that is new, and its file. */
  newRecord(bay: string, at: Date): Promise<{ readonly id: string; readonly path: string }>;
  /** The file of a session, or null when there is none of this id. The id may come from anybody. */
  pathOf(id: string): Promise<string | null>;
  /** The session whose file this is, or null when it is none of the shop's. */
  idOf(path: string): Promise<string | null>;
  /**
   * Sessions, the newest first.
   * @param find only those in which this text stands, whatever its case; all, where it is empty
   */
  list(find?: string): Promise<readonly SessionRow[]>;
  /**
   * Keeps a record that a tablet finished without the server; marked where it does not verify.
   * @throws Refused when it is no record at all; then nothing is kept
   */
  keep(content: Buffer): Promise<UploadAnswer>;
  close(): Promise<void>;
}
