/** What is wrong with an archive, said so that it can be found and mended. */

export type Complaint = {
  /** In the archive; null where the archive as a whole is meant. */
  readonly file: string | null;
  /** As a spreadsheet counts: the header is row 1. */
  readonly row: number | null;
  readonly column: string | null;
  readonly message: string;
};

/** @example complaintText({ file: 'visits.csv', row: 4, column: 'visited_on', message: 'is empty' }) // 'visits.csv, row 4, visited_on: is empty' */
export function complaintText({ file, row, column, message }: Complaint): string {
  const place = [file, row === null ? null : `row ${row}`, column].filter((part) => part !== null);
  return place.length === 0 ? message : `${place.join(', ')}: ${message}`;
}

export type ArchiveFaultReason =
  | 'not-an-archive'
  /** Written by a newer program: left untouched. */
  | 'newer-version'
  | 'damaged'
  /** More than one ZIP file can hold, or more than may be unpacked. */
  | 'too-large'
  /** The records changed while they were written out. */
  | 'records-changed'
  | 'cancelled';

/** Ends the writing or the reading of an archive. */
export class ArchiveFault extends Error {
  override readonly name = 'ArchiveFault';
  readonly reason: ArchiveFaultReason;
  readonly complaint: Complaint;
  constructor(reason: ArchiveFaultReason, complaint: Complaint) {
    super(complaintText(complaint));
    this.reason = reason;
    this.complaint = complaint;
  }
}

export function damaged(file: string | null, message: string, row: number | null = null, column: string | null = null) {
  return new ArchiveFault('damaged', { file, row, column, message });
}

/** What can be told to stop; an AbortSignal is one. */
export type StopSignal = { readonly aborted: boolean };

/** @throws {ArchiveFault} where the work was told to stop */
export function stopIfAsked(signal: StopSignal | undefined): void {
  if (signal?.aborted)
    throw new ArchiveFault('cancelled', {
      file: null,
      row: null,
      column: null,
      message: 'stopped; nothing was changed',
    });
}
